using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning.Bundles;
using HarnessDraw.Planning.Cavities;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning.Sizing;

/// <summary>What sizing hands on beside the rows.</summary>
internal sealed record SizingResult(
    Wiring Wiring, ImmutableArray<LoopBudget> Loops, ImmutableSortedDictionary<string, ChosenRating> Fuses, List<CavityGiven> Cavities, TerminalChooser Terminals, WireSizer Sizer,
    List<CavitySeeker> WithoutCavity, SolvedStates States);

/// <summary>Sizes, cavities and fuses settle one another in a few rounds: currents give fuses, fuses and drops give sizes, sizes give cavities.</summary>
internal sealed partial class SizingStage(RoutedHarness routed, PlanningOptions options, BundleSizer bundles)
{
    // rounds that may take copper back; sizes that still swing between two then keep the larger
    private const int RoundsBothWays = 4;

    // fuses follow the solved currents in the first, sizes the fuses in the second
    private const int RoundsBeforeCavities = 2;
    private readonly HarnessIndex index = routed.Index;
    private readonly TerminalChooser terminals = new(routed.Index);
    private readonly LeafKeys keys = new(routed);
    private ImmutableSortedDictionary<string, ChosenRating> fuses = ImmutableSortedDictionary.Create<string, ChosenRating>(StringComparer.Ordinal);
    private List<CavityGiven> cavities = [];
    private List<CavitySeeker> withoutCavity = [];
    private ImmutableArray<LoopBudget> loops = [];

    // by nominal loop: as its case has it; null where the load is off after all
    private LoopBudget?[] solved = [];

    // by case: its nominal loops
    private int[][] loopsOf = [];
    private List<DropPath>? paths;
    private readonly (int[]? Sizes, double OutsideMm)[] packed = new (int[]?, double)[routed.Tree.Segments.Count];
    private int[][]? inside;

    // a few hundredths of a bundle make a millimetre of wire: as long as cavities are open bundles go by the trade's factor
    private bool isRough = true;
    private SolvedStates states = null!;
    private WireSizer sizer = new(options, new(routed.Index), _ => null);
    private Wiring wiring = new([], []);
    private ImmutableArray<WireRow> rows = [];
    private ImmutableArray<LoopBudget> nominal = [];

    /// <summary>
    /// Sizes by currents and drops, as if every terminal could still be chosen: by nominal ones, from which the rest begins. Where no more than places of splices
    /// differ from the wiring before, all goes on as it was.
    /// </summary>
    public ImmutableArray<WireRow> Begin(Wiring drafted)
    {
        var (joinsTheSame, before) = (drafted.JoinsTheSame(wiring), rows);
        wiring = drafted;
        inside = null;
        Array.Clear(packed);
        rows = new RowMaker(index, options, routed.Tree, routed.Flow).Make(wiring);
        if (joinsTheSame)
        {
            for (var w = 0; w < rows.Length; w++)
            {
                rows[w].Size = before[w].Size;
            }

            states = new(routed, options, terminals, rows, fuses, like: states);
            nominal = Loops();
            RerateNominal();
            return rows;
        }

        fuses = Rated(routed.Flow.Fuses.GetValueOrDefault);
        // ways, contacts and the first fuses are the same for every wiring; they are walked while the network is made
        var walk = SideBySide.Begin(paths is null ? 1 : 0, () => _ => paths = routed.Flow.Paths(FuseOhm));
        states = new(routed, options, terminals, rows, fuses);
        walk.Finish();
        nominal = Loops();
        loops = ImmutableArray.CreateRange(nominal, WithJoints);
        SizeAll();
        return rows;
    }

    /// <summary>The same sizes once the states are solved: what splices are placed by.</summary>
    public void Improve() => Settle(mostRounds: 1);

    /// <summary>Cavities by what the wires will need there (a small terminal once chosen takes no larger wire), then sizes until they rest.</summary>
    public SizingResult Finish(PlanningFindings findings)
    {
        Settle(RoundsBeforeCavities);
        // bundles go by sizes alone: they are packed while wires get their cavities
        isRough = false;
        Array.Clear(packed);
        var packing = BeginPacking();
        AssignCavities();
        packing.Finish();
        Settle(options.MostSizingRounds);
        TakeBack();
        foreach (var protection in index.Harness.Protections.Where(p => fuses[p.Id].RatingA is null))
        {
            findings.AddNoRating(protection, fuses[protection.Id].LoadA);
        }

        return new(wiring, loops, fuses, cavities, terminals, sizer, withoutCavity, states);
    }

