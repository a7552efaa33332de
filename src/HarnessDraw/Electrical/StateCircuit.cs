using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>
/// The network of a plan in one state of one build: the law of every branch, relays as their coils leave them, wires as warm as their
/// currents make them, converters drawing what they give.
/// </summary>
internal sealed class StateCircuit
{
    /// <summary>Share of its volts at which a relay pulls in, and at which it lets go. Common practice, no source: 60 to 70 %, 10 to 30 %.</summary>
    public const double PullsInAt = 0.65;
    public const double DropsOutAt = 0.2;

    /// <summary>What a converter gives of what it takes. Common practice, no source.</summary>
    public const double ConverterEfficiency = 0.9;

    /// <summary>A charged battery over its nominal volts (2.1 V a cell), and the regulator's volts over them (14.1 V of 12).</summary>
    public const double RestOverNominal = 1.05;
    public const double ChargingOverNominal = 1.175;

    private const int MostRounds = 12;
    private const double SettledC = 0.05;
    private PlanNetwork plan;
    private readonly OperatingState state;
    private readonly ImmutableSortedDictionary<string, string> build;
    private readonly NetworkFault fault;
    private readonly KeyTurnedOff? keyOff;
    private readonly Lazy<PartLaw[]> soundLaws;
    private readonly bool[] mayConduct;

    // the same case with wires of other sizes: relays, speeds and converters are as it left them
    private readonly bool goesOn;
    private readonly bool rough;

    // the same case with something wrong: relays begin as the sound case left them, but one that the fault leaves too few volts to pull in is let go
    private readonly bool beginsPulled;

    /// <param name="plan">The network.</param>
    /// <param name="state">Keys and switches.</param>
    /// <param name="build">One choice for each option.</param>
    /// <param name="fault">What is wrong with the vehicle; null: nothing.</param>
    /// <param name="like">A solution nearby, of the same state: its volts are the start, its wires are as warm.</param>
    /// <param name="warms">True when wires are to find their warmth although there is a solution nearby.</param>
    /// <param name="keyOff">The key is turned off in this state: relays are as they are in <paramref name="like"/>.</param>
    /// <param name="rough">True where a meter's digits are enough.</param>
    /// <param name="alike">True where <paramref name="like"/> is another state or build in which the same parts carry current, or this one with wires of other lengths in a network of its own.</param>
    public StateCircuit(PlanNetwork plan, OperatingState state, ImmutableSortedDictionary<string, string> build, NetworkFault? fault = null, StateCircuit? like = null, bool warms = false, KeyTurnedOff? keyOff = null, bool rough = false, bool alike = false)
    {
        this.rough = rough || fault?.Rough == true;
        this.plan = plan;
        this.state = state;
        this.build = build;
        this.keyOff = keyOff;
        this.fault = fault ?? NetworkFault.None;
        soundLaws = new(() => [.. Enumerable.Range(0, plan.Network.Branches.Count).Select(SoundLaw)]);
        // the same case solved before has looked already
        var isSameCase = like is not null && like.plan.Network == plan.Network && like.state == state && like.build == build;
        mayConduct = isSameCase ? like!.mayConduct : plan.Network.MayConduct(state, build);
        goesOn = (isSameCase || alike) && warms && fault is null && keyOff is null;
        beginsPulled = isSameCase && !warms && like!.plan == plan && like.keyOff == keyOff;
        Laws = new PartLaw[plan.Network.Branches.Count];
        Pulled = like is not null && (keyOff is not null || goesOn || beginsPulled) ? (bool[])like.Pulled.Clone() : new bool[Laws.Length];
        WireC = like is null ? [.. Enumerable.Range(0, plan.Plan.Wires.Length).Select(plan.Heat.AmbientC)] : (double[])like.WireC.Clone();
        SetLaws(like);
        Solution = Settle(like?.Solution, null, warm: like is null || warms);
    }

    /// <summary>Solves the same case once more in the same network with wires of other sizes and fuses of other ratings: relays, speeds and converters go on as they are, and what was solved before is overwritten.</summary>
    public void SolveAgain(PlanNetwork resized)
    {
        for (var i = 0; i < Laws.Length; i++)
        {
            Laws[i] = resized.IsRerated(i, plan) && mayConduct[i] ? PartLaw.Resistor(resized.OhmOf(i)) : Laws[i];
        }

        plan = resized;
        for (var w = 0; w < WireC.Length; w++)
        {
            var i = plan.BranchOf(w);
            Laws[i] = mayConduct[i] ? WireLaw(w) : PartLaw.Nothing;
        }

        Solution = Settle(Solution, Solution, warm: true);
    }

    public PlanNetwork Plan => plan;

    public PartLaw[] Laws { get; }

    /// <summary>Contacts, by branch, whose coil has pulled in.</summary>
    public bool[] Pulled { get; }
    public double[] WireC { get; }

    /// <summary>Volts against the metal body.</summary>
    public NodalSolution Solution { get; private set; }

