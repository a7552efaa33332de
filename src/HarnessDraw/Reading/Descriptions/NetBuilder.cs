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
                nets.AddRange(Named(circuit, NetsOf(typed).Where(n => HasTwoEnds(n, typed)), typed));
            }
        }

        return (circuits.ToImmutable(), nets.ToImmutable());
    }

    // under a mistyped key, which has been told, stands what is missing here
    private static readonly string[] Begins = ["from", "enters-by"];
    private static readonly string[] Leads = ["feeds", "to", "route-by", "by-hand"];

    private IEnumerable<NetDraft> NetsOf(CircuitDraft typed)
    {
        if (!typed.ByHand.IsEmpty)
        {
            return ByHand(typed);
        }

        if (!typed.RouteBy.IsEmpty)
        {
            return Route(typed);
        }

        if (typed.To is { } ground)
        {
            return Returns(typed, ground.Pin);
        }

        if (typed is { Feeds.IsEmpty: true, Mate: not null, Froms.IsEmpty: false } && typed.Froms.All(f => Side(f.Pin) == Model.Side.Bay))
        {
            // into the kept cabin wiring, which need not be described
            return typed.Froms.SelectMany((f, i) => Crossing(typed, f.Pin, [], i));
        }

        if (typed.Feeds.IsEmpty || (typed.Froms.IsEmpty && typed.Mate is null))
        {
            // a key of the wrong form has been told
            if (typed.Map.Meant.Overlaps(typed.Feeds.IsEmpty ? Leads : Begins) || (typed.Feeds.IsEmpty && Leads.Any(typed.Map.Has)))
            {
                return [];
            }

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
        : Crossing(typed, ground, [from.Pin], i));

    private IEnumerable<NetDraft> Fed(CircuitDraft typed, PinRef? from, ImmutableArray<PinRef> feeds, int index)
    {
        var side = from is null ? Model.Side.Cabin : Side(from);
        var nets = from is not null && feeds.All(f => Side(f) == side)
            ? typed.Mate is not null && side == Model.Side.Bay ? Needless(typed) : Joined(side, from, feeds, null)
            : Crossing(typed, from, feeds, index);
        return index < typed.Colours.Length ? nets.Select(n => n with { Colour = typed.Colours[index] }) : nets;
    }

    private NetDraft[] Needless(CircuitDraft typed)
    {
        draft.Bag.Error(DiagnosticCodes.NotACable, $"'{typed.Name.Value}' enters by '{typed.Mate!.Id}', but all its ends are on the bay side", typed.Name.At, $"leave out 'enters-by' or give the way in 'route-by'; or say 'side: cabin' of {Ends(typed)}, if that is where it sits");
        return [];
    }

    private static string Ends(CircuitDraft typed) => string.Join(" or ", typed.Froms.Concat(typed.Feeds).Select(p => $"'{p.Pin.Thing}'").Distinct());

    private IEnumerable<NetDraft> Crossing(CircuitDraft typed, PinRef? from, ImmutableArray<PinRef> feeds, int index)
    {
        if (typed.Mate is not { } mate)
        {
            if (typed.Map.Meant.Contains("enters-by"))
            {
                return [];
            }

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

    // from pin to pin; two pins of one thing are joined inside it, and a protection is left by its other end
    private List<NetDraft> Route(CircuitDraft typed)
    {
        var nets = new List<NetDraft>();
        for (var i = 1; i < typed.RouteBy.Length; i++)
        {
            var (a, b) = (LeftBy(typed.RouteBy[i - 1].Pin), typed.RouteBy[i].Pin);
            if (a.Thing != b.Thing && OneSide(typed, a, b, typed.RouteBy[i].At) is { } side)
            {
                nets.AddRange(Joined(side, Unfixed(a), [Unfixed(b)], IsMate(a) ? a.Pin : IsMate(b) ? b.Pin : null));
            }
        }

        return typed.Feeds.IsEmpty ? nets : WithFeeds(nets, typed);
    }

    // what the route feeds at its end: joined to its last pin
    private List<NetDraft> WithFeeds(List<NetDraft> nets, CircuitDraft typed)
    {
        var last = typed.RouteBy[^1].Pin;
        var root = LeftBy(last);
        if (typed.Feeds.Any(f => OneSide(typed, root, f.Pin, f.At) is null))
        {
            return nets;
        }

        ImmutableArray<PinRef> feeds = [.. typed.Feeds.Select(f => f.Pin)];
        var isReached = nets.Count > 0 && nets[^1].Ends[^1] == last && !IsMate(last) && root == last && draft.Thing(last.Thing)?.Kind != ThingKind.Inline;
        if (isReached)
        {
            nets[^1] = nets[^1] with { Ends = nets[^1].Ends.AddRange(feeds) };
        }
        else
        {
            nets.AddRange(Joined(Side(feeds[0]), Unfixed(root), feeds, IsMate(root) ? root.Pin : null));
        }

        return nets;
    }

    private PinRef LeftBy(PinRef pin) => pin.Pin == "in" && draft.Thing(pin.Thing)?.Kind == ThingKind.Fuse ? pin with { Pin = "out" } : pin;

    // the side a wire between two pins is on; reported when they are on both
    private Side? OneSide(CircuitDraft typed, PinRef a, PinRef b, InputText at)
    {
        if (IsMate(a) || IsMate(b))
        {
            return IsMate(a) && IsMate(b) ? Model.Side.Bay : Side(IsMate(a) ? b : a);
        }

        if (Side(a) == Side(b))
        {
            return Side(a);
        }

        draft.Bag.Error(DiagnosticCodes.NotACable, $"'{typed.Name.Value}' leads from {a} to {b}, on two sides of the firewall", at.At, "put the mate between them");
        return null;
    }

    private bool HasTwoEnds(NetDraft net, CircuitDraft typed)
    {
        var twice = net.Ends.Append(net.Root).Where(p => p.Pin is not null).GroupBy(p => p).FirstOrDefault(g => g.Count() > 1);
        if (twice is null)
        {
            return true;
        }

        draft.Bag.Error(DiagnosticCodes.NotACable, $"'{typed.Name.Value}' names {twice.Key} twice: a wire cannot lead from a pin to itself", typed.Name.At);
        return false;
    }

    // wires that share a pin are one net
    private IEnumerable<NetDraft> ByHand(CircuitDraft typed)
    {
        foreach (var wire in typed.ByHand)
        {
            if (!IsMate(wire.From) && !IsMate(wire.To) && Side(wire.From) != Side(wire.To))
            {
                draft.Bag.Error(DiagnosticCodes.NotACable, $"the wire '{wire.Id}' leads from {wire.From} to {wire.To}, on two sides of the firewall", wire.At, "end it at the mate");
            }
        }

        foreach (var feed in typed.Feeds.Where(f => typed.ByHand.All(w => w.From != f.Pin && w.To != f.Pin)))
        {
            draft.Bag.Error(DiagnosticCodes.NothingToFeed, $"no wire given by hand reaches {feed.Pin}", feed.At.At, "add the wire, or leave the pin out");
        }

        return HandGroups.Of(typed.ByHand).Select(ByHandNet).Where(n => draft.IsBuilt(n.Side));
    }

    private NetDraft ByHandNet(ImmutableArray<HandWire> wires)
    {
        PinRef[] pins = [.. wires.SelectMany(w => new[] { w.From, w.To }).Distinct()];
        var side = pins.Where(p => !IsMate(p)).Select(p => (Side?)Side(p)).FirstOrDefault() ?? Model.Side.Bay;
        return new NetDraft(side, Unfixed(pins[0]), [.. pins.Skip(1).Select(Unfixed)], pins.FirstOrDefault(IsMate)?.Pin) { ByHand = wires };
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
            Colour = n.Colour,
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

        public string? Colour { get; init; }
    }
}
