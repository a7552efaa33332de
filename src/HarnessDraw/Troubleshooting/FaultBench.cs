using System.Collections.Concurrent;
using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>
/// One vehicle in one build on which faults are tried: solved once as it should be, then with each fault in every state. A short that passes more than
/// twice its rating through a fuse opens that fuse, for all states from then on.
/// </summary>
public sealed class FaultBench
{
    /// <summary>A fuse opens for certain at this multiple of its rating. Common practice, no source; see the windows in <see cref="FuseWindow"/>.</summary>
    public const double BlowsAt = 2;

    // amperes: what carries less in a state changes no load by being open
    private const double NothingA = 1e-3;

    // volts: no meter tells them from none
    private const double NothingV = 1e-3;
    private const int MostBlown = 6;
    private readonly ConcurrentDictionary<string, SolvedFault> solved = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, StateCircuit> withOpen = new(StringComparer.Ordinal);
    private readonly int live;
    private readonly (FaultBench Whole, ImmutableArray<int> States)? all;
    private readonly Dictionary<(int Wire, bool AtFrom), int> pointOf = [];
    private readonly ImmutableArray<(int Branch, double RatingA)> fuses;

    public FaultBench(Plan plan, ImmutableSortedDictionary<string, string>? build = null, PlanningOptions? options = null)
    {
        Network = new(plan, options ?? PlanningOptions.Usual);
        Build = build ?? plan.Builds.FirstOrDefault() ?? ImmutableSortedDictionary<string, string>.Empty;
        States = plan.Harness.States;
        Sound = NetworkSolver.Circuits(Network, Build);
        Loads = SeenLoad.Of(Network, Build);
        Points = ProbePoints.Of(Network, Build);
        for (var p = 0; p < Points.Length; p++)
        {
            if (Points[p].Wire >= 0)
            {
                pointOf[(Points[p].Wire, Points[p].AtFrom)] = p;
            }
        }

        var ratings = plan.Fuses.Where(f => f.RatingA > 0).GroupBy(f => f.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().RatingA!.Value, StringComparer.Ordinal);
        fuses = [.. Network.Network.Branches.Select((b, i) => (b, i)).Where(f => f.b.Kind == BranchKind.Fuse && ratings.ContainsKey(f.b.Thing!.Id)).Select(f => (f.i, ratings[f.b.Thing!.Id]))];
        live = LiveNode();
        ShouldWork = [.. Sound.Select(s => Loads.Select(l => l.ShouldWork(Network, s)).ToImmutableArray())];
        WithoutFault = Read(Sound, null, [], withVolts: true);
    }

    private FaultBench(FaultBench whole, ImmutableArray<int> states)
    {
        all = (whole, states);
        Network = whole.Network;
        Build = whole.Build;
        States = [.. states.Select(s => whole.States[s])];
        Sound = [.. states.Select(s => whole.Sound[s])];
        Loads = whole.Loads;
        Points = whole.Points;
        pointOf = whole.pointOf;
        fuses = whole.fuses;
        live = whole.live;
        ShouldWork = [.. states.Select(s => whole.ShouldWork[s])];
        WithoutFault = Read(Sound, null, [], withVolts: true);
    }

    /// <summary>The same vehicle in some of its states.</summary>
    public FaultBench Only(ImmutableArray<int> states) => new(this, states);

    internal PlanNetwork Network { get; }
    public ImmutableSortedDictionary<string, string> Build { get; }
    public ImmutableArray<OperatingState> States { get; }
    internal StateCircuit[] Sound { get; }
    public ImmutableArray<SeenLoad> Loads { get; }
    public ImmutableArray<ProbePoint> Points { get; }

    /// <summary>By state and load.</summary>
    public ImmutableArray<ImmutableArray<bool>> ShouldWork { get; }
    public SolvedFault WithoutFault { get; }

    /// <summary>Volts of the node that the first battery feeds, over the body.</summary>
    public double LiveV(int state) => live >= 0 ? Sound[state].Solution.Volts[live] : 0;

    /// <summary>What a meter shows when all is well: against the grounded pole, or from the live post.</summary>
    public double SoundV(int state, int point, bool toLive) => toLive ? WithoutFault.LiveV[state] - WithoutFault.Volts[state][point] : WithoutFault.Volts[state][point];

    /// <summary>Share of all points that can be reached without opening the wrap that show, when all is well, what was read, as far as a meter tells.</summary>
    /// <param name="reading">What was read.</param>
    /// <param name="source">Volts of the sources, as a share of those that were solved.</param>
    public double ShareOfPoints(MeterReading reading, double source)
    {
        var (alike, open) = (0, 0);
        for (var p = 0; p < Points.Length; p++)
        {
            if (!Points[p].UnderWrap)
            {
                open++;
                alike += SuspectGroup.Parts(source * SoundV(reading.State, p, reading.ToLive), reading.Volts) ? 0 : 1;
            }
        }

        return alike / Math.Max(1.0, open);
    }

    public Plan Plan => Network.Plan;

