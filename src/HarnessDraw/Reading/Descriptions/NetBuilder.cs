using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>
/// Makes the nets of circuits: splits them at their mate by the side their ends are on, and at the things that a route passes through.
/// Only sides that are built get nets; what stays in the cabin is told by the kept pins. A circuit without a condition of its own takes that
/// of the things it feeds when they all have the same one.
/// </summary>
internal sealed class NetBuilder(Draft draft)
{
    public (ImmutableArray<Circuit> Circuits, ImmutableArray<Net> Nets) Build(ImmutableArray<CircuitDraft> drafts)
    {
        var circuits = ImmutableArray.CreateBuilder<Circuit>();
        var nets = ImmutableArray.CreateBuilder<Net>();
        foreach (var typed in drafts)
        {
            var circuit = typed.Circuit with { OnlyWith = Condition(typed) };
            circuits.Add(circuit);
            if (!typed.Broken)
            {
                nets.AddRange(Named(circuit, NetsOf(typed), typed));
            }
        }

        return (circuits.ToImmutable(), nets.ToImmutable());
    }

    private IEnumerable<NetDraft> NetsOf(CircuitDraft typed)
    {
        if (!typed.ByHand.IsEmpty)
        {
            return ByHand(typed.ByHand);
        }

        if (!typed.RouteBy.IsEmpty)
        {
            return Route(typed);
        }

        if (typed.To is { } ground)
        {
            return Returns(typed, ground.Pin);
        }

        if (typed.Feeds.IsEmpty || (typed.Froms.IsEmpty && typed.Mate is null))
        {
            var lacks = typed.Feeds.IsEmpty ? "feeds nothing" : "comes from nowhere";
            draft.Bag.Error(DiagnosticCodes.NothingToFeed, $"'{typed.Name.Value}' {lacks}", typed.Name.At, typed.Feeds.IsEmpty ? "add 'feeds:', 'to:', 'route-by:' or 'by-hand:'" : "add 'from:', or 'enters-by:' for a mate");
            return [];
        }

        return typed.Froms.Length > 1 || (typed.Froms.IsEmpty && typed.Feeds.Length > 1) ? Conductors(typed) : Fed(typed, typed.Froms.Select(f => f.Pin).FirstOrDefault(), [.. typed.Feeds.Select(f => f.Pin)], 0);
    }

    // one conductor a pair; without 'from' every fed pin has a cavity of its own
    private IEnumerable<NetDraft> Conductors(CircuitDraft typed)
    {
        if (!typed.Froms.IsEmpty && typed.Froms.Length != typed.Feeds.Length)
        {
            draft.Bag.Error(DiagnosticCodes.ListLength, $"'{typed.Name.Value}' comes from {typed.Froms.Length} pins and feeds {typed.Feeds.Length}", typed.Name.At, "give both lists the same length, one a conductor");
            return [];
        }

        return typed.Feeds.SelectMany((f, i) => Fed(typed, typed.Froms.IsEmpty ? null : typed.Froms[i].Pin, [f.Pin], i));
    }

    private IEnumerable<NetDraft> Returns(CircuitDraft typed, PinRef ground) => typed.Froms.SelectMany((from, i) => Side(from.Pin) == Side(ground)
        ? Joined(Side(ground), ground, [from.Pin], null)
        : Crossing(typed, from.Pin, [ground], i));

    private IEnumerable<NetDraft> Fed(CircuitDraft typed, PinRef? from, ImmutableArray<PinRef> feeds, int index)
    {
        var side = from is null ? Model.Side.Cabin : Side(from);
        return from is not null && feeds.All(f => Side(f) == side)
            ? typed.Mate is not null && side == Model.Side.Bay ? Needless(typed) : Joined(side, from, feeds, null)
            : Crossing(typed, from, feeds, index);
    }

    private NetDraft[] Needless(CircuitDraft typed)
    {
        draft.Bag.Error(DiagnosticCodes.NotACable, $"'{typed.Name.Value}' enters by '{typed.Mate!.Id}', but all its ends are on the bay side", typed.Name.At, "leave out 'enters-by', or give the way in 'route-by'");
        return [];
    }

    private IEnumerable<NetDraft> Crossing(CircuitDraft typed, PinRef? from, ImmutableArray<PinRef> feeds, int index)
    {
        if (typed.Mate is not { } mate)
        {
            draft.Bag.Error(DiagnosticCodes.NotACable, $"'{typed.Name.Value}' has ends on both sides of the firewall and no way through", typed.Name.At, "add 'enters-by: MATE'");
            return [];
        }

        var cavity = index < typed.Cavities.Length ? typed.Cavities[index] : null;
        var near = from is null ? Model.Side.Cabin : Side(from);
        var far = near == Model.Side.Bay ? Model.Side.Cabin : Model.Side.Bay;
        var pin = new PinRef(mate.Id, null);
        ImmutableArray<PinRef> here = [.. feeds.Where(f => Side(f) == near)];
        ImmutableArray<PinRef> there = [.. feeds.Where(f => Side(f) == far)];
        return [.. Joined(near, from ?? pin, from is null ? here : here.Add(pin), cavity), .. Joined(far, pin, there, cavity)];
    }

