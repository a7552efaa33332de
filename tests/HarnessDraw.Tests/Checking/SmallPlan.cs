using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Model;

namespace HarnessDraw.Tests.Checking;

/// <summary>
/// <see cref="SmallHarness"/> planned by hand, so that a rule's test depends on no planner: sizes, cavities and currents are plain choices
/// that a rule finds no fault with unless a test changes them.
/// </summary>
public static class SmallPlan
{
    private static readonly BuildCondition Exciter = new([new("charging", ["exciter"])]);

    private static readonly Harness Harness = SmallHarness.Harness with
    {
        Circuits =
        [
            .. SmallHarness.Harness.Circuits.Select(c => c.Id is "horn" or "starter solenoid" ? c with { ProtectedBy = ["F10"] } : c),
            .. new[] { "horn", "ignition", "fan trigger", "fan", "headlamp left", "headlamp right" }.Select(id => new Circuit { Id = $"{id} return", IsReturn = true, LiveWith = KeyPosition.Off }),
        ],
        Things = [.. SmallHarness.Harness.Things.Select(t => t.Kind == ThingKind.GroundPoint ? t with { TorqueNm = 8, Note = "bare metal, seal after" } : t)],
    };

    private static readonly ImmutableArray<Segment> Segments =
    [
        Seg("S1", "pass-through", "trunk end", 180), Seg("S2", "trunk end", "left wing rear", 420), Seg("S3", "left wing rear", "battery tray", 170),
        Seg("S4", "left wing rear", "left wing front", 620), Seg("S5", "left wing front", "left lamp", 280) with { Zone = "wet" }, Seg("S6", "left lamp", "grille", 600) with { Zone = "wet" },
        Seg("S7", "grille", "right lamp", 590) with { Zone = "wet" }, Seg("S8", "right lamp", "right wing front", 290) with { Zone = "wet" }, Seg("S9", "trunk end", "engine top", 360),
        Seg("S10", "engine top", "thermostat", 270) with { Zone = "engine" }, Seg("S11", "engine top", "ignition coil", 260) with { Zone = "engine" },
        Seg("S12", "battery tray", "starter", 390) with { Zone = "engine" }, Seg("S13", "engine top", "alternator", 420) with { Zone = "engine" },
    ];

    private static readonly ImmutableArray<Wire> Wires =
    [
        Cut("P01", "battery feed", "main battery.plus", "bus bar.1", 25, "RD", 45), Cut("P02", "starter cable", "main battery.plus", "starter.B", 50, "RD", 160),
        Cut("P03", "charge lead", "alternator.B+", "F2.out", 16, "RD", 55), Cut("P04", "cabin feed", "F1.out", "firewall.A1", 6, "RD", 30),
        Cut("F01", "dipped beam", "firewall.B2", "SP1", 2, "YE", 9.2), Cut("F02", "dipped beam", "SP1", "headlamp left.56b", 1, "YE", 4.6), Cut("F03", "dipped beam", "SP1", "headlamp right.56b", 1, "YE", 4.6),
        Cut("F04", "main beam", "firewall.B3", "SP2", 2, "WH", 10), Cut("F05", "main beam", "SP2", "headlamp left.56a", 1, "WH", 5), Cut("F06", "main beam", "SP2", "headlamp right.56a", 1, "WH", 5),
        Cut("F07", "horn", "firewall.B1", "horn.1", 1, "BN/WH", 5), Cut("F08", "horn return", "horn.2", "ground right.stud", 1, "BK", 5),
        Cut("E01", "ignition", "firewall.A2", "ignition coil.15", 1, "VT", 4), Cut("E02", "ignition return", "ignition coil.1", "engine ground.stud", 1, "BK", 4),
        Cut("E03", "coolant signal", "firewall.A3", "coolant sender.1", 0.5, "GY", 0.15), Cut("E04", "starter solenoid", "firewall.A4", "starter.S", 2, "RD/YE", 12),
        Cut("E05", "exciter", "firewall.A5", "alternator.L", 0.75, "WH/BK", 0.2) with { Builds = Exciter },
        Cut("F09", "fan trigger", "firewall.B4", "fan relay.86", 0.5, "VT/BK", 0.17), Cut("F10", "fan trigger return", "fan relay.85", "ground left.stud", 0.5, "BK", 0.17),
        Cut("P05", "fan feed", "F3.out", "fan relay.30", 3, "RD/WH", 11), Cut("F11", "fan", "fan relay.87", "fan.1", 3, "RD/BK", 11), Cut("F12", "fan return", "fan.2", "ground right.stud", 3, "BK", 11),
        Cut("F13", "headlamp left return", "headlamp left.31", "ground left.stud", 2, "BK", 5), Cut("F14", "headlamp right return", "headlamp right.31", "ground right.stud", 2, "BK", 5),
        Cut("G01", "battery ground", "main battery.minus", "ground rear.stud", 50, "BK", 160), Cut("G02", "engine strap", "engine ground.stud", "ground rear.stud", 50, "BK", 160),
    ];

