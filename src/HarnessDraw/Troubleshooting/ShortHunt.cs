using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>Unplug a thing and look at the lamp: if it goes out, the short is in what hangs behind.</summary>
public sealed record UnplugStep(string Thing, string Where, double Minutes, ImmutableArray<string> WiresBehind, ImmutableArray<string> LoadsBehind);

/// <summary>
/// Hunting a short behind a fuse: a lamp in the fuse's place glows brightly while the short is there. What to unplug in which order: most of what may be
/// shorted parted a minute, by the weights of wires and loads.
/// </summary>
public sealed record ShortHunt(string Fuse, double LampW, double LampA, ImmutableArray<UnplugStep> Steps, ImmutableArray<string> Wires, ImmutableArray<string> States)
{
    /// <summary>Wires that no step has parted from the fuse: where the short is if the lamp is bright to the end.</summary>
    public IEnumerable<string> Left => Wires.Except(Steps.SelectMany(s => s.WiresBehind), StringComparer.Ordinal);

    // 21 W is the usual test lamp (common practice, no source); a smaller fuse gets the next smaller bulb
    private static readonly ImmutableArray<double> LampsW = [21, 10, 5];

    public static ShortHunt? Of(FaultBench bench, string fuse)
    {
        ArgumentNullException.ThrowIfNull(bench);
        var network = bench.Network.Network;
        var at = -1;
        for (var i = 0; i < network.Branches.Count && at < 0; i++)
        {
            at = network.Branches[i] is { Kind: BranchKind.Fuse } b && b.Thing!.Id == fuse ? i : -1;
        }

        if (at < 0)
        {
            return null;
        }

        var start = network.Branches[at].B;
        var (wires, loads) = Reached(bench, start, at, null);
        var rating = bench.Plan.Fuses.FirstOrDefault(f => f.Id == fuse)?.RatingA;
        var volts = bench.Plan.Harness.Power.NominalV;
        var lamp = LampsW.FirstOrDefault(w => rating is null || w / volts <= rating, LampsW[^1]);
        var states = bench.States.Where((_, s) => Math.Abs(bench.Sound[s].Solution.Amperes[at]) > FaultFinder.DeadShare).Select(s => s.Id).ToImmutableArray();
        return new(fuse, lamp, lamp / volts, Order(bench, start, at, wires, loads), [.. wires.Order().Select(w => bench.Plan.Wires[w].Id)], states);
    }

    private static ImmutableArray<UnplugStep> Order(FaultBench bench, int start, int fuse, HashSet<int> wires, HashSet<int> loads)
    {
        var weights = new WireFaultWeights(bench.Network, FaultWeights.InService);
        double Mass(IEnumerable<int> w, IEnumerable<int> l) => w.Sum(i => weights.Copper(bench.Plan.Wires[i])) + (l.Count() * FaultWeights.InService.Load * FaultWeights.ShareOf(FaultKind.ShortedInside, false));
        var open = (Wires: wires.ToHashSet(), Loads: loads.ToHashSet());
        var steps = ImmutableArray.CreateBuilder<UnplugStep>();
        var things = wires.SelectMany(w => new[] { bench.Plan.Wires[w].From, bench.Plan.Wires[w].To }).Where(e => e.Pin is not null).Select(e => e.At).Distinct(StringComparer.Ordinal)
            .Where(t => bench.Network.Index.Thing(t) is { } thing && thing.Kind is not (ThingKind.Fuse or ThingKind.FusePanel or ThingKind.BusBar or ThingKind.Stud or ThingKind.GroundPoint)).ToList();
        while (things.Count > 0)
        {
            var total = Mass(open.Wires, open.Loads);
            var best = things.Select(t =>
            {
                var (w, l) = Reached(bench, start, fuse, t);
                var behind = (Wires: open.Wires.Where(x => !w.Contains(x)).ToList(), Loads: open.Loads.Where(x => !l.Contains(x)).ToList());
                var share = total > 0 ? Mass(behind.Wires, behind.Loads) / total : 0;
                var minutes = bench.Points.Where(p => p.Name.StartsWith(t + ".", StringComparison.Ordinal)).Select(p => p.Minutes).DefaultIfEmpty(AccessMinutes.Bay).Min();
                return (Thing: t, behind.Wires, behind.Loads, Minutes: minutes, Worth: share is <= 0 or >= 1 ? 0 : -((share * Math.Log2(share)) + ((1 - share) * Math.Log2(1 - share))) / (minutes + TestChooser.SetUpMinutes));
            }).OrderByDescending(s => s.Worth).ThenBy(s => s.Thing, StringComparer.Ordinal).First();
            if (best.Wires.Count + best.Loads.Count == 0)
            {
                break;
            }

            steps.Add(new(best.Thing, ProbePoints.Where(bench.Plan, bench.Network.Index, best.Thing), best.Minutes,
                [.. best.Wires.Order().Select(w => bench.Plan.Wires[w].Id)], [.. best.Loads.Order().Select(l => bench.Loads[l].Name)]));
            things.Remove(best.Thing);

            // the lamp stayed bright: what was behind is sound
            open.Wires.ExceptWith(best.Wires);
            open.Loads.ExceptWith(best.Loads);
        }

        return steps.ToImmutable();
    }

    /// <summary>Wires and loads that hang on the fuse with every switch closed; <paramref name="unplugged"/>: a thing that is parted from its wires.</summary>
    private static (HashSet<int> Wires, HashSet<int> Loads) Reached(FaultBench bench, int start, int fuse, string? unplugged)
    {
        var network = bench.Network.Network;
        var (wires, loads, seen, waiting) = (new HashSet<int>(), new HashSet<int>(), new HashSet<int> { start }, new Stack<int>([start]));
        var ground = bench.Network.Solver.RowOf(bench.Network.Body);
        while (waiting.TryPop(out var node))
        {
            if (bench.Network.Solver.RowOf(node) == ground || bench.Network.Solver.RowOf(node) == bench.Network.Solver.RowOf(0))
            {
                continue;
            }

            foreach (var i in network.BranchesAt(node))
            {
                var b = network.Branches[i];
                if (i == fuse || !b.When.Holds(bench.Build) || b.Kind is BranchKind.Fuse or BranchKind.Source or BranchKind.ConverterInput)
                {
                    continue;
                }

                if (b.Kind == BranchKind.Load)
                {
                    AddLoad(bench, i, loads);
                    continue;
                }

                // a wire hangs on the fuse by either end; through a plug that is out nothing passes, nor from a load's pin on
                var (from, to) = b.Wire >= 0 ? (bench.Plan.Wires[b.Wire].From.At, bench.Plan.Wires[b.Wire].To.At) : ("", "");
                var (near, far) = b.A == node ? (from, to) : (to, from);
                if (b.Wire >= 0 && (unplugged is null || near != unplugged))
                {
                    wires.Add(b.Wire);
                }

                if (b.Wire < 0 ? b.Thing?.Id == unplugged && unplugged is not null : unplugged is not null && (near == unplugged || far == unplugged))
                {
                    continue;
                }

                if (seen.Add(b.A == node ? b.B : b.A))
                {
                    waiting.Push(b.A == node ? b.B : b.A);
                }
            }
        }

        return (wires, loads);
    }

    private static void AddLoad(FaultBench bench, int branch, HashSet<int> loads)
    {
        for (var l = 0; l < bench.Loads.Length; l++)
        {
            if (bench.Loads[l].Branch == branch)
            {
                loads.Add(l);
            }
        }
    }
}
