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
    private Plan draft;

    // which way the nominal current of a case runs through a wire: 1 forward, -1 backward, 0 not looked up yet
    private readonly sbyte[,] along;
    private readonly Dictionary<double, Branch[]> posts;

    // a battery with those in series below it
    private readonly Dictionary<Branch, Branch[]> chains;
    private readonly List<((string Thing, string Element) Motor, int Branch)> motors = [];

    // the wires as they were last handed to the network, and what of their rows they were made from
    private readonly Wire[] wires;
    private readonly (int Size, double ConductorMm, string? FromCavity, string? ToCavity)[] drawn;
    private PlanNetwork network;

    // until each case has gone on from there
    private SolvedStates? like;

    /// <param name="like">Wires between the same ends, solved, with their splices elsewhere: each case begins there.</param>
    public SolvedStates(RoutedHarness routed, PlanningOptions options, TerminalChooser terminals, ImmutableArray<WireRow> rows, IEnumerable<KeyValuePair<string, ChosenRating>> fuses, SolvedStates? like = null)
    {
        this.like = like;
        this.routed = routed;
        this.options = options;
        this.terminals = terminals;
        this.rows = rows;
        for (var w = 0; w < rows.Length; w++)
        {
            numbers.Add(rows[w], w);
        }

        draft = DraftPlan.Of(routed, fuses);
        drawn = new (int, double, string?, string?)[rows.Length];
        wires = new Wire[rows.Length];
        Redraw();
        network = new(draft with { Wires = [.. wires] }, options);
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
                motors.Add(((network.Network.Branches[i].Thing!.Id, network.Network.Branches[i].Element!.Id), i));
            }
        }

        posts = routed.Index.Harness.Circuits.Select(c => c.NominalV).Distinct().ToDictionary(v => v, PostsOf);
        chains = posts.Values.SelectMany(p => p).Distinct().ToDictionary(b => b, ChainOf);
        var flow = routed.Flow.Cases;
        cases = [.. Enumerable.Range(0, flow.Count).Where(IsSolved)];
        firstAlike = like?.firstAlike ?? Firsts();
        solved = [.. cases.Where(c => firstAlike[c] == c)];
        circuits = new StateCircuit?[flow.Count];
        along = new sbyte[rows.Length, flow.Count];
    }

    /// <summary>Fuses get other ratings: the cases in which one passes current are solved again with the next.</summary>
    public void Rerate(IEnumerable<KeyValuePair<string, ChosenRating>> fuses)
    {
        draft = DraftPlan.Of(routed, fuses);
        network = network.Resized(draft with { Wires = [.. wires] });
    }

    /// <summary>Solves the cases with the wires as they are now.</summary>
    /// <param name="due">Cases that are to be solved where a changed wire carries current in them; null: all, and the wires are told what they carry and how warm they get.</param>
    /// <param name="loopsOf">By case: its loops, by their numbers.</param>
    /// <param name="nominal">Loops by nominal currents.</param>
    /// <param name="told">Loops as they were told last; those of the cases that are solved anew are told again.</param>
    public void Solve(HashSet<int>? due, int[][] loopsOf, ImmutableArray<LoopBudget> nominal, LoopBudget?[] told)
    {
        if (Redraw())
        {
            network = network.Resized(draft with { Wires = [.. wires] });
        }

        // cases are solved side by side; each fills its own places
        var mostPasses = nominal.IsEmpty ? 0 : nominal.Max(l => l.Wires.Length);
        SideBySide.For(solved.Length, () =>
        {
            var passing = new LoopPass[mostPasses];
            return i => Tell(solved[i], passing);
        });
        like = null;
        if (due is null)
        {
            TellWires();
        }

        void Tell(int c, LoopPass[] passing)
        {
            if (circuits[c] is not { } circuit)
            {
                var flow = routed.Flow.Cases[c];
                circuits[c] = new(network, StateOf(flow), flow.Build, like: like?.circuits[c], warms: true, rough: true, alike: like is not null);
            }
            else if (due?.Contains(c) != false && CarryChanged(circuit))
            {
                circuit.SolveAgain(network);
            }
            else
            {
                return;
            }

            foreach (var l in loopsOf[c])
            {
                told[l] = Solved(nominal[l], passing);
            }
        }
    }

    private void TellWires()
    {
        foreach (var c in cases)
        {
            var circuit = circuits[firstAlike[c]]!;
            for (var w = 0; w < rows.Length; w++)
            {
                rows[w].CaseA[c] = Math.Abs(circuit.Solution.Amperes[network.BranchOf(w)]);
                rows[w].CaseC[c] = circuit.WireC[w];
            }
        }

        foreach (var row in rows)
        {
            row.SteadyA = RowMaker.SteadyOf(row.CaseA, routed.Flow, options);
        }
    }

    /// <summary>The network with the wires of the finished plan, which are those of the rows in their order.</summary>
    public PlanNetwork Finished(Plan plan) => network.Resized(plan);

    /// <summary>A case as it was solved last; null for one that was not, or is told in an earlier one.</summary>
    public StateCircuit? Near(OperatingState state, ImmutableSortedDictionary<string, string> build)
    {
        foreach (var c in solved)
        {
            if (routed.Flow.Cases[c] is var flow && flow.Build == build && StateOf(flow) == state)
            {
                return circuits[c];
            }
        }

        return null;
    }

    /// <summary>Ohms of both joints of a wire, as its terminals were when the states were last solved.</summary>
    public double JointOhm(WireRow wire) => network.JointOhm[numbers[wire]];

    /// <summary>False for a case whose loops are told in an earlier one.</summary>
    public bool IsFirst(int number) => firstAlike[number] == number;

    /// <summary>False for cranking and an alternator's full output.</summary>
    public bool IsSolved(int number) => routed.Flow.Cases[number] is { Momentary: false, IsOutput: false };

    /// <summary>
    /// What a fuse passes in the solved states, and how much of it the motors behind it draw. In a charge lead only states count in which the engine
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
                worst = new(amperes, MotorA(fuse, circuits[c]!), nominal?.OutputA ?? 0, flow.State) { Cranking = nominal?.Cranking };
            }
        }

        return worst;
    }

    /// <summary>
    /// The loop of a load as the solved state has it: signed currents along its way, and as fixed all that is lost beside the wires that lose; null where the
    /// load is off after all.
    /// </summary>
    private LoopBudget? Solved(LoopBudget nominal, LoopPass[] passing)
    {
        var path = nominal.Path;
        var circuit = circuits[firstAlike[path.Case]]!;
        var circuitV = routed.Index.Circuit(path.Circuit).NominalV;
        if (SourceV(circuit, circuitV) is not { } sourceV || path.Loads.IsEmpty || Across(circuit, path.Loads[0]) is var first && first < OnFrom * sourceV)
        {
            return null;
        }

        var lostV = sourceV - first;
        for (var l = 1; l < path.Loads.Length; l++)
        {
            lostV -= Across(circuit, path.Loads[l]);
        }

        var (count, wiresV) = (0, 0.0);
        foreach (var pass in nominal.Wires)
        {
            if (Solved(pass.Wire, path.Case, circuit) is { CurrentA: > 0 } solved)
            {
                passing[count++] = solved;
                wiresV += solved.DropV(solved.Wire.Size);
            }
        }

        return new(path with { NominalV = circuitV, FixedV = lostV - wiresV }, ImmutableArray.Create(passing.AsSpan(0, count)));
    }

    // amperes of the motors behind a fuse
    private double MotorA(string fuse, StateCircuit circuit)
    {
        var sum = 0.0;
        foreach (var (motor, i) in routed.Flow.MotorsBehind.TryGetValue(fuse, out var behind) ? motors : [])
        {
            sum += behind!.Contains(motor) ? Math.Abs(circuit.Solution.Amperes[i]) : 0;
        }

        return sum;
    }

    /// <summary>For each case the first one with the same parts that can carry current and the same nominal currents; itself for what is not solved.</summary>
    private int[] Firsts()
    {
        var flow = routed.Flow.Cases;
        int[] found = [.. Enumerable.Range(0, flow.Count)];
        var met = new Dictionary<string, List<int>>(StringComparer.Ordinal);
        var names = network.Network.Carrying([.. cases.Select(c => (StateOf(flow[c]), flow[c].Build))]);
        foreach (var (c, name) in cases.Zip(names))
        {
            var alike = met.TryGetValue(name, out var list) ? list : met[name] = [];
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

        foreach (var fuse in fuseBranches.Values)
        {
            if (before.Solution.Amperes[fuse] != 0 && network.IsRerated(fuse, before.Plan))
            {
                return true;
            }
        }

        return false;
    }

    private OperatingState StateOf(FlowCase flow) => routed.Index.Harness.States.First(s => s.Id == flow.State);

    private LoopPass Solved(WireRow row, int number, StateCircuit circuit)
    {
        var w = numbers[row];
        ref var sign = ref along[w, number];
        if (sign == 0)
        {
            sign = (sbyte)(Nominal(row, routed.Flow.Cases[number]) < 0 ? -1 : 1);
        }

        var inAirA = Ampacity.InAirA(row.SizeNow);
        return new(row, sign * circuit.Solution.Amperes[network.BranchOf(w)], (circuit.WireC[w] - row.AmbientC) * inAirA * inAirA);
    }

    // amperes along the wire by nominal currents
    private static double Nominal(WireRow row, FlowCase flow) => row.Draft.FromSide.Sum(m => flow.MemberA[row.Draft.Net][m]);

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
        foreach (var b in posts[nominalV])
        {
            var volts = 0.0;
            foreach (var link in chains[b])
            {
                volts += Math.Abs(circuit.Solution.Volts[link.A] - circuit.Solution.Volts[link.B]);
            }

            most = Math.Max(most ?? volts, volts);
        }

        return most;
    }

    private Branch[] ChainOf(Branch post) =>
        [.. routed.Index.Harness.Power.Chain(post.Source!).Select(s => network.Network.Branches.First(b => b.Kind == BranchKind.Source && b.Source?.Id == s.Id))];

    private Branch[] PostsOf(double nominalV) =>
        ((SourceKind[])[SourceKind.Battery, SourceKind.Converter, SourceKind.Alternator])
            .Select(kind => network.Network.Branches.Where(b => b.Kind == BranchKind.Source && b.Source?.Kind == kind && routed.Index.Harness.Power.LiveV(b.Source) == nominalV).ToArray())
            .FirstOrDefault(ofKind => ofKind.Length > 0, []);

    /// <summary>Makes those wires anew whose size, length or cavities have changed; false where none have.</summary>
    private bool Redraw()
    {
        var changed = false;
        for (var w = 0; w < wires.Length; w++)
        {
            var now = (rows[w].Size, rows[w].ConductorMm, rows[w].FromCavity, rows[w].ToCavity);
            if (wires[w] is null || drawn[w] != now)
            {
                (wires[w], drawn[w], changed) = (DraftPlan.WireOf(routed.Index, terminals, rows[w], w), now, true);
            }
        }

        return changed;
    }
}