    // from pin to pin; two pins of one thing are joined inside it
    private List<NetDraft> Route(CircuitDraft typed)
    {
        var nets = new List<NetDraft>();
        for (var i = 1; i < typed.RouteBy.Length; i++)
        {
            var (a, b) = (typed.RouteBy[i - 1].Pin, typed.RouteBy[i].Pin);
            if (a.Thing == b.Thing)
            {
                continue;
            }

            var (mateA, mateB) = (IsMate(a), IsMate(b));
            var side = mateA && mateB ? Model.Side.Bay : Side(mateA ? b : a);
            if (!mateA && !mateB && Side(a) != Side(b))
            {
                draft.Bag.Error(DiagnosticCodes.NotACable, $"'{typed.Name.Value}' leads from {a} to {b}, on two sides of the firewall", typed.RouteBy[i].At.At, "put the mate between them");
                continue;
            }

            nets.AddRange(Joined(side, Unfixed(a), [Unfixed(b)], mateA ? a.Pin : mateB ? b.Pin : null));
        }

        return nets;
    }

    // wires that share a pin are one net
    private static List<NetDraft> ByHand(ImmutableArray<HandWire> wires)
    {
        var groups = new List<(HashSet<PinRef> Pins, List<HandWire> Wires)>();
        foreach (var wire in wires)
        {
            var touched = groups.Where(g => g.Pins.Contains(wire.From) || g.Pins.Contains(wire.To)).ToList();
            var group = touched.Count > 0 ? touched[0] : ([], []);
            foreach (var other in touched.Skip(1))
            {
                group.Pins.UnionWith(other.Pins);
                group.Wires.AddRange(other.Wires);
                groups.Remove(other);
            }

            if (touched.Count == 0)
            {
                groups.Add(group);
            }

            group.Pins.UnionWith([wire.From, wire.To]);
            group.Wires.Add(wire);
        }

        return [.. groups.Select(g => new NetDraft(Model.Side.Bay, g.Wires[0].From, [.. g.Wires.SelectMany(w => new[] { w.From, w.To }).Distinct().Where(p => p != g.Wires[0].From)], null) { ByHand = [.. g.Wires] })];
    }

    private NetDraft[] Joined(Side side, PinRef root, ImmutableArray<PinRef> ends, string? cavity) =>
        ends.IsEmpty || !draft.IsBuilt(side) ? [] : [new NetDraft(side, root, ends, cavity)];

    private static IEnumerable<Net> Named(Circuit circuit, IEnumerable<NetDraft> nets, CircuitDraft typed)
    {
        NetDraft[] all = [.. nets];
        return all.Select((n, i) => new Net
        {
            Id = i == 0 ? circuit.Id : $"{circuit.Id}:{i + 1}",
            Circuit = circuit.Id,
            Root = n.Root,
            Ends = n.Ends,
            FixedCavity = n.Cavity,
            OnlyWith = circuit.OnlyWith,
            ByHand = n.ByHand,
            Side = n.Side,
            FixedWireId = all.Length == 1 && n.Ends.Length == 1 ? typed.Map.Text("wire") : null,
        });
    }

    private BuildCondition Condition(CircuitDraft typed)
    {
        var own = typed.Circuit.OnlyWith;
        if (!own.IsAlways || typed.Feeds.IsEmpty)
        {
            return own;
        }

        var fed = typed.Feeds.Select(f => draft.Thing(f.Pin.Thing)?.OnlyWith ?? BuildCondition.Always).DistinctBy(c => c.ToString()).ToArray();
        return fed.Length == 1 ? fed[0] : own;
    }

    private PinRef Unfixed(PinRef pin) => IsMate(pin) ? pin with { Pin = null } : pin;

    private bool IsMate(PinRef pin) => draft.Thing(pin.Thing)?.Kind == ThingKind.Mate;

    private Side Side(PinRef pin) => draft.HasMates ? draft.Thing(pin.Thing)?.Side ?? Model.Side.Bay : Model.Side.Bay;

    private sealed record NetDraft(Side Side, PinRef Root, ImmutableArray<PinRef> Ends, string? Cavity)
    {
        public ImmutableArray<HandWire> ByHand { get; init; } = [];
    }
}