    /// <summary>The plan that tests vary.</summary>
    public static Plan Plan { get; } = new()
    {
        Harness = Harness,
        Tree = new("pass-through", [.. Segments.Select(s => s with { Wires = [.. Wires.Where(w => w.Segments.Contains(s.Id)).Select(w => w.Id)], DiameterMm = 12, Covering = "tape", MinBendRadiusMm = 120 })]),
        Wires = Wires,
        Splices =
        [
            new() { Id = "SP1", Circuit = "dipped beam", Net = "dipped beam", Segment = "S4", AtMm = 300, StationMm = 900, Wires = ["F01", "F02", "F03"], Part = "splice-4" },
            new() { Id = "SP2", Circuit = "main beam", Net = "main beam", Segment = "S4", AtMm = 400, StationMm = 1000, Wires = ["F04", "F05", "F06"], Part = "splice-4" },
        ],
        Cavities =
        [
            .. Wires.SelectMany(w => new[] { (w, w.From), (w, w.To) }).Where(p => p.Item2.Pin is not null && Harness.ThingOf(p.Item2.At).ConnectorPart is not null)
                .Select(p => new CavityUse { Connector = p.Item2.At, Cavity = p.Item2.Pin!, Wire = p.w.Id, Builds = p.w.Builds }),
            .. new[] { "A6", "B5", "B6" }.Select(c => new CavityUse { Connector = "firewall", Cavity = c, Plug = "plug-2.8" }),
        ],
        Fuses =
        [
            new() { Id = "F1", Kind = ProtectionKind.BoltIn, RatingA = 40, LargestA = 40, Wires = ["P04"], LoadA = 30 }, new() { Id = "F2", Kind = ProtectionKind.BoltIn, RatingA = 80, LargestA = 80, Wires = ["P03"], LoadA = 55 },
            new() { Id = "F3", Kind = ProtectionKind.Blade, RatingA = 25, LargestA = 25, Wires = ["P05", "F11"], LoadA = 11 },
            new() { Id = "F7", Kind = ProtectionKind.Blade, RatingA = 15, LargestA = 15, Wires = ["F01", "F02", "F03"], LoadA = 9.2, Given = true },
            new() { Id = "F8", Kind = ProtectionKind.Blade, RatingA = 15, LargestA = 15, Wires = ["F04", "F05", "F06"], LoadA = 10, Given = true },
            new() { Id = "F9", Kind = ProtectionKind.Blade, RatingA = 10, LargestA = 10, Wires = ["E01", "E05", "F09"], LoadA = 4.4, Given = true },
        ],
        Nodes =
        [
            Volts("main battery.plus", 12.5), Volts("main battery.minus", 0), Volts("headlamp left.56b", 12.3), Volts("headlamp left.31", 0.05), Volts("headlamp right.56b", 12.25), Volts("headlamp right.31", 0.05),
            Volts("fan.1", 12.2), Volts("fan.2", 0.1), Volts("alternator.B+", 12.5), Volts("starter.B", 12.3), Volts("SP1", 12.4), Volts("firewall.B2", 12.45),
        ],
        Builds = [Build("exciter"), Build("single wire")],
        BuildCount = 2,
        PlanningFindings = [],
        RoutingObjective = "by hand",
    };

