using HarnessDraw.Model;

namespace HarnessDraw.Tests.Model;

/// <summary>Fifteen places of an invented engine bay, nose at larger x.</summary>
public static class SmallLayout
{
    public static VehicleLayout Layout { get; } = new()
    {
        Title = "Small saloon, engine bay",
        Root = "pass-through",
        Places =
        [
            new("pass-through", 0, -100, 640), new("trunk end", 150, -200, 660), new("left wing rear", 200, -600, 700) { Branch = "POWER" },
            new("left wing front", 800, -620, 680) { Branch = "LEFT WING", Zone = "wet" }, new("left lamp", 1050, -560, 600) { Branch = "LEFT LAMPS", Zone = "wet" },
            new("grille", 1100, 0, 620) { Zone = "wet" }, new("right lamp", 1050, 560, 600) { Branch = "RIGHT LAMPS", Zone = "wet" },
            new("right wing front", 800, 620, 680) { Zone = "wet" }, new("engine top", 450, -100, 800) { Branch = "ENGINE" },
            new("thermostat", 700, -60, 780), new("ignition coil", 420, 150, 760), new("starter", 400, -380, 350), new("alternator", 700, -330, 600),
            new("battery tray", 350, -560, 650), new("cabin panel", -200, -300, 600),
        ],
        Paths =
        [
            Run("pass-through", "trunk end", 180), Run("trunk end", "left wing rear", 420), Run("left wing rear", "battery tray", 170), Run("left wing rear", "left wing front", 620) with { ClipsEveryMm = 150 },
            Run("left wing front", "left lamp", 280) with { Zone = "wet" }, Run("left lamp", "grille", 600) with { Zone = "wet" }, Run("grille", "right lamp", 590) with { Zone = "wet" },
            Run("right lamp", "right wing front", 290) with { Zone = "wet" }, Run("trunk end", "engine top", 360) with { MovesMm = 20 }, Run("engine top", "thermostat", 270) with { Zone = "engine" },
            Run("engine top", "ignition coil", 260) with { Zone = "engine" }, Run("battery tray", "starter", 390) with { Known = LengthKnown.Estimated, Zone = "engine" },
            Run("engine top", "starter", 560) with { Zone = "engine" }, Run("starter", "alternator", 430) with { Zone = "engine" }, Run("engine top", "alternator", 420) with { Zone = "engine" },
            Run("thermostat", "grille", 480) with { MovesMm = 20 },
        ],
        Zones = [new("wet", 60, Exposure.Spray, null), new("engine", 75, Exposure.Dry, null)],
        Openings = [new("pass-through", 62, 98, false) { Panel = "firewall", Holds = "firewall", Datum = new("left seam and floor", 400, 250) }],
        Surfaces = [new("body", "steel", true)],
        Outline =
        [
            new("body", [new(-250, -780), new(1150, -760), new(1250, 0), new(1150, 760), new(-250, 780)], true),
            new("engine", [new(250, -250), new(850, -250), new(850, 250), new(250, 250)], true),
        ],
    };

    private static HarnessDraw.Model.Path Run(string from, string to, double lengthMm) => new($"{from} - {to}", from, to) { LengthMm = lengthMm };
}
