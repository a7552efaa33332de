using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Layout;

/// <summary>What a random harness is made of.</summary>
public sealed record RandomHarnessOptions(int Circuits)
{
    public double SpliceShare { get; init; } = 0.15;

    /// <summary>Every splice lies on the way to all its legs; else legs may come back towards the root.</summary>
    public bool SplicesBeforeLegs { get; init; }

    /// <summary>Pins dealt out in the order of the loads round the tree, as a planner does, or by chance (the worst case).</summary>
    public bool PlannedPins { get; init; }
    public bool Grounds { get; init; } = true;
    public bool LoadToLoad { get; init; } = true;
    public bool Firewall { get; init; } = true;
    public bool Options { get; init; } = true;

    /// <summary>Places besides the root, and loads; 0: by the number of circuits.</summary>
    public int Places { get; init; }
    public int Loads { get; init; }
}

/// <summary>
/// Random harnesses from a seed: a trunk with side branches in vehicle coordinates, loads with wires from a firewall connector, splices before the parting of
/// their legs, grounds and wires between loads. The generator is our own: the same numbers on every machine.
/// </summary>
public sealed class RandomHarness
{
    private static readonly string[] Names = ["WIPER", "HEADLAMP", "HORN", "COIL", "FAN", "WASHER", "STARTER", "ALTERNATOR", "OIL SENDER", "TEMP SENDER", "FOG LAMP", "IDLE VALVE", "PUMP", "HEATER", "RELAY", "CLUTCH", "BRAKE FLUID", "AIR TEMP"];
    private static readonly string[] Colours = ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "TQ"];
    private static readonly (double Area, string Text)[] Sizes = [(0.75, "0.75"), (1, "1.0"), (1.5, "1.5"), (2.5, "2.5"), (4, "4.0")];
    private readonly RandomHarnessOptions options;
    private ulong state;
    private readonly List<Place> places = [];
    private readonly List<int> parents = [];
    private readonly List<Thing> things = [];
    private readonly List<Wire> wires = [];
    private readonly List<Splice> splices = [];
    private readonly List<CavityUse> cavities = [];
    private readonly List<Circuit> circuits = [];
    private readonly List<int> loadNode = [];

    private RandomHarness(int seed, RandomHarnessOptions options)
    {
        this.options = options;
        state = (ulong)seed * 2654435761UL + 88172645463325252UL;
    }

    public static Plan Plan(int seed, RandomHarnessOptions options) => new RandomHarness(seed, options).Build();

    /// <summary>A harness of the long run of the benchmarks: one root without wires between loads at every second seed, where a bound is proven; no firewall connector at every tenth.</summary>
    public static Plan OfLongRun(int seed, int circuits)
    {
        var isPlain = seed % 2 == 0;
        return Plan(seed, new(circuits) { PlannedPins = seed % 4 < 2, Firewall = seed % 10 != 5, Grounds = !isPlain, LoadToLoad = !isPlain });
    }

    private int Next(int below)
    {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        return (int)(state % (ulong)below);
    }

    private double Share() => Next(1 << 20) / (double)(1 << 20);

    private Plan Build()
    {
        Places();
        Loads();
        Wires();
        return ToPlan();
    }

    private void Places()
    {
        places.Add(new("pass-through", 0, 0, 0));
        parents.Add(-1);
        var count = options.Places > 0 ? options.Places : Math.Max(2, (int)(options.Circuits * 0.22));
        for (var i = 0; i < count; i++)
        {
            var parent = i == 0 ? 0 : Next(3) == 0 ? Next(places.Count) : places.Count - 1;
            var from = places[parent];
            var way = Next(5);
            var step = 180 + Next(320);
            var side = from.Ymm > 0 ? 1 : from.Ymm < 0 ? -1 : Next(2) == 0 ? 1 : -1;
            var (x, y) = way < 3 ? (from.Xmm + step, from.Ymm + Next(60) - 30) : (from.Xmm + Next(80) - 20, from.Ymm + (side * step));
            places.Add(new($"P{i + 1}", x, y, 0) { Branch = Next(3) == 0 ? Names[Next(Names.Length)] + " SIDE" : null });
            parents.Add(parent);
        }
    }

    private void Loads()
    {
        var count = options.Loads > 0 ? options.Loads : Math.Max(2, (int)(options.Circuits * 0.42));
        for (var i = 0; i < count; i++)
        {
            var node = 1 + Next(places.Count - 1);
            var kind = i % 9 == 8 && options.Grounds ? ThingKind.GroundPoint : ThingKind.Load;
            var name = kind == ThingKind.GroundPoint ? $"G{(i / 9) + 1}" : Names[Next(Names.Length)];
            things.Add(new()
            {
                Id = $"load {i + 1}",
                Label = name,
                Kind = kind,
                Place = places[node].Id,
                SideMark = Next(4) == 0 ? (places[node].Ymm > 0 ? "R" : "L") : null,
                OnlyWith = options.Options && Next(12) == 0 ? new([new("cooling", ["electric fan"])]) : BuildCondition.Always,
            });
            loadNode.Add(node);
        }
    }

    private int Load(bool ground = false)
    {
        for (var again = 0; again < 200; again++)
        {
            var i = Next(things.Count);
            if ((things[i].Kind == ThingKind.GroundPoint) == ground)
            {
                return i;
            }
        }

        return 0;
    }

    private void Wires()
    {
        var open = new List<(int Wire, double Angle)>();
        for (var c = 0; c < options.Circuits; c++)
        {
            var id = $"circuit {c + 1}";
            circuits.Add(new() { Id = id });
            var colour = Colours[Next(Colours.Length)] + (Next(2) == 0 ? "" : "/" + Colours[Next(Colours.Length)]);
            if (WireColourIsDouble(colour))
            {
                colour = colour[..2];
            }

            if (options.LoadToLoad && Next(12) == 0)
            {
                Add(id, colour, End(Load()), End(Load()), open);
            }
            else if (Share() < options.SpliceShare)
            {
                Spliced(id, colour, open);
            }
            else
            {
                Add(id, colour, Root(), End(Load()), open);
            }
        }

        if (options.Grounds && things.Exists(t => t.Kind == ThingKind.GroundPoint))
        {
            for (var i = 0; i < things.Count / 3; i++)
            {
                circuits.Add(new() { Id = $"return {i + 1}", IsReturn = true });
                Add($"return {i + 1}", "BK", End(Load()), End(Load(ground: true)), open);
            }
        }

        DealPins(open);
    }

    private static bool WireColourIsDouble(string colour) => colour.Length > 2 && colour[..2] == colour[3..];

    private WireEnd Root() => options.Firewall ? new("firewall", "?") : End(0);

    private WireEnd End(int load) => new(things[load].Id, (1 + Next(8)).ToString(CultureInfo.InvariantCulture));

    private void Spliced(string circuit, string colour, List<(int, double)> open)
    {
        var legs = new List<int>();
        for (var i = 0; i < 2 + Next(2); i++)
        {
            var leg = Load();
            legs.Add(options.SplicesBeforeLegs && i > 0 && PathTo(loadNode[leg])[0] != PathTo(loadNode[legs[0]])[0] ? legs[0] : leg);
        }

        // the last edge that all legs share, or the first leg's own
        var path = PathTo(loadNode[legs[0]]);
        var edge = path.FindLast(n => legs.TrueForAll(l => PathTo(loadNode[l]).Contains(n)));
        if (edge <= 0)
        {
            edge = path[0];
        }

        var splice = $"SP{splices.Count + 1}";
        var middle = new WireEnd(splice, null) { IsSplice = true };
        List<string> joined = [Add(circuit, colour, Root(), middle, open)];
        foreach (var leg in legs)
        {
            joined.Add(Add(circuit, colour, middle, End(leg), open));
        }

        splices.Add(new() { Id = splice, Circuit = circuit, Net = circuit, Segment = $"S{edge}", AtMm = 40 + Next(100), StationMm = 300 + Next(900), Wires = [.. joined] });
    }

    // edges from the root, by the node at their far end
    private List<int> PathTo(int node)
    {
        var path = new List<int>();
        for (var n = node; n > 0; n = parents[n])
        {
            path.Insert(0, n);
        }

        return path;
    }

    private string Add(string circuit, string colour, WireEnd from, WireEnd to, List<(int, double)> open)
    {
        var size = Sizes[Next(Sizes.Length)];
        var id = $"W{wires.Count + 1:000}";
        if (from.At == "firewall")
        {
            open.Add((wires.Count, 0));
        }

        wires.Add(new()
        {
            Id = id,
            Circuit = circuit,
            Net = circuit,
            From = from,
            To = to,
            Colour = colour,
            WireType = "thin",
            AreaMm2 = size.Area,
            SizeLabel = size.Text,
            OutsideMm = 2,
            PathLengthMm = 500,
            CutLengthMm = 300 + (10 * Next(200)),
            Segments = [],
            DecidedBy = "voltage drop",
        });
        return id;
    }

    private void DealPins(List<(int Wire, double Angle)> open)
    {
        var order = new List<int>();
        foreach (var (wire, _) in open)
        {
            order.Add(wire);
        }

        if (options.PlannedPins)
        {
            var leaves = LeafOrder.Of(Tree(), Harness());
            order = [.. order.OrderBy(w => Middle(leaves, wires[w])).ThenBy(w => w)];
        }
        else
        {
            for (var i = order.Count - 1; i > 0; i--)
            {
                var j = Next(i + 1);
                (order[i], order[j]) = (order[j], order[i]);
            }
        }

        for (var i = 0; i < order.Count; i++)
        {
            var half = i < order.Count / 2 ? "A" : "B";
            var cavity = half + (half == "A" ? i + 1 : i + 1 - (order.Count / 2)).ToString(CultureInfo.InvariantCulture);
            wires[order[i]] = wires[order[i]] with { From = new("firewall", cavity) };
            cavities.Add(new() { Connector = "firewall", Cavity = cavity, Wire = wires[order[i]].Id });
        }
    }

    // the middle one of all that the wire leads to
    private int Middle(LeafOrder leaves, Wire wire)
    {
        int[] ends = [.. wires.Where(w => w.Net == wire.Net && !w.To.IsSplice).Select(w => leaves.IndexOf(w.To.At)).Order()];
        return ends[(ends.Length - 1) / 2];
    }

    private Plan ToPlan()
    {
        var pins = cavities.Select(c => new Pin(c.Cavity, PinStyle.Cavity, "2.8") { Half = c.Cavity[..1] });
        if (options.Firewall)
        {
            things.Add(new()
            {
                Id = "firewall",
                Label = "Firewall connector",
                Kind = ThingKind.Mate,
                Place = "pass-through",
                Pins = [.. pins, new("A99", PinStyle.Cavity, "2.8") { Half = "A" }, new("B99", PinStyle.Cavity, "2.8") { Half = "B" }],
                Halves = [new("engine", "A"), new("front lighting", "B")],
            });
        }

        return new()
        {
            Harness = Harness(),
            Tree = Tree(),
            Wires = [.. wires],
            Splices = [.. splices],
            Cavities = [.. cavities],
            Fuses = [new() { Id = "F1", Kind = ProtectionKind.BoltIn, RatingA = 60, LargestA = 80, Wires = ["W001"] }, new() { Id = "F2", Kind = ProtectionKind.BoltIn, RatingA = 40, LargestA = 80, Wires = ["W002"] }],
            Nodes = [],
            Builds = [ImmutableSortedDictionary<string, string>.Empty],
            BuildCount = 1,
            PlanningFindings = [],
            RoutingObjective = "none",
        };
    }

    private HarnessTree Tree() => new("pass-through", [.. places.Select((p, i) => (p, i)).Skip(1).Select(x => new Segment
    {
        Id = $"S{x.i}", From = places[parents[x.i]].Id, To = x.p.Id, Wires = [],
        LengthMm = Math.Round(Math.Sqrt(Math.Pow(x.p.Xmm - places[parents[x.i]].Xmm, 2) + Math.Pow(x.p.Ymm - places[parents[x.i]].Ymm, 2)) / 10) * 10, Estimated = x.i % 4 == 0,
    })]);

    private Harness Harness() => new()
    {
        Id = "random",
        Title = "Engine bay and front lighting",
        Vehicle = "Test wagon",
        Drawing = new() { Number = "TW-1", Revisions = [new("A", "2026-09-11", "First issue", null, null)] },
        Power = new(GroundPolarity.Negative, ReturnPath.Body, [new() { Id = "main battery", Kind = SourceKind.Battery, NominalV = 12 }]),
        Options = [],
        OptionRules = [],
        States = [],
        Things = [.. things],
        Protections = [],
        Kept = [],
        Assumed = new(),
        Circuits = [.. circuits],
        Nets = [],
        KeepApart = [],
        Waivers = [],
        Layout = new() { Title = "random", Root = "pass-through", Places = [.. places], Paths = [], Outline = [Body()] },
        Catalogue = new(),
        OpenQuestions = [],
        SourceHash = "0123456789ab",
    };

    private BodyLine Body()
    {
        var far = places.Max(p => p.Xmm) + 150;
        var wide = Math.Max(places.Max(p => Math.Abs(p.Ymm)) + 150, 400);
        return new("body", [new(0, wide), new(far * 0.7, wide), new(far, wide * 0.6), new(far * 1.04, 0), new(far, -wide * 0.6), new(far * 0.7, -wide), new(0, -wide)], true);
    }
}