    private static Segment Seg(string id, string from, string to, double lengthMm) => new() { Id = id, From = from, To = to, LengthMm = lengthMm, Wires = [] };

    private static Wire Cut(string id, string circuit, string from, string to, double areaMm2, string colour, double amps)
    {
        var size = SmallCatalogue.Catalogue.WireTypes[0].Sizes.First(s => s.AreaMm2 == areaMm2);
        var segments = Way(Place(from), Place(to));
        var length = segments.Sum(s => s.LengthMm!.Value) / (from.StartsWith("SP", StringComparison.Ordinal) || to.StartsWith("SP", StringComparison.Ordinal) ? 1.2 : 1);
        return new()
        {
            Id = id,
            Circuit = circuit,
            Net = circuit,
            From = End(from, size),
            To = End(to, size),
            Colour = colour,
            WireType = "thin-wall",
            AreaMm2 = areaMm2,
            SizeLabel = size.Label,
            OutsideMm = size.OutsideMm,
            PathLengthMm = length,
            CutLengthMm = Math.Ceiling((length + 60) / 10) * 10,
            Allowances = [new("dress in connectors", 30), new("service loop", 30)],
            Segments = [.. segments.Select(s => s.Id)],
            Worst = new("night", amps, 0.1, 60),
            AmpacityA = size.AirAmpacityA * 0.95,
            DecidedBy = "given by hand",
            ProtectedBy = SmallHarness.Harness.Circuits.FirstOrDefault(c => c.Id == circuit)?.ProtectedBy ?? [],
        };
    }

    private static WireEnd End(string text, WireSize size)
    {
        var dot = text.LastIndexOf('.');
        if (dot < 0)
        {
            return new(text, null) { IsSplice = true, StripMm = 7.5 };
        }

        var thing = Harness.ThingOf(text[..dot]);
        var pin = thing.Pins.First(p => p.Name == text[(dot + 1)..]);
        var part = SmallCatalogue.Catalogue.Connectors.FirstOrDefault(c => c.Id == thing.ConnectorPart);
        var families = pin.Style == PinStyle.Stud ? ["ring"] : part?.TerminalFamilies ?? ["blade"];
        var terminal = SmallCatalogue.Catalogue.Terminals.First(t => families.Contains(t.Family) && t.Size == pin.Size && size.AreaMm2 >= t.MinAreaMm2 && size.AreaMm2 <= t.MaxAreaMm2);
        return new(text[..dot], text[(dot + 1)..]) { Terminal = terminal.Id, Seal = part?.Sealed == true ? "seal-2.8" : null, StripMm = terminal.StripMm };
    }

    private static string Place(string end) => end.StartsWith("SP", StringComparison.Ordinal) ? "left wing front" : Harness.ThingOf(end[..end.LastIndexOf('.')]).Place;

    private static List<Segment> Way(string from, string to)
    {
        var up = Up(from);
        var down = Up(to);
        var shared = up.Intersect(down).ToHashSet();
        return [.. up.Where(s => !shared.Contains(s)), .. down.Where(s => !shared.Contains(s)).Reverse()];
    }

    private static List<Segment> Up(string place)
    {
        var way = new List<Segment>();
        for (var at = Segments.FirstOrDefault(s => s.To == place); at is not null; at = Segments.FirstOrDefault(s => s.To == at.From))
        {
            way.Add(at);
        }

        return way;
    }

    private static NodeVolts Volts(string node, double night) => new(node, ImmutableSortedDictionary<string, double?>.Empty.Add("night", night));

    private static ImmutableSortedDictionary<string, string> Build(string charging) => ImmutableSortedDictionary<string, string>.Empty.Add("charging", charging);
}