    private ImmutableSortedDictionary<string, ChosenRating> Rated(Func<string, FuseLoad?> loadOf)
    {
        var bounds = FuseBounds.Of(rows, terminals, options);
        return new FuseChooser(index, options, id => bounds.TryGetValue(id, out var bound) ? bound : null, PeakA).Rated(loadOf);
    }

    // the largest start among the motors behind a fuse
    private double PeakA(string fuse)
    {
        var most = 0.0;
        foreach (var (thing, element) in routed.Flow.MotorsBehind.TryGetValue(fuse, out var behind) ? behind : [])
        {
            most = Math.Max(most, index.Thing(thing)?.Elements.FirstOrDefault(e => e.Id == element)?.PeakA ?? 0);
        }

        return most;
    }

    /// <summary>
    /// Sizes, lengths, fuses and the solved states settle one another: done when the sizes and ratings that the states ask for are those they were solved with.
    /// </summary>
    private void Settle(int mostRounds)
    {
        for (var round = 0; round < mostRounds; round++)
        {
            Resolve();
            var before = rows.Select(r => r.Size).ToArray();
            var rerated = Rerate(onlyUp: round >= RoundsBothWays);
            SizeAll(round < RoundsBothWays / 2 ? null : sizer.Unmet);
            if (rerated)
            {
                states.Rerate(fuses);
                RerateNominal();
            }
            else if (before.SequenceEqual(rows.Select(r => r.Size)))
            {
                break;
            }

            if (round >= RoundsBothWays)
            {
                for (var w = 0; w < rows.Length; w++)
                {
                    rows[w].Floor = Math.Max(rows[w].Floor, Math.Max(before[w], rows[w].Size));
                }
            }
        }
    }

    /// <summary>Lengths, states and loops for the sizes as they are; of the cases those that are <paramref name="due"/>, or all.</summary>
    private void Resolve(HashSet<int>? due = null)
    {
        // a trial keeps its lengths: a wire a size thinner changes them by a few millimetres at most
        if (due is null)
        {
            SetLengths();
        }

        states.Solve(due, loopsOf, nominal, solved);
        for (var l = 0; l < nominal.Length; l++)
        {
            if (!states.IsSolved(nominal[l].Path.Case))
            {
                solved[l] = WithJoints(nominal[l]);
            }
        }

        var told = ImmutableArray.CreateBuilder<LoopBudget>(solved.Length);
        foreach (var loop in solved)
        {
            if (loop is not null)
            {
                told.Add(loop);
            }
        }

        loops = told.ToImmutable();
    }

    /// <summary>Ratings for what the fuses pass in the solved states; true when one has changed.</summary>
    private bool Rerate(bool onlyUp)
    {
        var before = fuses;
        var rated = Rated(id => states.LoadOf(id, routed.Flow.Fuses.GetValueOrDefault(id)));
        fuses = onlyUp ? rated.ToImmutableSortedDictionary(f => f.Key, f => f.Value.RatingA < before[f.Key].RatingA ? before[f.Key] : f.Value, StringComparer.Ordinal) : rated;
        return fuses.Any(f => f.Value.RatingA != before[f.Key].RatingA);
    }

    private double FuseOhm(string id) => options.FuseOhm(fuses.GetValueOrDefault(id)?.RatingA);

    private ImmutableArray<LoopBudget> Loops()
    {
        var byNet = rows.GroupBy(r => r.Draft.Net).ToDictionary(g => g.Key, g => g.ToArray());
        var passed = new Dictionary<NetHop, WireRow[]>();
        var found = ImmutableArray.CreateBuilder<LoopBudget>();
        var wires = ImmutableArray.CreateBuilder<LoopPass>();
        foreach (var path in paths!.Where(p => states.IsFirst(p.Case)))
        {
            foreach (var hop in path.Hops)
            {
                if (!passed.TryGetValue(hop, out var across))
                {
                    passed.Add(hop, across = Array.FindAll(byNet.GetValueOrDefault(hop.Net, []), w => w.Draft.FromSide.Contains(hop.From) != w.Draft.FromSide.Contains(hop.To)));
                }

                foreach (var wire in across)
                {
                    wires.Add(new(wire, wire.CaseA[path.Case], null));
                }
            }

            found.Add(new(path, wires.ToImmutable()));
            wires.Clear();
        }

        solved = new LoopBudget?[found.Count];
        var byCase = Enumerable.Range(0, found.Count).ToLookup(l => found[l].Path.Case);
        loopsOf = [.. Enumerable.Range(0, routed.Flow.Cases.Count).Select(c => byCase[c].ToArray())];
        return found.ToImmutable();
    }