    /// <summary>Relays that never come to rest: their own contact takes their coil's current away.</summary>
    public ImmutableArray<string> Restless { get; private set; } = [];

    /// <summary>Volts of a node against the grounded pole of the first source; null when it hangs on nothing.</summary>
    public double? VoltsOf(int node) => Solution.Reached[node] ? Solution.Volts[node] - Solution.Volts[0] : null;

    /// <summary>The first moment of a dead short from a node to the body: relays and wires are still as they were.</summary>
    public NodalSolution Shorted(int node, double shortOhm) => plan.Solver.Solve(Laws, Solution.Volts, node, 1 / shortOhm, like: Solution.Live);

    private void SetLaws(StateCircuit? like)
    {
        // the laws of a finished solution of the same wires are these but for the fault
        var known = beginsPulled ? like!.soundLaws.Value : null;
        for (var i = 0; i < Laws.Length; i++)
        {
            Laws[i] = known is not null ? known[i] : goesOn && plan.Network.Branches[i].Wire < 0 && mayConduct[i] == like!.mayConduct[i] && !plan.IsRerated(i, like.plan) ? like.Laws[i] : SoundLaw(i);
        }

        foreach (var i in fault.Branches)
        {
            Laws[i] = fault.Law(i, plan.Network.Branches[i], Laws[i], plan.Network.Branches[i].When.Holds(build));
        }
    }

    /// <param name="solution">One nearby to begin with.</param>
    /// <param name="done">One whose figures are no longer needed.</param>
    /// <param name="warm">True when wires are to find their warmth.</param>
    private NodalSolution Settle(NodalSolution? solution, NodalSolution? done, bool warm)
    {
        var round = 0;
        bool changed;
        do
        {
            solution = done = (fault.Rewired ?? plan.Solver).Solve(Laws, solution?.Volts, fault.TiedNode, 1 / fault.TiedOhm, fault.TiedV, rough, solution?.Live, done);
            changed = FollowCoils(solution, round);
            changed |= FollowSpeeds(solution);
            changed |= FollowConverters(solution);
            changed |= warm && FollowHeat(solution);
        }
        while (changed && ++round < MostRounds);
        return solution;
    }

    /// <summary>A branch as it is when nothing is wrong, relays as they begin.</summary>
    private PartLaw SoundLaw(int i)
    {
        var b = plan.Network.Branches[i];
        if (!mayConduct[i] || (keyOff is not null && plan.Network.IsBehindKey(b)))
        {
            return PartLaw.Nothing;
        }

        return b.Kind switch
        {
            BranchKind.Source => SourceLaw(b),
            BranchKind.Load when plan.Network.CoilOver(i) >= 0 && !Pulled[i] => PartLaw.Nothing,
            BranchKind.Load => LoadLaw(b),
            BranchKind.Diode => PartLaw.Diode,
            BranchKind.ConverterInput => PartLaw.Nothing,
            BranchKind.KeyTie => keyOff is null ? PartLaw.Nothing : PartLaw.Resistor(b.Ohm),
            BranchKind.Exciter => keyOff is not { Excites: false } && state.Engine == EngineState.Running ? Exciter : PartLaw.Nothing,
            BranchKind.Contact when plan.Network.CoilOver(i) >= 0 => ElectricalNetwork.IsBreakContact(b) != Pulled[i] ? PartLaw.Resistor(b.Ohm) : PartLaw.Nothing,
            _ when b.Wire >= 0 => WireLaw(b.Wire),
            _ => PartLaw.Resistor(plan.OhmOf(i)),
        };
    }

    private static PartLaw LoadLaw(Branch b) => PartLaw.Load(Behaviour(b.Element?.Kind), b.NominalV, b.NominalA);

    private PartLaw WireLaw(int wire) => PartLaw.Resistor(plan.Heat.Ohm(wire, WireC[wire]) + plan.JointOhm[wire]);

    /// <summary>An exciter terminal has the volts of its alternator's output through three small diodes, up to what those bear and never backwards. Common practice, no source: 3 A.</summary>
    private static readonly PartLaw Exciter = PartLaw.Limited(0, 0.1, 3);

    private PartLaw SourceLaw(Branch b)
    {
        var nominal = b.Source?.NominalV ?? plan.Index.NominalV;
        var ohm = b.Source?.Ohm ?? Source.UsualInternalOhm * nominal / 12;
        return b.Source?.Kind switch
        {
            SourceKind.Alternator => state.Engine == EngineState.Running ? PartLaw.Limited(nominal * ChargingOverNominal, ohm, b.Source.OutputA ?? 1e4) : PartLaw.Nothing,
            SourceKind.Converter => PartLaw.Limited(nominal, ohm, b.Source.OutputA ?? 1e4),
            _ => PartLaw.Battery(nominal * RestOverNominal, ohm),
        };
    }

    /// <summary>False for a branch whose law is a constant resistance in every state.</summary>
    public static bool MayBend(Branch b) => b.Kind switch
    {
        BranchKind.Load => Behaviour(b.Element?.Kind) != PartBehaviour.Ohmic,
        BranchKind.Source or BranchKind.Diode or BranchKind.ConverterInput or BranchKind.Exciter => true,
        _ => false,
    };