    /// <summary>Every single fault that is tried, weighed.</summary>
    public ImmutableArray<Fault> Faults(FaultWeights weights) => new FaultLister(Network, Build, weights).List();

    /// <summary>What a fault does to loads and volts. Faults with one key are solved once.</summary>
    internal Prediction Predict(FaultVariant variant, bool withVolts = true)
    {
        var known = solved.GetOrAdd($"{variant.Key}{(withVolts ? "" : " loads")}", _ => Solve(variant, withVolts));
        return new(known, Point(variant.Wire, true), Point(variant.Wire, false), variant.Spot);
    }

    /// <summary>Two faults at once.</summary>
    internal Prediction Predict(FaultVariant first, FaultVariant second)
    {
        var both = new FaultVariant($"{first.Key} + {second.Key}", Wired(first).With(Wired(second)))
        {
            TiedToLive = first.Network.TiedNode >= 0 ? first.TiedToLive : second.TiedToLive,
            Build = first.Build ?? second.Build,
            Wire = first.Wire,
            Spot = first.Spot,
        };
        return Predict(both);
    }

    private int Point(int wire, bool atFrom) => wire >= 0 && pointOf.TryGetValue((wire, atFrom), out var point) ? point : -1;

    private SolvedFault Solve(FaultVariant variant, bool withVolts)
    {
        // a fuse that opens in any state is open in those that are looked at too
        if (all is { } of && MayBlow(variant))
        {
            var (everywhere, opened) = of.Whole.Solutions(variant, withVolts);
            return Read([.. of.States.Select(s => everywhere[s])], variant, opened, withVolts);
        }

        var (circuits, blown) = Solutions(variant, withVolts);
        return Read(circuits, variant, blown, withVolts);
    }

    private (StateCircuit[] Circuits, ImmutableArray<int> Blown) Solutions(FaultVariant variant, bool withVolts)
    {
        var fault = Wired(variant);
        ImmutableArray<int> blown = [];
        var circuits = new StateCircuit[Sound.Length];
        for (var s = 0; s < circuits.Length;)
        {
            circuits[s] = DoesNothing(variant, s, withVolts) && blown.IsEmpty ? Sound[s]
                : TouchesItsLike(variant, s, blown) ? WithOpen(s, blown)
                : new(Network, States[s], variant.Build ?? Build, Placed(fault, variant, s, blown), Sound[s]);
            var opens = blown.Length < MostBlown && MayBlow(variant) ? Blows(circuits[s], blown) : -1;
            if (opens < 0)
            {
                s++;
                continue;
            }

            // states that were solved with the fuse still whole are solved again
            blown = blown.Add(opens);
            s = 0;
        }

        return (circuits, blown);
    }

    private NetworkFault Wired(FaultVariant variant)
    {
        if (variant.Swap is not { } swap)
        {
            return variant.Network;
        }

        (int, int) Moved(int wire, int from, int to)
        {
            var b = Network.Network.Branches[Network.BranchOf(wire)];
            return (b.A == from ? to : b.A, b.B == from ? to : b.B);
        }

        return variant.Network with
        {
            Rewired = Network.Rewired(new Dictionary<int, (int, int)>
            {
                [Network.BranchOf(swap.WireA)] = Moved(swap.WireA, swap.NodeA, swap.NodeB),
                [Network.BranchOf(swap.WireB)] = Moved(swap.WireB, swap.NodeB, swap.NodeA),
            }),
        };
    }

    private NetworkFault Placed(NetworkFault fault, FaultVariant variant, int state, ImmutableArray<int> blown) =>
        fault with { Rough = true, TiedV = variant.TiedToLive ? LiveV(state) : 0, Opened = fault.Opened.AddRange(blown) };

    // an open part that carries nothing changes no load; what hangs behind it changes its volts
    private bool DoesNothing(FaultVariant variant, int state, bool withVolts) =>
        !withVolts && !variant.Carriers.IsEmpty && variant.Carriers.All(i => Math.Abs(Sound[state].Solution.Amperes[i]) < NothingA);

    /// <summary>
    /// What chafes through to something of its own volts changes nothing: a dead wire to ground, a live one to a live one. So once its fuse has opened, a short
    /// is the open fuse and no more.
    /// </summary>
    private bool TouchesItsLike(FaultVariant variant, int state, ImmutableArray<int> blown) =>
        variant is { Network.TiedNode: >= 0 and var node, Network.Rewired: null, Swap: null, Build: null } && !variant.Network.Branches.Any()
        && Math.Abs((WithOpen(state, blown).VoltsOf(node) ?? 0) - (variant.TiedToLive ? LiveV(state) : 0)) < NothingV;

    /// <summary>The sound vehicle without some fuses: solved once for all shorts that open them.</summary>
    private StateCircuit WithOpen(int state, ImmutableArray<int> blown) =>
        blown.IsEmpty ? Sound[state]
        : withOpen.GetOrAdd(FormattableString.Invariant($"{state} {string.Join(' ', blown)}"), _ => new(Network, States[state], Build, NetworkFault.Open(blown) with { Rough = true }, Sound[state]));

