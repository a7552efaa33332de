using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Tests.Model;

/// <summary>The things of <see cref="SmallHarness"/>.</summary>
public static class SmallThings
{
    public static ImmutableArray<Thing> Things { get; } =
    [
        new()
        {
            Id = "main battery", Label = "BATTERY", Kind = ThingKind.Battery, Place = "battery tray", Pins = [Stud("plus", "M8"), Stud("minus", "M8")],
            Elements = [new("source", ElementKind.Source, "plus", "minus") { NominalV = 12 }],
        },
        new()
        {
            Id = "alternator", Label = "ALTERNATOR", Kind = ThingKind.Alternator, Place = "alternator", Pins = [Stud("B+", "M6"), Blade("L")],
            Elements = [new("source", ElementKind.Source, "B+", null) { NominalV = 12 }, new("exciter", ElementKind.Electronic, "L", null) { CurrentA = 0.2 }],
        },
        new()
        {
            Id = "starter", Label = "STARTER", Kind = ThingKind.Starter, Place = "starter", Pins = [Stud("B", "M8"), Blade("S")],
            Elements = [new("motor", ElementKind.Motor, "B", null) { CurrentA = 160, PeakA = 400 }, new("solenoid", ElementKind.Coil, "S", null) { CurrentA = 7, PeakA = 30 }],
        },
        new()
        {
            Id = "bus bar", Label = "BUS BAR", Kind = ThingKind.BusBar, Place = "left wing rear", Pins = [Stud("1", "M8"), Stud("2", "M8"), Stud("3", "M8")],
            Elements = [new("bar 1-2", ElementKind.Link, "1", "2"), new("bar 2-3", ElementKind.Link, "2", "3")],
        },
        Fuse("F1", "left wing rear", PinStyle.Stud, "M6", Side.Bay), Fuse("F2", "left wing rear", PinStyle.Stud, "M6", Side.Bay), Fuse("F3", "left wing rear", PinStyle.Blade, "6.3", Side.Bay),
        Fuse("F7", "cabin panel", PinStyle.Blade, "6.3", Side.Cabin), Fuse("F8", "cabin panel", PinStyle.Blade, "6.3", Side.Cabin), Fuse("F9", "cabin panel", PinStyle.Blade, "6.3", Side.Cabin), Fuse("F10", "cabin panel", PinStyle.Blade, "6.3", Side.Cabin),
        new() { Id = "cabin fuse panel", Label = "FUSE PANEL", Kind = ThingKind.FusePanel, Place = "cabin panel", Side = Side.Cabin, Pins = [Stud("1", "M6")] },
        new()
        {
            Id = "ignition switch", Label = "IGNITION SWITCH", Kind = ThingKind.Switch, Place = "cabin panel", Side = Side.Cabin, Pins = [Blade("30"), Blade("15"), Blade("50")],
            Elements = [new("run", ElementKind.Contact, "30", "15"), new("start", ElementKind.Contact, "30", "50")],
        },
        new() { Id = "gauges", Label = "GAUGES", Kind = ThingKind.Load, Place = "cabin panel", Side = Side.Cabin, Pins = [Blade("1")] },
        new() { Id = "charge lamp", Label = "CHARGE LAMP", Kind = ThingKind.Lamp, Place = "cabin panel", Side = Side.Cabin, Pins = [Blade("1")] },
        Headlamp("left", "L"), Headlamp("right", "R"),
        new()
        {
            Id = "horn", Label = "HORN", Kind = ThingKind.Load, Place = "grille", ConnectorPart = "sealed-2", Pins = [Cavity("1", "2.8"), Cavity("2", "2.8")],
            Elements = [new("horn", ElementKind.Motor, "1", "2") { CurrentA = 5 }], Returns = [new("2", null)],
        },
        new()
        {
            Id = "ignition coil", Label = "COIL", Kind = ThingKind.Load, Place = "ignition coil", Pins = [Blade("15"), Blade("1")],
            Elements = [new("primary", ElementKind.Coil, "15", "1") { CurrentA = 4 }], Returns = [new("1", "engine ground")],
        },
        new()
        {
            Id = "coolant sender", Label = "COOLANT SENDER", Kind = ThingKind.Sender, Place = "thermostat", Pins = [Blade("1")],
            Elements = [new("sender", ElementKind.Sender, "1", null) { CurrentA = 0.15 }],
        },
        new()
        {
            Id = "fan relay", Label = "FAN RELAY", Kind = ThingKind.Relay, Place = "left wing front", ConnectorPart = "relay-base",
            Pins = [Cavity("30", "6.3"), Cavity("85", "6.3"), Cavity("86", "6.3"), Cavity("87", "6.3")],
            Elements = [new("coil", ElementKind.Coil, "86", "85") { CurrentA = 0.17 }, new("contact", ElementKind.Contact, "30", "87") { WorkedBy = "coil", RatedA = 30 }],
            Returns = [new("85", null)],
        },
        new()
        {
            Id = "fan", Label = "FAN", Kind = ThingKind.Motor, Place = "grille", ConnectorPart = "sealed-2", Pins = [Cavity("1", "2.8"), Cavity("2", "2.8")],
            Elements = [new("motor", ElementKind.Motor, "1", "2") { CurrentA = 11, PeakA = 45 }], Returns = [new("2", null)],
        },
        new() { Id = "ground left", Label = "GROUND L", Kind = ThingKind.GroundPoint, Place = "left wing front", SideMark = "L", Pins = [Stud("stud", "M6")] },
        new() { Id = "ground right", Label = "GROUND R", Kind = ThingKind.GroundPoint, Place = "right wing front", SideMark = "R", Pins = [Stud("stud", "M6")] },
        new() { Id = "ground rear", Label = "BODY GROUND", Kind = ThingKind.GroundPoint, Place = "battery tray", Pins = [Stud("stud", "M8")], TorqueNm = 12 },
        new() { Id = "engine ground", Label = "ENGINE GROUND", Kind = ThingKind.GroundPoint, Place = "starter", Pins = [Stud("stud", "M8")] },
        new()
        {
            Id = "firewall", Label = "FIREWALL", Kind = ThingKind.Mate, Place = "pass-through", ConnectorPart = "bulkhead-12", Halves = [new("engine", "A"), new("front lighting", "B")],
            Pins = [.. SmallCatalogue.Catalogue.Connectors[0].Cavities.Select(c => new Pin(c.Name, PinStyle.Cavity, c.Size) { Half = c.Half })],
        },
    ];

    private static Thing Headlamp(string side, string mark) => new()
    {
        Id = $"headlamp {side}",
        Label = "HEADLAMP",
        SideMark = mark,
        Kind = ThingKind.Lamp,
        Place = $"{side} lamp",
        ConnectorPart = "lamp-3",
        Pins = [Cavity("56a", "6.3"), Cavity("56b", "6.3"), Cavity("31", "6.3")],
        Elements = [new("main", ElementKind.Lamp, "56a", "31") { PowerW = 60 }, new("dipped", ElementKind.Lamp, "56b", "31") { PowerW = 55 }],
        Returns = [new("31", null)],
    };

    private static Thing Fuse(string id, string place, PinStyle style, string size, Side side) => new()
    {
        Id = id,
        Label = id,
        Kind = ThingKind.Fuse,
        Place = place,
        Side = side,
        Pins = [new("in", style, size), new("out", style, size)],
        Elements = [new("fuse", ElementKind.Fuse, "in", "out")],
    };

    private static Pin Stud(string name, string thread) => new(name, PinStyle.Stud, thread);

    private static Pin Blade(string name) => new(name, PinStyle.Blade, "6.3");

    private static Pin Cavity(string name, string size) => new(name, PinStyle.Cavity, size);
}
