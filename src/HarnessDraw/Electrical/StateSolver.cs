using System.Buffers;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>
/// Solves the network for nominal currents, on which sizes rest: sources without resistance, every load at its nominal current. Relay
/// contacts follow the volts over their coils and are settled by repetition. What is to be expected at the vehicle: <see cref="StateCircuit"/>.
/// </summary>
internal sealed partial class ElectricalNetwork
{
    private const double OpenSiemens = 1e-10;
    private List<int>[]? touching;
    private int[]? coils;
    private int[][]? speeds;
    private RowGraph? graph;

    // what conducts in a state, and in a build
    private readonly ConcurrentDictionary<object, bool[]> conductIn = new(ReferenceEqualityComparer.Instance);
    private readonly ConcurrentBag<NominalWork> idle = [];

    /// <summary>
    /// Currents for sizing: one source at nominal volts, no engine, resistances of wires left out, so every load draws its nominal current.
    /// </summary>
    public NetworkSolution SolveNominal(OperatingState state, ImmutableSortedDictionary<string, string> build)
    {
        const int MostRounds = 8;
        Prepare();
        var conducts = MayConduct(state, build);
        var work = idle.TryTake(out var done) ? done : new(new double[branches.Count], new double[branches.Count], new double[names.Count], matrix.Value.NewFigures());
        var (siemens, emf, injected, figures) = work;
        for (var i = 0; i < branches.Count; i++)
        {
            emf[i] = 0;
            siemens[i] = conducts[i] ? StartSiemens(i, out emf[i]) : OpenSiemens;
        }

        var volts = new double[names.Count];
        for (var round = 1; ; round++)
        {
            Array.Clear(injected);
            for (var i = 0; i < branches.Count; i++)
            {
                injected[branches[i].A] += emf[i] * siemens[i];
                injected[branches[i].B] -= emf[i] * siemens[i];
            }

            matrix.Value.Solve(siemens, injected, figures, volts);
            if (round == MostRounds || !FollowCoils(siemens, volts, build))
            {
                break;
            }
        }

        var solution = Result(siemens, volts, emf);
        idle.Add(work);
        return solution;
    }

    /// <summary>The alternator's rated output flowing into the battery with every load off.</summary>
    public NetworkSolution SolveCharging(Branch alternator, double outputA, ImmutableSortedDictionary<string, string> build)
    {
        Prepare();
        var siemens = new double[branches.Count];
        for (var i = 0; i < siemens.Length; i++)
        {
            var b = branches[i];
            // the cut-out of a regulator and an ammeter lie in the charge path and conduct
            var on = b.When.Holds(build) && (b.Kind is BranchKind.Conductor or BranchKind.Fuse || (b.Kind == BranchKind.Contact && coils![i] < 0));
            siemens[i] = b.Kind == BranchKind.Source && b.Source?.Kind == SourceKind.Battery ? 1000 : on ? 1 / BranchOhm(b) : OpenSiemens;
        }

        var injected = new double[names.Count];
        injected[alternator.A] += outputA;
        injected[alternator.B] -= outputA;
        var volts = new double[names.Count];
        matrix.Value.Solve(siemens, injected, matrix.Value.NewFigures(), volts);
        var solution = Result(siemens, volts, new double[branches.Count]);

        // an output that reaches no battery flows nowhere: only then do such volts stand across its posts
        return Math.Abs(solution.Volts[alternator.A] - solution.Volts[alternator.B]) < 1000 ? solution : solution with { Amperes = new double[branches.Count] };
    }

    /// <summary>Finds what touches what, so that states can be solved side by side afterwards.</summary>
    public void Prepare()
    {
        _ = Speeds;
        if (names.Count > 0)
        {
            BranchesAt(0);
        }

        coils ??= [.. branches.Select(CoilOf)];
        graph ??= new(names.Count, [.. branches.Select(b => (b.A, b.B))]);
    }

    /// <summary>
    /// Names, for states of builds, the branches through which a current can flow, relay contacts pulled or not. States of builds with the same name are one case to a
    /// solver: what else there is carries nothing.
    /// </summary>
    public string[] Carrying(IReadOnlyList<(OperatingState State, ImmutableSortedDictionary<string, string> Build)> cases)
    {
        Prepare();
        var names = new string[cases.Count];
        SideBySide.For(names.Length, i => names[i] = Carrying(cases[i].State, cases[i].Build));
        return names;
    }