    private static bool MayBlow(FaultVariant variant) => variant.Network.TiedNode >= 0 || !variant.Network.Bridged.IsEmpty || variant.Swap is not null || !variant.Network.Closed.IsEmpty || variant.Key.Contains('+', StringComparison.Ordinal);

    private int Blows(StateCircuit circuit, ImmutableArray<int> blown)
    {
        var (worst, times) = (-1, BlowsAt);
        foreach (var (branch, rating) in fuses)
        {
            if (Math.Abs(circuit.Solution.Amperes[branch]) / rating > times && !blown.Contains(branch))
            {
                (worst, times) = (branch, Math.Abs(circuit.Solution.Amperes[branch]) / rating);
            }
        }

        return worst;
    }

    private SolvedFault Read(StateCircuit[] circuits, FaultVariant? variant, ImmutableArray<int> blown, bool withVolts)
    {
        var shares = new float[circuits.Length][];
        var volts = new float[withVolts ? circuits.Length : 0][];
        var joints = new (float From, float To)[volts.Length];
        for (var s = 0; s < circuits.Length; s++)
        {
            shares[s] = new float[Loads.Length];
            for (var l = 0; l < Loads.Length; l++)
            {
                shares[s][l] = (float)Loads[l].Share(Network, circuits[s], Sound[s]);
            }

            if (withVolts)
            {
                volts[s] = new float[Points.Length];
                for (var p = 0; p < Points.Length; p++)
                {
                    volts[s][p] = (float)VoltsAt(circuits[s], variant, p, WireSpot.Copper);
                }

                joints[s] = variant is null ? default : ((float)JointVolts(circuits[s], variant, true), (float)JointVolts(circuits[s], variant, false));
            }
        }

        return new(shares, volts, joints, [.. circuits.Select(c => (float)(live < 0 ? 0 : c.VoltsOf(live) ?? 0))], [.. blown.Select(i => Network.Network.Branches[i].Thing!.Id)]);
    }

    private double JointVolts(StateCircuit circuit, FaultVariant variant, bool atFrom) =>
        Point(variant.Wire, atFrom) is >= 0 and var point ? VoltsAt(circuit, variant, point, atFrom ? WireSpot.From : WireSpot.To) : 0;

    /// <summary>What a meter shows between the point and the grounded pole; what hangs on nothing shows nothing.</summary>
    private double VoltsAt(StateCircuit circuit, FaultVariant? variant, int number, WireSpot spot)
    {
        var point = Points[number];
        if (point.Wire < 0)
        {
            return circuit.VoltsOf(point.Node) ?? 0;
        }

        var branch = Network.Network.Branches[Network.BranchOf(point.Wire)];
        var atJoint = variant?.Wire == point.Wire && spot == (point.AtFrom ? WireSpot.From : WireSpot.To);
        var swapped = variant?.Swap is { } swap && (swap.WireA == point.Wire || swap.WireB == point.Wire);
        if (swapped)
        {
            // the point is the cavity: there the other wire ends now, and its joint loses next to nothing
            return circuit.VoltsOf(point.Node) ?? 0;
        }

        // beyond an open or bad joint the wire's copper has the volts of its other end
        var near = point.AtFrom ? branch.A : branch.B;
        var seen = atJoint ? (point.AtFrom ? branch.B : branch.A) : near;
        var amperes = circuit.Solution.Amperes[Network.BranchOf(point.Wire)];
        var lost = atJoint ? 0 : amperes * Network.Network.Joints.Of(point.AtFrom ? Network.Plan.Wires[point.Wire].From : Network.Plan.Wires[point.Wire].To) * (point.AtFrom ? 1 : -1);
        return (circuit.VoltsOf(seen) ?? 0) - lost;
    }

    private int LiveNode()
    {
        var battery = Network.Network.Branches.FirstOrDefault(b => b is { Kind: BranchKind.Source, Source.Kind: SourceKind.Battery }) ?? Network.Network.Branches.FirstOrDefault(b => b.Kind == BranchKind.Source);
        return battery is null ? -1 : battery.A == 0 ? battery.B : battery.A;
    }
}

/// <summary>
/// What a fault does, by state: share of what each load should do, volts at each point (and at the two ends of the faulty wire when the fault is in the joint
/// there), volts of the battery's live post, fuses that it opens.
/// </summary>
public sealed record SolvedFault(float[][] Shares, float[][] Volts, (float From, float To)[] Joints, float[] LiveV, ImmutableArray<string> Blown);

/// <summary>A solved fault as one of its places shows it.</summary>
public readonly record struct Prediction(SolvedFault Solved, int FromPoint, int ToPoint, WireSpot Spot)
{
    public float Volts(int state, int point) =>
        Spot == WireSpot.From && point == FromPoint ? Solved.Joints[state].From
        : Spot == WireSpot.To && point == ToPoint ? Solved.Joints[state].To
        : Solved.Volts[state][point];

    /// <summary>What a meter shows between the battery's post and the point.</summary>
    public float Volts(int state, int point, bool toLive) => toLive ? Solved.LiveV[state] - Volts(state, point) : Volts(state, point);
}
