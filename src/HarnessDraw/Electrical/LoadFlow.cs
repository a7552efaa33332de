using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>Nominal currents of one state in one build: amperes into net [n] at member [m] (0 is the root).</summary>
internal sealed record FlowCase(string State, ImmutableSortedDictionary<string, string> Build, bool Momentary, double[][] MemberA)
{
    /// <summary>True for an alternator's full output into the battery, which is no operating state.</summary>
    public bool IsOutput { get; init; }

    /// <summary>True when no net's current differs by more than a microampere.</summary>
    public bool HasCurrentsOf(FlowCase other)
    {
        const double NothingA = 1e-6;
        for (var n = 0; n < MemberA.Length && MemberA != other.MemberA; n++)
        {
            for (var m = 0; m < MemberA[n].Length; m++)
            {
                if (Math.Abs(MemberA[n][m] - other.MemberA[n][m]) > NothingA)
                {
                    return false;
                }
            }
        }

        return true;
    }
}

/// <summary>A stretch through one net, from one member to another.</summary>
internal readonly record struct NetHop(int Net, int From, int To);

/// <summary>The loop of one load in one case: what the new wires may drop is the limit less what is lost in their joints and, <paramref name="FixedV"/>, in closed contacts, fuses and kept wiring.</summary>
internal sealed record DropPath(string Load, string Circuit, int Case, double NominalV, double LimitFraction, double FixedV, ImmutableArray<NetHop> Hops)
{
    public double LimitV => NominalV * LimitFraction;

    /// <summary>The load and what lies in series behind it, as branches of the nominal network; empty for an alternator's output.</summary>
    public ImmutableArray<Branch> Loads { get; init; } = [];
}

/// <summary>Largest steady current of a fuse, how much of it motors draw, and in which state.</summary>
internal sealed record FuseLoad(double LoadA, double MotorA, double OutputA, string State)
{
    /// <summary>More than any lasting state takes through it, while the starter turns: what passes the fuse of a solenoid.</summary>
    public FuseLoad? Cranking { get; init; }
}

/// <summary>
/// Nominal currents of all nets in all states and the loops of all loads. Wires need not be known: inside a net the sum of the members
/// on one side of a wire is its current.
/// </summary>
internal sealed class LoadFlow
{
    /// <summary>A fuse that passes at least this share of an alternator's output is in its charge lead.</summary>
    private const double OutputShare = 0.6;
    private const double LeastA = 1e-3;
    private readonly HarnessIndex index;
    private readonly CircuitSwitching switching;
    private readonly PlanningOptions options;
    private readonly Dictionary<string, double> extraLoadA = new(StringComparer.Ordinal);
    private readonly Dictionary<string, FuseLoad> cranking = new(StringComparer.Ordinal);
    private ElectricalNetwork network;

    public LoadFlow(HarnessIndex index, CircuitSwitching switching, PlanningOptions options, ImmutableArray<ImmutableSortedDictionary<string, string>> builds)
    {
        this.index = index;
        this.switching = switching;
        this.options = options;
        network = Network();
        var solved = Solve(builds);
        if (AddGivenCurrents(solved))
        {
            network = Network();
            solved = Solve(builds);
        }

        Record(solved);
    }

    public List<FlowCase> Cases { get; } = [];
    public Dictionary<string, FuseLoad> Fuses { get; } = new(StringComparer.Ordinal);
    public IReadOnlyDictionary<string, double> ExtraLoadA => extraLoadA;

    /// <summary>By fuse: the motors whose current passes it in some case, as things and their elements.</summary>
    public Dictionary<string, HashSet<(string Thing, string Element)>> MotorsBehind { get; } = new(StringComparer.Ordinal);

    private List<(NetworkSolution Solution, int Case, Branch? Charging)> Solutions { get; } = [];

    public double LargestA(int net, int member)
    {
        var largestA = 0.0;
        foreach (var one in Cases)
        {
            largestA = Math.Max(largestA, Math.Abs(one.MemberA[net][member]));
        }

        return largestA;
    }

    /// <summary>By member of a net: the largest current of any case, A.</summary>
    public double[] LargestA(int net)
    {
        var largestA = new double[index.Harness.Nets[net].Ends.Length + 1];
        for (var m = 0; m < largestA.Length; m++)
        {
            largestA[m] = LargestA(net, m);
        }

        return largestA;
    }

