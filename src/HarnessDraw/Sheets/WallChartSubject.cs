using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Layout;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>
/// What the wall chart shows of a plan, in the words of the geometry: the tree as it will be drawn (rooted at the firewall connector, else at the rearmost end),
/// cards, lanes and stubs.
/// </summary>
internal sealed partial class WallChartSubject
{
    private readonly Dictionary<string, Thing> things;
    private readonly Dictionary<string, Protection> fuses;
    private readonly Dictionary<string, Place> places;
    private readonly Dictionary<string, ChartCardSubject> cards = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> grounds;
    private readonly Dictionary<(string Wire, string Connector), Side> mateSide;
    private Dictionary<string, string>? optionLetters;
    private readonly bool isBare;
    private string root = "";

    /// <param name="plan">What is drawn.</param>
    /// <param name="whole">The whole harness when this chart shows a part of it: numbers and letters are those of the whole.</param>
    /// <param name="isBare">True: named places where nothing happens are left out as well.</param>
    public WallChartSubject(Plan plan, WallChartSubject? whole = null, bool isBare = false)
    {
        this.isBare = isBare;
        Plan = plan;
        Whole = whole ?? this;
        things = whole?.things ?? plan.Harness.Things.ToDictionary(t => t.Id, StringComparer.Ordinal);
        fuses = whole?.fuses ?? plan.Harness.Protections.ToDictionary(p => p.Id, StringComparer.Ordinal);
        places = whole?.places ?? plan.Harness.Layout.Places.ToDictionary(p => p.Id, StringComparer.Ordinal);
        grounds = whole?.grounds ?? plan.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint).Select((t, i) => (t.Id, i)).ToDictionary(t => t.Id, t => $"G{t.i + 1}", StringComparer.Ordinal);
        mateSide = whole?.mateSide ?? SidesOfMates(plan);
        Mate = whole is null ? FindMate() : whole.Mate;
        BuildTree();
        BuildLanes();
        Prune();
        Likeness = whole?.Likeness ?? new(Lanes.Select(l => l.Wire.Colour));
        BranchNumbers = whole?.BranchNumbers ?? NumberBranches();
    }

    /// <summary>The chart of the whole harness: this one, unless this shows a part.</summary>
    public WallChartSubject Whole { get; }

    /// <summary>What is marked as changed since a harness was built; of the whole chart.</summary>
    public ChangeMarks? Changes { get; init; }

    /// <summary>A bundle of more wires than this is drawn as one band; 0: none is; of the whole chart.</summary>
    public int BandOver { get; init; }

    /// <summary>Lengths are drawn at one scale where the paper allows; of the whole chart.</summary>
    public bool TrueToScale { get; init; }

    /// <summary>Number of each branch by its place, counted away from the root.</summary>
    public Dictionary<string, string> BranchNumbers { get; }

    public Plan Plan { get; }

    /// <summary>The mate whose pin table stands at the root, or null.</summary>
    public Thing? Mate { get; }
    public List<string> NodePlaces { get; } = [];
    public List<int> NodeParents { get; } = [];
    public List<ChartEdge> NodeEdges { get; } = [];
    public List<ChartCardSubject> Cards { get; } = [];
    public List<(Splice Splice, int Node, double Along)> Splices { get; } = [];
    public List<(Wire Wire, ChartEnd From, ChartEnd To)> Lanes { get; } = [];

    /// <summary>How alike the colours of its lanes look side by side.</summary>
    public ColourLikeness Likeness { get; }

    /// <summary>Ground points that are shown at the loads alone, by their mark ('G3').</summary>
    public SortedDictionary<string, Thing> GroundsAtLoads { get; } = new(CavityOrder.Instance);

    /// <summary>Rows of the pin table in the order they stand.</summary>
    public List<ChartRow> Pins { get; } = [];

    /// <summary>Pins of the same table that other charts show, with the number of the chart.</summary>
    public List<(string Pin, int Chart)> PinsElsewhere { get; } = [];

    public Place PlaceAt(int node) => places.GetValueOrDefault(NodePlaces[node]) ?? new Place(NodePlaces[node], 0, 0, 0);

    /// <summary>Letter of every option condition in use, in the order they are first met.</summary>
    public Dictionary<string, string> OptionLetters => optionLetters ??= LetterOptions();

    public Thing? ThingOf(string id) => things.GetValueOrDefault(id);

    /// <summary>Place at which the drawn tree begins.</summary>
    public string Root => root;

    private static Dictionary<(string Wire, string Connector), Side> SidesOfMates(Plan plan)
    {
        var sides = new Dictionary<(string Wire, string Connector), Side>();
        foreach (var use in plan.Cavities.Where(u => u.Wire is not null))
        {
            sides[(use.Wire!, use.Connector)] = use.Side;
        }

        return sides;
    }

    private Thing? FindMate()
    {
        var count = new SortedDictionary<string, int>(StringComparer.Ordinal);
        foreach (var wire in Plan.Wires)
        {
            foreach (var end in (WireEnd[])[wire.From, wire.To])
            {
                if (!end.IsSplice && things.TryGetValue(end.At, out var thing) && thing.Kind == ThingKind.Mate && SideAt(wire, thing) == Side.Bay)
                {
                    count[end.At] = count.GetValueOrDefault(end.At) + 1;
                }
            }
        }

        var best = count.OrderByDescending(c => c.Value).ThenBy(c => c.Key, StringComparer.Ordinal).FirstOrDefault();
        return best.Key is null ? null : things[best.Key];
    }

    private Side SideAt(Wire wire, Thing mate) => mateSide.GetValueOrDefault((wire.Id, mate.Id), Side.Bay);

    private void BuildTree()
    {
        var next = new Dictionary<string, List<(string To, Segment Segment)>>(StringComparer.Ordinal);
        foreach (var s in Plan.Tree.Segments)
        {
            Join(s.From, s.To, s);
            Join(s.To, s.From, s);
        }

        root = Whole == this ? Mate?.Place ?? Rearmost(next) ?? Plan.Tree.Root : Whole.root;
        var node = new Dictionary<string, int>(StringComparer.Ordinal);
        Add(root, -1, new([]));
        for (var i = 0; i < NodePlaces.Count; i++)
        {
            foreach (var (to, segment) in next.GetValueOrDefault(NodePlaces[i], []))
            {
                if (!node.ContainsKey(to))
                {
                    Add(to, i, new([segment]));
                }
            }
        }

        foreach (var place in next.Keys.Concat(Plan.Wires.SelectMany(w => (WireEnd[])[w.From, w.To]).Where(e => !e.IsSplice).Select(e => PlaceOf(e.At))))
        {
            if (!node.ContainsKey(place))
            {
                Island(place);
            }
        }

        void Island(string start)
        {
            Add(start, 0, new([]));
            for (var i = NodePlaces.Count - 1; i < NodePlaces.Count; i++)
            {
                foreach (var (to, segment) in next.GetValueOrDefault(NodePlaces[i], []))
                {
                    if (!node.ContainsKey(to))
                    {
                        Add(to, i, new([segment]));
                    }
                }
            }
        }

        void Join(string from, string to, Segment s)
        {
            if (!next.TryGetValue(from, out var list))
            {
                next[from] = list = [];
            }

            list.Add((to, s));
        }

        void Add(string place, int parent, ChartEdge edge)
        {
            node[place] = NodePlaces.Count;
            NodePlaces.Add(place);
            NodeParents.Add(parent);
            NodeEdges.Add(edge);
        }
    }

    private Dictionary<string, string> NumberBranches()
    {
        var far = new double[NodePlaces.Count];
        var flagged = new List<int>();
        for (var i = 0; i < far.Length; i++)
        {
            far[i] = i == 0 ? 0 : far[NodeParents[i]] + (NodeEdges[i].LengthMm ?? 0);
            if (!string.IsNullOrWhiteSpace(PlaceAt(i).Branch))
            {
                flagged.Add(i);
            }
        }

        var numbers = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var i in flagged.OrderBy(i => far[i]).ThenBy(i => NodePlaces[i], StringComparer.Ordinal))
        {
            numbers[NodePlaces[i]] = (numbers.Count + 1).ToString(CultureInfo.InvariantCulture);
        }

        return numbers;
    }

    private Dictionary<string, string> LetterOptions()
    {
        var letters = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var condition in Cards.Select(c => c.OnlyWith).Concat(Plan.Wires.Select(w => w.Builds)).Where(c => !c.IsAlways))
        {
            letters.TryAdd(condition.Words, letters.Count < 26 ? ((char)('A' + letters.Count)).ToString() : "Z" + (letters.Count - 25));
        }

        return letters;
    }

    private string? Rearmost(Dictionary<string, List<(string To, Segment Segment)>> next) => next
        .Where(n => n.Value.Count == 1 && places.ContainsKey(n.Key))
        .OrderBy(n => places[n.Key].Xmm).ThenBy(n => n.Key, StringComparer.Ordinal)
        .Select(n => n.Key).FirstOrDefault();

    /// <summary>Place at which a thing is drawn.</summary>
    public string PlaceOf(string thing) => things.TryGetValue(thing, out var t) ? Home(t).Place : fuses.TryGetValue(thing, out var f) && f.On is { } on && things.TryGetValue(on, out var bar) ? bar.Place : Plan.Tree.Root;

    // fuses on a bar stand in the bar's card
    private Thing Home(Thing thing) => fuses.TryGetValue(thing.Id, out var fuse) && fuse.On is { } on && things.TryGetValue(on, out var bar) ? bar : thing;

    private void BuildLanes()
    {
        var splices = Plan.Splices.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i, StringComparer.Ordinal);
        var pinOrder = PinOrder();
        var pinRows = new List<(int Order, int Wire, int End, ChartRow Row)>();
        var ends = new (ChartEnd? From, ChartEnd? To)[Plan.Wires.Length];
        var drawn = new List<int>();
        for (var i = 0; i < Plan.Wires.Length; i++)
        {
            var wire = Plan.Wires[i];
            if (TryStub(wire))
            {
                continue;
            }

            drawn.Add(i);
        }

        foreach (var i in drawn)
        {
            for (var end = 0; end < 2; end++)
            {
                var at = end == 0 ? Plan.Wires[i].From : Plan.Wires[i].To;
                if (!at.IsSplice && Mate is not null && at.At == Mate.Id && SideAt(Plan.Wires[i], Mate) == Side.Bay)
                {
                    pinRows.Add((pinOrder.GetValueOrDefault(at.Pin ?? "", int.MaxValue), i, end, new(Plan.Wires[i], at.Pin ?? "?")));
                }
            }
        }

        var pinOf = new Dictionary<(int, int), int>();
        foreach (var row in pinRows.OrderBy(r => r.Order).ThenBy(r => r.Row.Pin, StringComparer.Ordinal).ThenBy(r => r.Wire))
        {
            pinOf[(row.Wire, row.End)] = Pins.Count;
            Pins.Add(row.Row);
        }

        foreach (var i in drawn)
        {
            var lane = Lanes.Count;
            Lanes.Add((Plan.Wires[i], EndOf(i, 0, lane), EndOf(i, 1, lane)));
        }

        ChartEnd EndOf(int wire, int end, int lane)
        {
            var at = end == 0 ? Plan.Wires[wire].From : Plan.Wires[wire].To;
            if (at.IsSplice && splices.TryGetValue(at.At, out var s))
            {
                return new(ChartEndKind.Splice, s);
            }

            if (pinOf.TryGetValue((wire, end), out var pin))
            {
                return new(ChartEndKind.Pin, pin);
            }

            var card = CardOf(at.At, Plan.Wires[wire]);
            card.Rows[(lane, end)] = new(Plan.Wires[wire], PinText(at));
            return new(ChartEndKind.Card, card.Number);
        }
    }

    private Dictionary<string, int> PinOrder()
    {
        var order = new Dictionary<string, int>(StringComparer.Ordinal);
        if (Mate is not null)
        {
            foreach (var pin in Mate.Pins)
            {
                order.TryAdd(pin.Name, order.Count);
            }

            foreach (var cavity in Plan.Harness.Catalogue.Connectors.FirstOrDefault(c => c.Id == Mate.ConnectorPart)?.Cavities ?? [])
            {
                order.TryAdd(cavity.Name, order.Count);
            }
        }

        return order;
    }

    private string PinText(WireEnd end) =>
        things.TryGetValue(end.At, out var thing) && Home(thing) != thing || fuses.TryGetValue(end.At, out var f) && f.On is not null ? end.At : end.Pin ?? "";

    // a ground at the load's own place, or a wire that stays at the connector
    private bool TryStub(Wire wire)
    {
        if (wire.From.IsSplice || wire.To.IsSplice)
        {
            return false;
        }

        for (var end = 0; end < 2; end++)
        {
            var (here, there) = end == 0 ? (wire.From, wire.To) : (wire.To, wire.From);
            if (things.TryGetValue(there.At, out var ground) && ground.Kind == ThingKind.GroundPoint
                && things.TryGetValue(here.At, out var load) && load.Kind is not (ThingKind.GroundPoint or ThingKind.Mate) && PlaceOf(here.At) == ground.Place)
            {
                CardOf(here.At, wire).Stubs.Add(new(wire, PinText(here), grounds[ground.Id], true));
                GroundsAtLoads[grounds[ground.Id]] = ground;
                return true;
            }
        }

        if (Mate is not null && wire.From.At == Mate.Id && wire.To.At == Mate.Id)
        {
            CardOf(Mate.Id + " links", Mate.Label + " LINKS", Mate.Place).Stubs.Add(new(wire, wire.From.Pin ?? "", wire.To.Pin ?? "", false));
            return true;
        }

        return false;
    }

    private ChartCardSubject CardOf(string id, Wire wire)
    {
        things.TryGetValue(id, out var thing);
        var home = thing is null ? fuses.TryGetValue(id, out var f) && f.On is { } on ? things.GetValueOrDefault(on) : null : Home(thing);
        if (home is null)
        {
            return CardOf(id, id, PlaceOf(id));
        }

        if (home.Kind == ThingKind.Mate && SideAt(wire, home) == Side.Cabin)
        {
            return CardOf(home.Id + " cabin", home.Label + ", CABIN SIDE", home.Place);
        }

        var card = CardOf(home.Id, grounds.TryGetValue(home.Id, out var mark) ? $"{mark} {home.Label}" : home.Label, home.Place);
        card.SideMark = home.SideMark;
        card.OnlyWith = home.OnlyWith;
        card.IsGround = home.Kind == ThingKind.GroundPoint;
        return card;
    }

    private ChartCardSubject CardOf(string key, string name, string place)
    {
        if (!cards.TryGetValue(key, out var card))
        {
            card = new() { Number = Cards.Count, Key = key, Name = name.ToUpperInvariant(), Place = place };
            cards[key] = card;
            Cards.Add(card);
        }

        return card;
    }
}
