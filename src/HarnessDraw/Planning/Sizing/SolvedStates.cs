using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>
/// The lasting states of the covering builds, solved with the sizes and lengths that the wires have so far: what the next round of sizes rests on. Cases in which the
/// same parts carry current are solved as one: what else their builds have hangs dead on them. Cranking and an alternator's full output keep their nominal currents, as
/// the rules about them do.
/// </summary>
internal sealed class SolvedStates
{
    // under half the source's volts a load counts as off, as it does where the drops are checked
    private const double OnFrom = 0.5;
    private readonly RoutedHarness routed;
    private readonly PlanningOptions options;
    private readonly TerminalChooser terminals;
    private readonly ImmutableArray<WireRow> rows;
    private readonly Dictionary<WireRow, int> numbers = [];
    private readonly Dictionary<(string Thing, string Element), Branch> loads = [];
    private readonly Dictionary<string, int> fuseBranches = new(StringComparer.Ordinal);
    private readonly ImmutableArray<int> cases;

    // by case: the first one that is alike, and those that are first
    private readonly int[] firstAlike;
    private readonly ImmutableArray<int> solved;
    private readonly StateCircuit?[] circuits;
    private readonly Plan draft;

    // which way the nominal current of a case runs through a wire: 1 forward, -1 backward, 0 not looked up yet
    private readonly sbyte[,] along;
    private readonly Dictionary<double, Branch[]> posts = [];
    private readonly List<int> motors = [];
    private PlanNetwork network;

    /// <param name="rated">The same wires with fuses of other ratings: in them the same cases are alike.</param>
    public SolvedStates(RoutedHarness routed, PlanningOptions options, TerminalChooser terminals, ImmutableArray<WireRow> rows, IEnumerable<KeyValuePair<string, ChosenRating>> fuses, SolvedStates? rated = null)
    {
        this.routed = routed;
        this.options = options;
        this.terminals = terminals;
        this.rows = rows;
        for (var w = 0; w < rows.Length; w++)
        {
            numbers.Add(rows[w], w);
        }

        draft = DraftPlan.Of(routed, fuses);
        network = new(draft with { Wires = Wires() }, options, like: rated?.network.Heat);
        foreach (var b in network.Network.Branches.Where(b => b is { Kind: BranchKind.Load, Element: not null }))
        {
            loads.TryAdd((b.Thing!.Id, b.Element!.Id), b);
        }

        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            if (network.Network.Branches[i] is { Kind: BranchKind.Fuse } fuse)
            {
                fuseBranches.TryAdd(fuse.Thing!.Id, i);
            }

            if (network.Network.Branches[i] is { Kind: BranchKind.Load, Element.Kind: ElementKind.Motor, Thing.Kind: not ThingKind.Starter })
            {
                motors.Add(i);
            }
        }