    /// <summary>The loops of all loads, with the contacts and the given fuse resistances as fixed losses.</summary>
    /// <param name="fuseOhm">Ohms of a fuse by its id.</param>
    /// <param name="wanted">By number: whether the loops of a case are wanted; null: all are.</param>
    public List<DropPath> Paths(Func<string, double> fuseOhm, Func<int, bool>? wanted = null)
    {
        var paths = new List<DropPath>();
        var steady = SteadyLoads();
        var known = new Dictionary<NetworkSolution, List<(int Branch, DropPath Path)>>(ReferenceEqualityComparer.Instance);
        foreach (var (solution, number, charging) in Solutions.Where(s => wanted?.Invoke(s.Case) != false))
        {
            if (charging is not null)
            {
                var walker = new LoopWalker(network, solution, fuseOhm);
                var liveIsMinus = network.Index.Harness.Power.Ground == GroundPolarity.Positive;
                var (fixedV, hops, _) = liveIsMinus ? walker.Upstream(charging.B) : walker.Downstream(charging.A);
                paths.Add(new(charging.Thing!.Id, "", number, charging.Source!.NominalV, options.ChargeDropAt12V / 12, fixedV, hops));
                continue;
            }

            // cases in which the same branches carry current have one solution
            if (!known.TryGetValue(solution, out var loops))
            {
                known.Add(solution, loops = LoopsIn(solution, number, fuseOhm));
            }

            foreach (var (branch, path) in loops)
            {
                if (!(Cases[number].Momentary && steady.Contains(branch)))
                {
                    paths.Add(path.Case == number ? path : path with { Case = number });
                }
            }
        }

        return paths;
    }

    private List<(int Branch, DropPath Path)> LoopsIn(NetworkSolution solution, int number, Func<string, double> fuseOhm)
    {
        var loops = new List<(int, DropPath)>();
        var walker = new LoopWalker(network, solution, fuseOhm);
        for (var i = 0; i < network.Branches.Count; i++)
        {
            var load = network.Branches[i];
            if (load.Kind == BranchKind.Load && load.Element is not null && load.Circuit is not null && Works(load, solution, i))
            {
                var (high, low) = solution.Amperes[i] > 0 ? (load.A, load.B) : (load.B, load.A);
                var (outV, outHops, before) = walker.Upstream(high, i);
                var (backV, backHops, behind) = walker.Downstream(low, i);
                loops.Add((i, new($"{load.Thing!.Id}.{load.Element.PinA}", load.Circuit, number, load.NominalV, LimitOf(load), outV + backV, outHops.AddRange(backHops)) { Loads = [load, .. before, .. behind] }));
            }
        }

        return loops;
    }

    /// <summary>Loads that work in a lasting state: what they get while the starter turns is judged elsewhere.</summary>
    private HashSet<int> SteadyLoads()
    {
        var steady = new HashSet<int>();
        foreach (var (solution, _, _) in Solutions.Where(s => !Cases[s.Case].Momentary && s.Charging is null).DistinctBy(s => s.Solution, ReferenceEqualityComparer.Instance))
        {
            for (var i = 0; i < network.Branches.Count; i++)
            {
                if (network.Branches[i].Kind == BranchKind.Load && Works(network.Branches[i], solution, i))
                {
                    steady.Add(i);
                }
            }
        }

        return steady;
    }

    private static bool Works(Branch load, NetworkSolution solution, int number) => Math.Abs(solution.Amperes[number]) > 0.3 * load.NominalA;

    private double LimitOf(Branch load)
    {
        var circuit = index.Circuit(load.Circuit!);
        return circuit.Importance == Importance.Critical ? options.CriticalDrop : load.Element!.Kind == ElementKind.Motor ? options.MotorDrop : options.OrdinaryDrop;
    }

    private ElectricalNetwork Network()
    {
        var made = new ElectricalNetwork(index, switching, options);
        var nets = index.Harness.Nets;
        for (var n = 0; n < nets.Length; n++)
        {
            var hub = made.Node($"net:{nets[n].Id}");
            var member = 0;
            foreach (var pin in ElectricalNetwork.Members(nets[n]))
            {
                made.Add(new(made.Node(made.NodeName(pin, nets[n].Id)), hub, BranchKind.Conductor, made.Joints.At(pin)) { When = nets[n].OnlyWith, Net = n, Member = member++ });
            }
        }

        made.AddCabinLinks();
        GivenCurrents.AddTo(made, extraLoadA);
        return made;
    }