    private string Carrying(OperatingState state, ImmutableSortedDictionary<string, string> build)
    {
        var conducts = MayConduct(state, build);
        var roles = ArrayPool<PartRole>.Shared.Rent(conducts.Length);
        for (var i = 0; i < conducts.Length; i++)
        {
            roles[i] = !conducts[i] ? PartRole.Open : branches[i].Kind == BranchKind.Source ? PartRole.Gives : PartRole.Takes;
        }

        // the engine's state, then a bit a branch
        var name = new char[1 + ((conducts.Length + 15) / 16)];
        name[0] = (char)state.Engine;
        foreach (var i in graph!.Carrying(roles))
        {
            name[1 + (i / 16)] |= (char)(1 << (i % 16));
        }

        ArrayPool<PartRole>.Shared.Return(roles);
        return new(name);
    }

    /// <summary>By branch: true when the state and the build let it conduct; relay contacts have still to ask their coils. The network is complete.</summary>
    public bool[] MayConduct(OperatingState state, ImmutableSortedDictionary<string, string> build)
    {
        var (live, there) = (conductIn.GetOrAdd(state, _ => [.. branches.Select(b => IsLive(b, state))]), conductIn.GetOrAdd(build, _ => [.. branches.Select(b => b.When.Holds(build))]));
        var both = new bool[branches.Count];
        for (var i = 0; i < both.Length; i++)
        {
            both[i] = live[i] && there[i];
        }

        return both;
    }

    private bool IsLive(Branch b, OperatingState state) =>
        (b.Gate is not { } gate || switching.IsLive(gate, state)) && (b.GivenFor is not { } given || switching.DrawsGiven(given, state))
        && !(b is { Kind: BranchKind.Load, Thing.Kind: ThingKind.Starter, Element.Kind: ElementKind.Motor } && state.Engine != EngineState.Cranking);

    /// <summary>True for a contact or cabin link that the key opens.</summary>
    public bool IsBehindKey(Branch b) => b is { Gate: { } gate, Kind: not BranchKind.KeyTie } && Index.Circuit(gate).LiveWith != KeyPosition.Off;

    /// <summary>Number of the coil branch that works a contact, or a starter's motor by its solenoid; -1 for what no coil works.</summary>
    public int CoilOver(int contact) => coils![contact];

    /// <summary>DIN 72552: 87a is the contact that opens when the relay pulls in.</summary>
    public static bool IsBreakContact(Branch b) => b.Element?.PinB == "87a" || b.Element?.PinA == "87a" || b.Element?.Id.StartsWith("breaks ", StringComparison.Ordinal) == true;

    /// <summary>Ohms of a branch; a fuse's as if its rating were not known yet.</summary>
    public double BranchOhm(Branch b) => b.Kind == BranchKind.Fuse ? options.FuseOhm(null) : Math.Max(b.Ohm, 1e-6);

    /// <summary>
    /// The speeds of a motor that do not turn it: of those that have volts and share a return, only the one that draws most runs.
    /// </summary>
    public HashSet<int> IdleSpeeds(double[] volts, ImmutableSortedDictionary<string, string> build)
    {
        var idle = new HashSet<int>();
        foreach (var motor in Speeds)
        {
            var running = -1;
            foreach (var i in motor)
            {
                var b = branches[i];
                if (!b.When.Holds(build) || Math.Abs(volts[b.A] - volts[b.B]) < 0.5 * b.NominalV)
                {
                    continue;
                }

                var stronger = running < 0 || b.NominalA > branches[running].NominalA;
                idle.Add(stronger ? running : i);
                running = stronger ? i : running;
            }
        }

        return idle;
    }

    /// <summary>Motors with more than one speed winding between their feeds and one return.</summary>
    private int[][] Speeds => speeds ??=
    [
        .. Enumerable.Range(0, branches.Count).Where(i => branches[i] is { Kind: BranchKind.Load, Element.Kind: ElementKind.Motor })
            .GroupBy(i => (branches[i].Thing!.Id, branches[i].Element!.PinB)).Where(g => g.Count() > 1).Select(g => g.ToArray()),
    ];

