using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>
/// Tries every single fault in every state of a build: a dead short to the body at the far end of each wire, each fuse and each ground point
/// opened.
/// </summary>
public static class FaultFinder
{
    /// <summary>Ohms of a dead short. Common practice, no source.</summary>
    public const double ShortOhm = 0.0005;

    /// <summary>Below a tenth of its nominal current a load is dead, below nine tenths of what it had it is dim; a sneak is more than a tenth where there was nothing.</summary>
    public const double DeadShare = 0.1;
    public const double DimShare = 0.9;

    /// <summary>What stands before the id of a fuse that is opened.</summary>
    public const string FuseWord = "fuse ";

    /// <summary>A filament with half its current has little more than a quarter of its volts and a hundredth of its light (<see cref="PartLaw.FilamentPower"/>): it was not lit, and nobody misses it.</summary>
    public const double LitShare = 0.5;

    public static FaultStudy Find(Plan plan, ImmutableSortedDictionary<string, string>? build = null, PlanningOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var network = new PlanNetwork(plan, options ?? PlanningOptions.Usual);
        var chosen = build ?? plan.Builds.FirstOrDefault() ?? ImmutableSortedDictionary<string, string>.Empty;
        var circuits = NetworkSolver.Circuits(network, chosen);
        var fuses = RatedFuses(network);
        // states side by side; each fills its own place, and of what they find the order is that of the states
        var inState = new StateFaults[circuits.Length];
        SideBySide.For(circuits.Length, s => inState[s] = new(Shorts(network, fuses, circuits[s], plan.Harness.States[s], chosen, out var shorted), shorted, Opens(network, circuits[s], plan.Harness.States[s], chosen, out var opened), opened));
        var shorts = new Dictionary<string, ShortFault>(StringComparer.Ordinal);
        foreach (var fault in inState.SelectMany(s => s.Shorts))
        {
            if (!shorts.TryGetValue(fault.Wire, out var before) || Badness(fault).CompareTo(Badness(before)) > 0)
            {
                shorts[fault.Wire] = fault;
            }
        }

        return new([.. plan.Wires.Where(w => shorts.ContainsKey(w.Id)).Select(w => shorts[w.Id])], [.. inState.SelectMany(s => s.Opens)])
        {
            NotShorted = NotShorted(network, chosen, shorts),
            RunOn = KeyOffFinder.Find(plan, chosen, options),
            Cranking = CrankingFinder.Find(plan, chosen, options),
            Switches = SwitchFinder.Find(network, chosen),
            Solved = inState.Sum(s => s.Shorted + s.Opened),
        };
    }

    private static ImmutableArray<(string Why, ImmutableArray<string> Wires)> NotShorted(PlanNetwork network, ImmutableSortedDictionary<string, string> build, Dictionary<string, ShortFault> shorts) =>
    [
        .. network.Plan.Wires.Where(w => !shorts.ContainsKey(w.Id))
            .GroupBy(w => !w.Builds.Holds(build) ? "not in this build" : network.Index.Circuit(w.Circuit).IsReturn ? "returns" : "at the body's volts in every state", StringComparer.Ordinal)
            .Select(g => (g.Key, g.Select(w => w.Id).ToImmutableArray())),
    ];

    /// <summary>Each fuse and each ground point opened, in every state.</summary>
    public static ImmutableArray<OpenFault> Opens(Plan plan, ImmutableSortedDictionary<string, string>? build = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var network = new PlanNetwork(plan, PlanningOptions.Usual);
        var chosen = build ?? plan.Builds.FirstOrDefault() ?? ImmutableSortedDictionary<string, string>.Empty;
        return [.. NetworkSolver.Circuits(network, chosen).SelectMany((c, s) => Opens(network, c, plan.Harness.States[s], chosen, out _))];
    }

    /// <summary>Nodes that stand off the body are shorted one by one; wires that end in one node share the solution.</summary>
    private static List<ShortFault> Shorts(PlanNetwork network, (int Branch, FuseChoice Fuse)[] fuses, StateCircuit circuit, OperatingState state, ImmutableSortedDictionary<string, string> build, out int solved)
    {
        var faults = new List<ShortFault>();
        var solutions = new Dictionary<int, NodalSolution>();
        for (var w = 0; w < network.Plan.Wires.Length; w++)
        {
            var wire = network.Plan.Wires[w];
            var b = network.Network.Branches[network.BranchOf(w)];
            if (!wire.Builds.Holds(build) || network.Index.Circuit(wire.Circuit).IsReturn)
            {
                continue;
            }

            // the far end is the one that less current leaves by: shorted, the wire carries what the source drives
            var far = circuit.Solution.Amperes[network.BranchOf(w)] < -1e-9 ? b.A : b.B;
            if (!circuit.Solution.Reached[far] || Math.Abs(circuit.Solution.Volts[far]) < 0.5)
            {
                continue;
            }

            var row = network.Solver.RowOf(far);
            if (!solutions.TryGetValue(row, out var solution))
            {
                solutions.Add(row, solution = circuit.Shorted(far, ShortOhm));
            }

            faults.Add(Judge(network, fuses, circuit, solution, w, far == b.B ? wire.To : wire.From, state));
        }

        solved = solutions.Count;
        return faults;
    }

    private static (int, double) Badness(ShortFault f) => (f.Outcome switch { ShortOutcome.Burns => 3, ShortOutcome.WireHarmedFirst => 2, ShortOutcome.Borne => 1, _ => 0 }, f.HottestC);