    private Solved Solve(ImmutableArray<ImmutableSortedDictionary<string, string>> builds)
    {
        var runs = builds.SelectMany(Runs).ToArray();
        var solutions = new NetworkSolution?[runs.Length];
        network.Prepare();

        // states in which the same branches carry current are solved once, each of the others by itself; they are recorded in their order
        var firsts = new Dictionary<string, int>(StringComparer.Ordinal);
        var first = new int[runs.Length];
        var names = network.Carrying([.. runs.Where(r => r.State is not null).Select(r => (r.State!, r.Build))]);
        for (int i = 0, named = 0; i < runs.Length; i++)
        {
            var key = runs[i].State is not null ? names[named++] : $"charging {i}";
            first[i] = firsts.TryAdd(key, i) ? i : firsts[key];
        }

        SideBySide.For(runs.Length, i => solutions[i] = first[i] != i ? null : runs[i].Charging is { } source
            ? network.SolveCharging(source, source.Source!.OutputA!.Value, runs[i].Build)
            : network.SolveNominal(runs[i].State!, runs[i].Build));
        return new(runs, solutions, first);
    }

    private void Record(Solved solved)
    {
        var running = index.Harness.States.FirstOrDefault(s => s.Engine == EngineState.Running)?.Id ?? "full output";
        int[] motors = [.. Enumerable.Range(0, network.Branches.Count).Where(i => network.Branches[i] is { Kind: BranchKind.Load, Element.Kind: ElementKind.Motor, Thing.Kind: not ThingKind.Starter })];
        int[] fuses = [.. Enumerable.Range(0, network.Branches.Count).Where(i => network.Branches[i].Kind == BranchKind.Fuse)];
        var (runs, solutions, first) = solved;
        var amperes = new double[runs.Length][][];
        var motorA = new Dictionary<string, double>[runs.Length];
        for (var i = 0; i < runs.Length; i++)
        {
            var (run, solution) = (runs[i], solutions[first[i]]!);
            var isMomentary = run.State?.Engine == EngineState.Cranking;
            (amperes[i], motorA[i]) = first[i] == i ? (MemberAmperes(solution), isMomentary ? [] : MotorAmperes(solution, motors)) : (amperes[first[i]], motorA[first[i]]);
            var starterA = isMomentary ? StarterA(solution) : 0;
            foreach (var f in fuses)
            {
                var id = network.Branches[f].Thing!.Id;
                if (isMomentary)
                {
                    RecordCranking(id, Math.Abs(solution.Amperes[f]), starterA, run.State!.Id);
                }
                else
                {
                    RecordFuse(id, Math.Abs(solution.Amperes[f]), motorA[i].GetValueOrDefault(id), run.State?.Id ?? running, run.Charging);
                }
            }

            Solutions.Add((solution, Cases.Count, run.Charging));
            Cases.Add(new(run.State?.Id ?? running, run.Build, isMomentary, amperes[i]) { IsOutput = run.Charging is not null });
        }

        foreach (var (id, load) in cranking)
        {
            var lasting = Fuses.GetValueOrDefault(id) ?? new(0, 0, 0, load.State);
            if (load.LoadA > lasting.LoadA + 1e-9)
            {
                Fuses[id] = lasting with { Cranking = load };
            }
        }
    }

    private IEnumerable<Run> Runs(ImmutableSortedDictionary<string, string> build) =>
        index.Harness.States.Select(s => new Run(build, s, null))
            .Concat(network.Branches.Where(b => b.Kind == BranchKind.Source && b.Source is { Kind: SourceKind.Alternator, OutputA: > 0 } && b.When.Holds(build)).Select(b => new Run(build, null, b)));

    private double[][] MemberAmperes(NetworkSolution solution)
    {
        var nets = index.Harness.Nets;
        var amperes = new double[nets.Length][];
        for (var n = 0; n < nets.Length; n++)
        {
            amperes[n] = new double[nets[n].Ends.Length + 1];
        }

        for (var i = 0; i < network.Branches.Count; i++)
        {
            var b = network.Branches[i];
            if (b.Net >= 0)
            {
                amperes[b.Net][b.Member] = Math.Abs(solution.Amperes[i]) < 1e-6 ? 0 : solution.Amperes[i];
            }
        }

        return amperes;
    }