        var flow = routed.Flow.Cases;
        cases = [.. Enumerable.Range(0, flow.Count).Where(c => flow[c] is { Momentary: false, IsOutput: false })];
        firstAlike = rated?.firstAlike ?? Firsts();
        solved = [.. cases.Where(c => firstAlike[c] == c)];
        circuits = new StateCircuit?[flow.Count];
        along = new sbyte[rows.Length, flow.Count];
    }

    /// <summary>Solves the cases with the wires as they are now, and tells the wires what they carry and how warm they get.</summary>
    /// <param name="due">Cases that are to be solved where a changed wire carries current in them; null: all.</param>
    /// <returns>By case: true where it was solved anew.</returns>
    public bool[] Solve(HashSet<int>? due)
    {
        var anew = new bool[circuits.Length];
        network = network.Resized(draft with { Wires = Wires() }, options);
        // cases are solved side by side; each fills its own place
        Parallel.For(0, solved.Length, i =>
        {
            var c = solved[i];
            if (circuits[c] is not { } before || (due?.Contains(c) != false && CarryChanged(before)))
            {
                anew[c] = true;
                var flow = routed.Flow.Cases[c];
                circuits[c] = new(network, StateOf(flow), flow.Build, null, circuits[c], warms: true, rough: true);
            }
        });
        for (var w = 0; w < rows.Length; w++)
        {
            foreach (var c in cases)
            {
                rows[w].CaseA[c] = Math.Abs(AmperesOf(w, c));
                rows[w].CaseC[c] = circuits[firstAlike[c]]!.WireC[w];
            }

            rows[w].SteadyA = RowMaker.SteadyOf(rows[w].CaseA, routed.Flow, options);
        }

        return anew;
    }

    /// <summary>Ohms of both joints of a wire, as its terminals were when the states were last solved.</summary>
    public double JointOhm(WireRow wire) => network.JointOhm[numbers[wire]];

    /// <summary>False for a case whose loops are told in an earlier one.</summary>
    public bool IsFirst(int number) => firstAlike[number] == number;

    /// <summary>False for cranking and an alternator's full output.</summary>
    public bool IsSolved(LoopBudget loop) => circuits[firstAlike[loop.Path.Case]] is not null;

    /// <summary>
    /// The loop of a load as the solved state has it: signed currents along its way, and as fixed all that is lost beside the wires that lose; null where the
    /// load is off after all.
    /// </summary>
    public LoopBudget? Solved(LoopBudget nominal)
    {
        var path = nominal.Path;
        var circuit = circuits[firstAlike[path.Case]]!;
        var circuitV = routed.Index.Circuit(path.Circuit).NominalV;
        if (SourceV(circuit, circuitV) is not { } sourceV || path.Loads.Select(l => Across(circuit, l)).ToArray() is not [var first, .. var behind] || first < OnFrom * sourceV)
        {
            return null;
        }

        var passes = ImmutableArray.CreateBuilder<LoopPass>(nominal.Wires.Length);
        foreach (var pass in nominal.Wires)
        {
            if (Solved(pass, path.Case, circuit) is { CurrentA: > 0 } solved)
            {
                passes.Add(solved);
            }
        }

        var lostV = sourceV - first - behind.Sum();
        var loop = new LoopBudget(path with { NominalV = circuitV }, passes.DrainToImmutable());
        return loop with { Path = loop.Path with { FixedV = lostV - loop.WiresV } };
    }

    /// <summary>
    /// What a fuse passes in the solved states, and how much of it the largest motor behind it draws. In a charge lead only states count in which the engine
    /// stands: what passes while it runs is the alternator's output, which has a rule of its own.
    /// </summary>
    public FuseLoad? LoadOf(string fuse, FuseLoad? nominal)
    {
        var worst = nominal is null ? null : nominal with { LoadA = 0, MotorA = 0 };
        var branch = fuseBranches.GetValueOrDefault(fuse, -1);
        foreach (var c in branch < 0 ? [] : solved)
        {
            var (flow, amperes) = (routed.Flow.Cases[c], Math.Round(Math.Abs(circuits[c]!.Solution.Amperes[branch]), 6));
            if (amperes > (worst?.LoadA ?? 0) + 1e-9 && !(nominal?.OutputA > 0 && StateOf(flow).Engine == EngineState.Running))
            {
                worst = new(amperes, LargestMotorA(circuits[c]!, amperes), nominal?.OutputA ?? 0, flow.State);
            }
        }

        return worst;
    }

    private double LargestMotorA(StateCircuit circuit, double atMostA)
    {
        var most = 0.0;
        foreach (var i in motors)
        {
            if (Math.Abs(circuit.Solution.Amperes[i]) is var a && a <= atMostA + 1e-6)
            {
                most = Math.Max(most, a);
            }
        }

        return most;
    }

    /// <summary>For each case the first one with the same parts that can carry current and the same nominal currents; itself for what is not solved.</summary>
    private int[] Firsts()
    {
        var flow = routed.Flow.Cases;
        int[] found = [.. Enumerable.Range(0, flow.Count)];
        var met = new Dictionary<string, List<int>>(StringComparer.Ordinal);
        foreach (var c in cases)
        {
            var key = network.Network.Carrying(StateOf(flow[c]), flow[c].Build);
            var alike = met.TryGetValue(key, out var list) ? list : met[key] = [];
            found[c] = alike.Where(m => flow[m].HasCurrentsOf(flow[c])).FirstOrDefault(c);
            if (found[c] == c)
            {
                alike.Add(c);
            }
        }

        return found;
    }

    // what carries nothing decides nothing
    private bool CarryChanged(StateCircuit before)
    {
        for (var w = 0; w < rows.Length; w++)
        {
            if (before.Solution.Amperes[network.BranchOf(w)] != 0 && !network.IsSame(w, before.Plan))
            {
                return true;
            }
        }

        return false;
    }

    private OperatingState StateOf(FlowCase flow) => routed.Index.Harness.States.First(s => s.Id == flow.State);

    private LoopPass Solved(LoopPass nominal, int number, StateCircuit circuit)
    {
        var w = numbers[nominal.Wire];
        var row = nominal.Wire;
        ref var sign = ref along[w, number];
        if (sign == 0)
        {
            sign = (sbyte)(row.Draft.FromSide.Sum(m => routed.Flow.Cases[number].MemberA[row.Draft.Net][m]) < 0 ? -1 : 1);
        }

        var inAirA = Ampacity.InAirA(row.SizeNow);
        return new(row, sign * AmperesOf(w, number), (circuit.WireC[w] - row.AmbientC) * inAirA * inAirA);
    }

    private double AmperesOf(int wire, int number) => circuits[firstAlike[number]]!.Solution.Amperes[network.BranchOf(wire)];

    private double Across(StateCircuit circuit, Branch load)
    {
        if (load.Element is null || !loads.TryGetValue((load.Thing!.Id, load.Element.Id), out var here))
        {
            return 0;
        }

        return Math.Abs(circuit.Solution.Volts[here.A] - circuit.Solution.Volts[here.B]);
    }

    /// <summary>Volts at the posts of the battery of these volts; without one, of the converter or alternator.</summary>
    private double? SourceV(StateCircuit circuit, double nominalV)
    {
        double? most = null;
        foreach (var b in PostsOf(nominalV))
        {
            var volts = Math.Abs(circuit.Solution.Volts[b.A] - circuit.Solution.Volts[b.B]);
            most = Math.Max(most ?? volts, volts);
        }

        return most;
    }

    private Branch[] PostsOf(double nominalV)
    {
        if (!posts.TryGetValue(nominalV, out var found))
        {
            found = ((SourceKind[])[SourceKind.Battery, SourceKind.Converter, SourceKind.Alternator])
                .Select(kind => network.Network.Branches.Where(b => b.Kind == BranchKind.Source && b.Source?.Kind == kind && b.Source.NominalV == nominalV).ToArray())
                .FirstOrDefault(ofKind => ofKind.Length > 0, []);
            posts.Add(nominalV, found);
        }

        return found;
    }

    private ImmutableArray<Wire> Wires() => [.. rows.Select((r, i) => DraftPlan.WireOf(routed.Index, terminals, r, i))];
}