    private static PartBehaviour Behaviour(ElementKind? kind) => kind switch
    {
        ElementKind.Lamp => PartBehaviour.Filament,
        ElementKind.Motor => PartBehaviour.Motor,
        ElementKind.Electronic => PartBehaviour.ConstantPower,
        // a current given for a circuit as a whole is what it draws, whatever the volts
        null => PartBehaviour.Motor,
        _ => PartBehaviour.Ohmic,
    };

    private bool FollowCoils(NodalSolution solution, int round)
    {
        var restless = new SortedSet<string>(StringComparer.Ordinal);
        var branches = plan.Network.Branches;
        for (var i = 0; i < Laws.Length; i++)
        {
            // a starter that stands still takes its current by definition: its solenoid has closed
            if (plan.Network.CoilOver(i) is not (>= 0 and var at) || fault.Holds(i) || fault.Stalled.Contains(i) || !mayConduct[i])
            {
                continue;
            }

            var coil = branches[at];
            var share = Math.Abs(solution.Volts[coil.A] - solution.Volts[coil.B]) / coil.NominalV;
            var pulled = !Laws[at].IsOpen && share > (Pulled[i] && !(beginsPulled && round == 0) ? DropsOutAt : PullsInAt);
            if (pulled != Pulled[i])
            {
                Pulled[i] = pulled;
                Laws[i] = pulled == ElectricalNetwork.IsBreakContact(branches[i]) ? PartLaw.Nothing
                    : branches[i].Kind == BranchKind.Load ? LoadLaw(branches[i])
                    : PartLaw.Resistor(branches[i].Ohm + fault.AddedOhm(i));
                restless.Add(branches[i].Thing!.Id);
            }
        }

        Restless = round == MostRounds - 1 ? [.. restless] : [];
        return restless.Count > 0;
    }

    /// <summary>Of the speeds of a motor that have volts, the strongest alone draws.</summary>
    private bool FollowSpeeds(NodalSolution solution)
    {
        var changed = false;
        foreach (var i in plan.Network.IdleSpeeds(solution.Volts, build).Where(i => i >= 0 && !Laws[i].IsOpen))
        {
            Laws[i] = PartLaw.Nothing;
            changed = true;
        }

        return changed;
    }

    private bool FollowConverters(NodalSolution solution)
    {
        var changed = false;
        var branches = plan.Network.Branches;
        for (var i = 0; i < Laws.Length; i++)
        {
            if (branches[i].Kind != BranchKind.ConverterInput || fault.Holds(i) || !branches[i].When.Holds(build))
            {
                continue;
            }

            var output = Enumerable.Range(0, Laws.Length).FirstOrDefault(o => branches[o].Kind == BranchKind.Source && branches[o].Source?.Id == branches[i].Source!.Id, -1);
            if (output < 0 || fault.Holds(output))
            {
                continue;
            }

            var atInput = Math.Abs(solution.Volts[branches[i].A] - solution.Volts[branches[i].B]);
            var fed = atInput > PartLaw.ElectronicShare * branches[i].NominalV;
            var givesW = fed ? Math.Max(0, -solution.Amperes[output] * (solution.Volts[branches[output].A] - solution.Volts[branches[output].B])) : 0;
            var amperes = givesW / ConverterEfficiency / branches[i].NominalV;
            changed |= Math.Abs(amperes - Laws[i].RatedA) > 1e-6 || Laws[output].IsOpen == fed;
            Laws[i] = amperes > 0 ? PartLaw.Load(PartBehaviour.ConstantPower, branches[i].NominalV, amperes) : PartLaw.Nothing;
            Laws[output] = fed ? SourceLaw(branches[output]) : PartLaw.Nothing;
        }

        return changed;
    }

    private bool FollowHeat(NodalSolution solution)
    {
        var isMany = WireC.Length > ConductorHeat.MostOnStack;
        Span<double> amperes = isMany ? new double[WireC.Length] : stackalloc double[WireC.Length];
        for (var w = 0; w < amperes.Length; w++)
        {
            amperes[w] = solution.Amperes[plan.BranchOf(w)];
        }

        var celsius = plan.Heat.Temperatures(amperes, isMany ? new double[WireC.Length] : stackalloc double[WireC.Length]);
        var most = 0.0;
        for (var w = 0; w < celsius.Length; w++)
        {
            most = Math.Max(most, Math.Abs(celsius[w] - WireC[w]));
            WireC[w] = celsius[w];
            if (!Laws[plan.BranchOf(w)].IsOpen)
            {
                Laws[plan.BranchOf(w)] = WireLaw(w);
            }
        }

        return most > SettledC;
    }
}

/// <summary>The key is turned off while the engine goes on turning; with or without what the alternator's exciter terminal then gives.</summary>
internal sealed record KeyTurnedOff(bool Excites);