    /// <summary>By fuse: amperes of the motors that draw through it.</summary>
    private Dictionary<string, double> MotorAmperes(NetworkSolution solution, int[] motors)
    {
        var motorA = new Dictionary<string, double>(StringComparer.Ordinal);
        var walker = new LoopWalker(network, solution, _ => 0);
        foreach (var i in motors.Where(i => Math.Abs(solution.Amperes[i]) > LeastA))
        {
            var b = network.Branches[i];
            var (enters, leaves) = solution.Amperes[i] > 0 ? (b.A, b.B) : (b.B, b.A);
            // where the positive pole is grounded the fuses lie behind the load
            foreach (var fuse in walker.Upstream(enters, i).Fuses.Concat(walker.Downstream(leaves, i).Fuses).Distinct(StringComparer.Ordinal))
            {
                motorA[fuse] = motorA.GetValueOrDefault(fuse) + Math.Abs(solution.Amperes[i]);
                if (!MotorsBehind.TryGetValue(fuse, out var behind))
                {
                    MotorsBehind.Add(fuse, behind = []);
                }

                behind.Add((b.Thing!.Id, b.Element!.Id));
            }
        }

        return motorA;
    }

    private void RecordFuse(string id, double loadA, double motorA, string state, Branch? charging)
    {
        Fuses.TryGetValue(id, out var worst);
        worst ??= new(0, 0, 0, state);
        if (charging is not null && loadA < OutputShare * charging.Source!.OutputA)
        {
            // loads that run beside the charging: the states tell them
            Fuses.TryAdd(id, worst);
        }
        else if (charging is not null)
        {
            Fuses[id] = worst with { OutputA = Math.Max(worst.OutputA, Math.Round(loadA, 6)) };
        }
        else if (loadA > worst.LoadA + 1e-9)
        {
            Fuses[id] = new(Math.Round(loadA, 6), motorA, worst.OutputA, state);
        }
    }

    // the motor's own lead is no matter of a standard fuse: what passes with it is left out
    private void RecordCranking(string id, double loadA, double starterA, string state)
    {
        if (loadA > LeastA && (starterA <= LeastA || loadA < starterA) && loadA > (cranking.GetValueOrDefault(id)?.LoadA ?? 0) + 1e-9)
        {
            cranking[id] = new(Math.Round(loadA, 6), 0, 0, state);
        }
    }

    private double StarterA(NetworkSolution solution)
    {
        var amperes = 0.0;
        for (var i = 0; i < network.Branches.Count; i++)
        {
            amperes = Math.Max(amperes, network.Branches[i] is { Kind: BranchKind.Load, Thing.Kind: ThingKind.Starter, Element.Kind: ElementKind.Motor } ? Math.Abs(solution.Amperes[i]) : 0);
        }

        return amperes;
    }

    /// <summary>A circuit's own current figure, where its loads draw less: the rest is drawn at its far end.</summary>
    private bool AddGivenCurrents(Solved solved)
    {
        foreach (var circuit in index.Harness.Circuits.Where(c => c.CurrentA is > 0))
        {
            var root = network.Branches.FindIndex(b => b.Net >= 0 && b.Member == 0 && index.Harness.Nets[b.Net].Circuit == circuit.Id);
            var drawnA = root < 0 ? double.PositiveInfinity : solved.Solutions.Select(s => s is null ? 0 : Math.Abs(s.Amperes[root])).DefaultIfEmpty(0).Max();
            if (circuit.CurrentA!.Value - drawnA > 0.01)
            {
                extraLoadA[circuit.Id] = circuit.CurrentA.Value - drawnA;
            }
        }

        return extraLoadA.Count > 0;
    }

    /// <summary>One case to solve: a state, or an alternator at full output.</summary>
    private readonly record struct Run(ImmutableSortedDictionary<string, string> Build, OperatingState? State, Branch? Charging);

    /// <summary>All runs; those in which the same branches carry current have the solution of the first of them, the others none of their own.</summary>
    private sealed record Solved(Run[] Runs, NetworkSolution?[] Solutions, int[] First);
}
