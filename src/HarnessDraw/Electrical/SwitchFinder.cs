using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>Closes hand switches one by one and in pairs, and looks for loads that are fed through others and loads that a second switch puts out.</summary>
internal static class SwitchFinder
{
    /// <summary>Combinations solved, at most.</summary>
    public const int MostCombinations = 400;

    /// <summary>A load with less of its source's volts than this has another load in series.</summary>
    private const double SeriesShare = 0.5;

    public static SwitchStudy Find(PlanNetwork network, ImmutableSortedDictionary<string, string> build)
    {
        var harness = network.Plan.Harness;
        var switched = harness.States.SelectMany(s => s.On).Distinct(StringComparer.Ordinal).Where(id => harness.Circuits.Any(c => c.Id == id && !c.IsReturn && c.OnlyWith.Holds(build)))
            .Order(StringComparer.Ordinal).ToList();
        var pairs = Near(network, switched);
        string[][] tried = [.. switched.Select(s => new[] { s }).Concat(pairs).Take(MostCombinations)];
        var circuits = new StateCircuit[tried.Length];
        // a meter's digits tell a load that works from one that does not
        var rest = new StateCircuit(network, Standing([]), build, rough: true);
        SideBySide.For(tried.Length, i => circuits[i] = new(network, Standing(tried[i]), build, null, rest, warms: false, rough: true));
        var alone = Enumerable.Range(0, tried.Length).Where(i => tried[i].Length == 1).ToDictionary(i => tried[i][0], i => circuits[i], StringComparer.Ordinal);
        var sneaks = ImmutableArray.CreateBuilder<SwitchEffect>();
        var kills = ImmutableArray.CreateBuilder<SwitchEffect>();
        // a load of no circuit is a cabin lamp in series with its wire, as the charge lamp is: it is meant to be fed through what lies behind it
        var loads = Enumerable.Range(0, network.Network.Branches.Count).Where(i => network.Network.Branches[i] is { Kind: BranchKind.Load, Element: { Kind: not ElementKind.Sender }, Circuit: not null } b && b.When.Holds(build)).ToArray();
        var motors = Enumerable.Range(0, network.Network.Branches.Count).Where(i => network.Network.Branches[i] is { Kind: BranchKind.Load, Element.Kind: ElementKind.Motor }).ToLookup(i => network.Network.Branches[i].Thing!);
        for (var c = 0; c < tried.Length; c++)
        {
            foreach (var i in loads)
            {
                var load = network.Network.Branches[i];
                var share = Math.Abs(circuits[c].Solution.Amperes[i]) / load.NominalA;
                var name = $"{load.Thing!.Id} {load.Element!.Id}";
                if (share > FaultFinder.DeadShare && Math.Abs(circuits[c].Solution.Volts[load.A] - circuits[c].Solution.Volts[load.B]) < SeriesShare * load.NominalV)
                {
                    sneaks.Add(new([.. tried[c]], name, share));
                }

                if (tried[c].Length == 2 && share <= FaultFinder.DeadShare && !IsOtherSpeed(network, motors, circuits[c], i) && tried[c].FirstOrDefault(s => Math.Abs(alone[s].Solution.Amperes[i]) > SeriesShare * load.NominalA) is { } by)
                {
                    kills.Add(new([by, tried[c].First(s => s != by)], name, share));
                }
            }
        }

        return new(tried.Length, switched.Count + (switched.Count * (switched.Count - 1L) / 2), sneaks.ToImmutable(), kills.ToImmutable());
    }

    private static OperatingState Standing(string[] on) => new(string.Join(" and ", on), KeyPosition.Run, EngineState.Stopped, [.. on], null);

    /// <summary>Pairs whose circuits meet in a fuse, a thing or a ground point: only those can feed one another.</summary>
    private static IEnumerable<string[]> Near(PlanNetwork network, List<string> switched)
    {
        var returns = network.Plan.Wires.Where(w => network.Index.Circuit(w.Circuit).IsReturn).ToLookup(w => w.From.At, w => w.To.At, StringComparer.Ordinal);
        var touched = switched.Select(id =>
        {
            var circuit = network.Index.Circuit(id);
            string[] things = [.. circuit.Feeds.Select(f => f.Thing).Append(circuit.From?.Thing).OfType<string>()];
            return things.Concat(circuit.ProtectedBy).Concat(things.SelectMany(t => returns[t])).ToHashSet(StringComparer.Ordinal);
        }).ToArray();
        return from a in Enumerable.Range(0, switched.Count) from b in Enumerable.Range(a + 1, switched.Count - a - 1) where touched[a].Overlaps(touched[b]) select new[] { switched[a], switched[b] };
    }

    // a faster speed of a motor takes the slower one's place
    private static bool IsOtherSpeed(PlanNetwork network, ILookup<Thing, int> motors, StateCircuit circuit, int load)
    {
        var b = network.Network.Branches[load];
        return b.Element!.Kind == ElementKind.Motor
            && motors[b.Thing!].Any(i => i != load && Math.Abs(circuit.Solution.Amperes[i]) > FaultFinder.DeadShare * network.Network.Branches[i].NominalA);
    }
}
