using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>Rules about cutting, splicing and what was measured.</summary>
internal static class MakingCases
{
    public static IEnumerable<RuleCase> All =>
    [
        // AC 43.13-1B: a grommet where the gap is under 3/8 in; the catalogue has none for a hole of 45 mm
        new("hole-edge-bare", p => Hole(p, 30), ["30 mm at trunk end has 7.5 mm to the edge"], p => Hole(p, 20)),
        new("longer-than-reel", p => p.Wire("F07", w => w with { CutLengthMm = 101_000 }), ["F07 (horn) is cut 101 m; the longest reel holds 100 m"], p => p.Wire("F07", w => w with { CutLengthMm = 100_000 })),
        new("wire-not-once", p => p.Wire("F08", w => w with { Id = "F07" }), ["F07 is the id of 2 wires (horn and horn return)"], p => p),
        new("wire-not-once", p => p with { Cavities = [.. p.Cavities, new() { Connector = "firewall", Cavity = "B6", Wire = "W41" }] }, ["W41 is in cavity firewall B6 and not in the cut list"], p => p),
        new("wire-not-once", p => p with { Cavities = [.. p.Cavities.Where(c => c.Wire != "F07")] }, ["F07 (horn) ends in firewall B1, and the insertion list does not have it"], p => p),
        new("wire-not-once", p => p.Segment("S6", s => s with { Wires = [] }), ["runs in S6, and the board does not show it"], p => p),
        new("reading-off", p => Read(p, 11.7), ["headlamp left 56b read 11.7 V in 'night'; 12.3 V is expected"], p => Read(p, 11.85)),
        new("reading-off", p => Ground(p, 0.3), ["headlamp left 31 read 0.3 V"], p => Ground(p, 0.2)),
        // 1 mm2 by its catalogue row, 2160 mm, and a contact at each end: about 50 milliohms and not over 1.5 times as much
        new("reading-off", p => Ohms(p, 90), ["F07 (horn) read 90 mΩ from end to end"], p => Ohms(p, 50)),
        new("splices-in-series", p => p.Wire("F02", w => w with { To = new("SP2", null) { IsSplice = true } }), ["F02 (dipped beam) joins SP1 and SP2"], p => p),
        // 50 mm where both are sealed, 40 mm else
        new("splices-too-near", p => Sealed(p, 345), ["SP1 and SP2 are 45 mm apart on S4", "Stagger them 50 mm"], p => Sealed(p, 350)),
        new("splices-too-near", p => p.Splice("SP2", s => s with { AtMm = 330 }), ["SP1 and SP2 are 30 mm apart on S4", "Stagger them 40 mm"], p => p.Splice("SP2", s => s with { AtMm = 345 })),
        // AC 43.13-1B: 75 wires
        new("bundle-too-thick", p => Full(p, 76), ["S1", "has 76 wires", "75 wires is the most"], p => Full(p, 75)),
    ];

    private static Plan Hole(Plan p, double bundleMm) => p.Harness(h => h with { Layout = h.Layout with { Openings = [new("trunk end", 45, 45, true) { Panel = "shield" }] } })
        .Segment("S1", s => s with { DiameterMm = bundleMm }).Segment("S2", s => s with { DiameterMm = bundleMm }).Segment("S9", s => s with { DiameterMm = bundleMm });

    private static Plan Read(Plan p, double volts) => p.Harness(h => h with { Measured = AsBuilt.Nothing with { Volts = [new("headlamp left.56b", "night", volts, null)] } });

    private static Plan Ground(Plan p, double volts) => p.Harness(h => h with { Measured = AsBuilt.Nothing with { Volts = [new("headlamp left.31", "night", volts, null)] } });

    private static Plan Ohms(Plan p, double milliohm) => p.Harness(h => h with { Measured = AsBuilt.Nothing with { Resistances = [new("F07", milliohm, null)] } });

    private static Plan Sealed(Plan p, double mm) => p.Splice("SP1", s => s with { Part = "splice-4-sealed" }).Splice("SP2", s => s with { Part = "splice-4-sealed", AtMm = mm });

    private static Plan Full(Plan p, int wires) => p.Segment("S1", s => s with { Wires = [.. Enumerable.Range(1, wires).Select(i => i.ToString("X00", CultureInfo.InvariantCulture))], DiameterMm = 30 });
}