    private static ShortFault Judge(PlanNetwork network, (int Branch, FuseChoice Fuse)[] fuses, StateCircuit circuit, NodalSolution solution, int wire, WireEnd at, OperatingState state)
    {
        var planned = network.Plan.Wires[wire];
        var amperes = Math.Abs(solution.Amperes[network.BranchOf(wire)]);
        var (fuse, times, shortest, longest) = Opening(fuses, solution, amperes, planned.ProtectedBy);
        var final = network.Heat.IsCrossLinked(wire) ? Adiabatic.XlpeFinalC : Adiabatic.PvcFinalC;
        var steady = network.Heat.Temperature(wire, amperes);
        // copper reaches what its steady state allows, and no more than the heat of the time until the fuse opens
        var hottest = longest is { } seconds ? Math.Min(steady, Adiabatic.FinalC(circuit.WireC[wire], amperes, seconds, planned.AreaMm2)) : steady;
        var outcome = longest is not null
            ? hottest <= final ? ShortOutcome.FuseOpens : ShortOutcome.WireHarmedFirst
            : hottest <= network.Heat.ClassC(wire) ? ShortOutcome.Borne : ShortOutcome.Burns;
        return new(planned.Id, at.ToString(), state.Id, amperes, fuse?.Id, fuse?.RatingA, times, shortest, longest, hottest, final, outcome);
    }

    /// <summary>Fuses with a rating, by their branch.</summary>
    private static (int Branch, FuseChoice Fuse)[] RatedFuses(PlanNetwork network)
    {
        var rated = network.Plan.Fuses.Where(f => f.RatingA is > 0).GroupBy(f => f.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        return [.. Enumerable.Range(0, network.Network.Branches.Count).Where(i => network.Network.Branches[i].Kind == BranchKind.Fuse && rated.ContainsKey(network.Network.Branches[i].Thing!.Id))
            .Select(i => (i, rated[network.Network.Branches[i].Thing!.Id]))];
    }

    /// <summary>The fuse over the wire (or, without one, any that carries half of the fault's current) at the highest multiple of its rating: it opens first.</summary>
    private static (FuseChoice? Fuse, double Times, double ShortestS, double? LongestS) Opening((int Branch, FuseChoice Fuse)[] fuses, NodalSolution solution, double faultA, ImmutableArray<string> over)
    {
        (FuseChoice? Fuse, double Times) best = (null, 0);
        foreach (var (branch, fuse) in fuses)
        {
            var amperes = Math.Abs(solution.Amperes[branch]);
            var times = amperes / fuse.RatingA!.Value;
            if (times > best.Times && (over.IsEmpty ? amperes >= 0.5 * faultA : over.Contains(fuse.Id)))
            {
                best = (fuse, times);
            }
        }

        if (best.Fuse is null)
        {
            return (null, 0, 0, null);
        }

        var (shortest, longest) = FuseWindow.Of(best.Fuse.Kind, best.Times);
        return (best.Fuse, best.Times, shortest, longest);
    }

    private static List<OpenFault> Opens(PlanNetwork network, StateCircuit circuit, OperatingState state, ImmutableSortedDictionary<string, string> build, out int solved)
    {
        var found = new List<OpenFault>();
        solved = 0;
        foreach (var (what, branches) in Openings(network, circuit))
        {
            var opened = new StateCircuit(network, state, build, NetworkFault.Open(branches), circuit, rough: true);
            solved++;
            var (dead, dim, sneaks) = (new List<ChangedLoad>(), new List<ChangedLoad>(), new List<ChangedLoad>());
            for (var i = 0; i < network.Network.Branches.Count; i++)
            {
                if (network.Network.Branches[i] is not { Kind: BranchKind.Load, Element: not null } b || !b.When.Holds(build))
                {
                    continue;
                }

                var before = circuit.Solution.Amperes[i] / b.NominalA;
                var after = opened.Solution.Amperes[i] / b.NominalA;
                var load = new ChangedLoad(LoadName.Of(b.Thing!, b.Element), b.Circuit, before, after);
                // on where it was off, or the wrong way round
                if (Math.Abs(after) > DeadShare && (Math.Abs(before) <= DeadShare || before * after < 0))
                {
                    sneaks.Add(load);
                }
                else if (Math.Abs(before) > (b.Element.Kind == ElementKind.Lamp ? LitShare : DeadShare) && Math.Abs(after) < DimShare * Math.Abs(before))
                {
                    (Math.Abs(after) <= DeadShare ? dead : dim).Add(load);
                }
            }

            if (dead.Count + dim.Count + sneaks.Count > 0)
            {
                found.Add(new(what, state.Id, [.. dead], [.. dim], [.. sneaks]));
            }
        }

        return found;
    }

    /// <summary>Fuses and ground points that carry something.</summary>
    private static IEnumerable<(string What, int[] Branches)> Openings(PlanNetwork network, StateCircuit circuit)
    {
        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            if (network.Network.Branches[i].Kind == BranchKind.Fuse && Math.Abs(circuit.Solution.Amperes[i]) > 1e-3)
            {
                yield return ($"{FuseWord}{network.Network.Branches[i].Thing!.Id}", [i]);
            }
            else if (network.Network.Branches[i] is { Kind: BranchKind.Conductor, Thing.Kind: ThingKind.GroundPoint } ground && Math.Abs(circuit.Solution.Amperes[i]) > 1e-3)
            {
                yield return ($"ground point {ground.Thing!.Id}", [i]);
            }
        }
    }

    private sealed record StateFaults(List<ShortFault> Shorts, int Shorted, List<OpenFault> Opens, int Opened);
}