    /// <summary>Loops that keep their nominal currents lose in the fuses what those now have; what others lose is told by their solved case.</summary>
    private void RerateNominal()
    {
        var again = new Queue<DropPath>(routed.Flow.Paths(FuseOhm, c => states.IsFirst(c) && !states.IsSolved(c)));
        nominal = ImmutableArray.CreateRange(nominal, l => states.IsSolved(l.Path.Case) ? l : l with { Path = again.Dequeue() });
    }

    /// <summary>The same loop with the joints of its wires, as their terminals now are, among what is lost beside the copper.</summary>
    private LoopBudget WithJoints(LoopBudget loop)
    {
        var jointsV = 0.0;
        foreach (var pass in loop.Wires)
        {
            jointsV += pass.CurrentA * states.JointOhm(pass.Wire);
        }

        return loop with { Path = loop.Path with { FixedV = loop.Path.FixedV + jointsV } };
    }

    private void SizeAll(HashSet<(string Load, int Case)>? unmet = null)
    {
        sizer = new(options, terminals, id => fuses.TryGetValue(id, out var fuse) ? fuse.RatingA : null, unmet);
        sizer.Size(rows, loops);
    }

    private void AssignCavities()
    {
        var assigner = new CavityAssigner(index, terminals, sizer, new(index, new(index, rows)), options.FuseOverContact);
        cavities = [];
        var seekers = rows.SelectMany(r => new[] { (Row: r, AtFrom: true, r.Draft.From.Pin), (Row: r, AtFrom: false, r.Draft.To.Pin) })
            .Where(s => s.Pin is not null && index.IsMate(s.Pin) && s.Row.Net.Side == Side.Bay)
            .Select(s => new CavitySeeker(s.Row, s.AtFrom, s.Pin!, HalfLetter(s.Row.Circuit, s.Pin!), keys.SpanOf(s.Row)));
        foreach (var connector in seekers.GroupBy(s => s.Pin.Thing, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            if (index.Connector(index.Thing(connector.Key)!.ConnectorPart) is { } part)
            {
                cavities.AddRange(assigner.Assign(part, OnePerInline(connector.Key, [.. connector])));
            }
        }

        withoutCavity = assigner.WithoutCavity;
        foreach (var given in cavities)
        {
            SetCavity(given.Seeker.Wire, given.Seeker.AtFrom, given.Cavity);
        }

        FollowOtherSide();
    }

    /// <summary>The two wires of a circuit that meet in an inline connector seek one cavity between them.</summary>
    private List<CavitySeeker> OnePerInline(string connector, List<CavitySeeker> seekers) =>
        index.Thing(connector)!.Kind == ThingKind.Inline ? [.. seekers.DistinctBy(s => s.Wire.Circuit.Id, StringComparer.Ordinal)] : seekers;

    /// <summary>Wires built on the cabin side, and second wires at an inline connector, take the cavity of their circuit.</summary>
    private void FollowOtherSide()
    {
        foreach (var row in rows)
        {
            foreach (var atFrom in (bool[])[true, false])
            {
                var end = atFrom ? row.Draft.From : row.Draft.To;
                if (end.Pin is { } pin && index.IsMate(pin) && (atFrom ? row.FromCavity : row.ToCavity) is null)
                {
                    var mine = cavities.FirstOrDefault(c => c.Seeker.Pin.Thing == pin.Thing && c.Seeker.Wire.Circuit.Id == row.Circuit.Id
                        && (row.Net.Side == Side.Cabin || index.Thing(pin.Thing)!.Kind == ThingKind.Inline));
                    SetCavity(row, atFrom, mine?.Cavity);
                }
            }
        }
    }

    private static void SetCavity(WireRow row, bool atFrom, string? cavity)
    {
        if (atFrom)
        {
            row.FromCavity = cavity;
        }
        else
        {
            row.ToCavity = cavity;
        }
    }

    private string? HalfLetter(Circuit circuit, PinRef pin) =>
        circuit.Half is null ? null : index.Thing(pin.Thing)?.Halves.FirstOrDefault(h => h.Name == circuit.Half)?.Letter ?? circuit.Half;
}