    /// <summary>Numbers of the branches that touch a node, in branch order.</summary>
    public List<int> BranchesAt(int node)
    {
        if (touching is null || touching.Length != names.Count)
        {
            touching = new List<int>[names.Count];
            for (var i = 0; i < touching.Length; i++)
            {
                touching[i] = [];
            }

            for (var i = 0; i < branches.Count; i++)
            {
                touching[branches[i].A].Add(i);
                touching[branches[i].B].Add(i);
            }
        }

        return touching[node];
    }

    private double StartSiemens(int branch, out double emfV)
    {
        var b = branches[branch];
        emfV = 0;
        // for nominal currents nothing but loads resists
        const double Closed = 1e4;
        switch (b.Kind)
        {
            case BranchKind.Source:
                emfV = b.Source?.NominalV ?? Index.NominalV;
                return b.Source?.Kind == SourceKind.Alternator ? OpenSiemens : Closed;
            case BranchKind.ConverterInput or BranchKind.Exciter or BranchKind.KeyTie:
                return OpenSiemens;
            case BranchKind.Diode:
                return Suppresses(b) ? OpenSiemens : Closed;
            case BranchKind.Contact when IsWorked(branch):
                return IsBreakContact(b) ? Closed : OpenSiemens;
            case BranchKind.Load:
                return 1 / b.Ohm;
            default:
                return Closed;
        }
    }

    private bool FollowCoils(double[] siemens, double[] volts, ImmutableSortedDictionary<string, string> build)
    {
        var changed = false;
        for (var i = 0; i < branches.Count; i++)
        {
            if (branches[i].Kind == BranchKind.Contact && coils![i] is >= 0 and var at)
            {
                var coil = branches[at];
                var pulled = Math.Abs(volts[coil.A] - volts[coil.B]) > 0.5 * coil.NominalV;
                var wanted = pulled != IsBreakContact(branches[i]) && branches[i].When.Holds(build) ? 1e4 : OpenSiemens;
                changed |= wanted != siemens[i];
                siemens[i] = wanted;
            }
        }

        foreach (var i in IdleSpeeds(volts, build).Where(i => i >= 0 && siemens[i] > OpenSiemens))
        {
            siemens[i] = OpenSiemens;
            changed = true;
        }

        return changed;
    }

    private bool IsWorked(int branch)
    {
        Prepare();
        return coils![branch] >= 0;
    }

    private int CoilOf(Branch contact)
    {
        // the solenoid of a starter closes its motor's feed; where nothing is wired to it, it is not ours to close
        if (contact is { Kind: BranchKind.Load, Thing.Kind: ThingKind.Starter, Element.Kind: ElementKind.Motor })
        {
            return branches.FindIndex(b => b is { Kind: BranchKind.Load, Element.Kind: ElementKind.Coil, Circuit: not null } && b.Thing == contact.Thing);
        }

        if (contact.Kind != BranchKind.Contact || (contact.Thing is not { Kind: ThingKind.Relay } && contact.Element?.WorkedBy is null))
        {
            return -1;
        }

        var id = contact.Element!.WorkedBy ?? contact.Thing!.Elements.FirstOrDefault(e => e.Kind == ElementKind.Coil)?.Id;
        return branches.FindIndex(b => b.Kind == BranchKind.Load && b.Thing?.Id == contact.Thing!.Id && b.Element?.Id == id);
    }

    /// <summary>A diode across a coil of its own thing: it conducts only while the coil lets go.</summary>
    private static bool Suppresses(Branch diode) =>
        diode.Thing!.Elements.Any(e => e.Kind == ElementKind.Coil && ((e.PinA == diode.Element!.PinA && e.PinB == diode.Element.PinB) || (e.PinA == diode.Element.PinB && e.PinB == diode.Element.PinA)));

    private NetworkSolution Result(double[] siemens, double[] volts, double[] emf)
    {
        var amperes = new double[branches.Count];
        for (var i = 0; i < branches.Count; i++)
        {
            amperes[i] = siemens[i] <= OpenSiemens ? 0 : (volts[branches[i].A] - volts[branches[i].B] - emf[i]) * siemens[i];
        }

        return new(volts, amperes);
    }

    /// <summary>Working figures by branch, and those pushed in by node.</summary>
    private sealed record NominalWork(double[] Siemens, double[] Emf, double[] Injected, SparseNetwork.Figures Figures);
}
