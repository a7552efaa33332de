using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

internal static class RoutingCases
{
    public static IEnumerable<RuleCase> All =>
    [
        new("no-path-in-layout", p => p.Segment("S6", s => s with { Assumed = true }), ["no path from left lamp to grille"], p => p),
        // pass-through to trunk end: 181.4 mm in a straight line
        new("shorter-than-straight", p => Length(p, 170), ["pass-through to trunk end is given as 170 mm", "181 mm"], p => Length(p, 172)),
        // AC 43.13-1B: 24 in
        new("clips-too-far", p => Clips(p, 610), ["S4", "clipped every 610 mm; 600 mm is the most"], p => Clips(p, 300)),
        new("clips-too-far", p => Clips(p, 310), ["over 300 mm it needs ties"], p => Clips(p, 300)),
        new("grommet-fit", p => Hole(p, 62, 41), ["Bundle 41 mm in a 40 mm bore", "does not go through"], p => Hole(p, 62, 30)),
        new("grommet-fit", p => Hole(p, 62, 36), ["fills 81 % of the 40 mm bore"], p => Hole(p, 62, 33)),
        new("grommet-fit", p => Hole(p, 62, 20), ["fills 25 %", "Seal the rest"], p => Hole(p, 62, 26)),
        new("part-does-not-pass", p => Pass(p, 12), ["fan needs 14 mm", "the hole at left lamp is 12 mm", "Fit the plug of fan"], p => Pass(p, 15)),
        new("slack-over-movement", p => p.Path("trunk end - engine top", x => x with { MovesMm = 24 }), ["moves ±24 mm", "30 mm to spare, 36 mm needed", "Add 6 mm"], p => p),
        new("bundle-too-thick", p => p.Segment("S1", s => s with { DiameterMm = 51 }), ["S1", "51 mm; 50 mm is the most"], p => p.Segment("S1", s => s with { DiameterMm = 50 })),
        new("too-near-keep-clear", p => Clear(p, 700), ["S4", "exhaust", "100 mm is asked for"], p => Clear(p, 850)),
        new("forbidden-zone", p => Shaft(p, 700), ["S4", "crosses the zone of steering shaft", "100 mm is kept free"], p => Shaft(p, 1000)),
        new("cut-too-short", p => p.Wire("F07", w => w with { CutLengthMm = 1000 }), ["F07 (horn) is cut 1000 mm; its route needs 2100 mm and 60 mm of allowances", "Cut 2160 mm"], p => p.Wire("F07", w => w with { CutLengthMm = 2160 })),
        // 40 mm in vehicle service practice
        new("splices-too-near", p => p.Splice("SP2", s => s with { AtMm = 339 }), ["SP1 and SP2 are 39 mm apart on S4"], p => p.Splice("SP2", s => s with { AtMm = 340 })),
        new("splices-too-near", p => p.Splice("SP1", s => s with { AtMm = 39 }), ["SP1 is 39 mm from the breakout at left wing rear"], p => p.Splice("SP1", s => s with { AtMm = 40 })),
        new("splice-near-end", p => p.Wire("F02", w => w with { PathLengthMm = 290 }), ["SP1 is 290 mm from headlamp left 56b"], p => p.Wire("F02", w => w with { PathLengthMm = 300 }).Wire("F05", w => w with { PathLengthMm = 300 })),
        new("splice-out-of-range", p => p.Wire("F01", w => w with { AreaMm2 = 2.5 }), ["2.5 + 1 + 1 = 4.5 mm² in splice-4 for 0.8 to 4 mm²", "Use splice-10"], p => p),
        new("splice-flexing", p => p.Splice("SP1", s => s with { Segment = "S9", AtMm = 100 }), ["SP1 lies on trunk end to engine top, which moves ±20 mm"], p => p),
        new("splice-in-passage", p => Passage(p, 39), ["SP1 is 39 mm from the hole at left wing rear", "40 mm must be clear"], p => Passage(p, 40)),
        new("splice-wet-unsealed", p => p.Splice("SP1", s => s with { Segment = "S5", AtMm = 100 }), ["SP1 lies in 'wet' (spray) and splice-4 is not sealed"], p => p.Splice("SP1", s => s with { Segment = "S5", AtMm = 100, Part = "splice-4-sealed" })),
        new("splice-many-wires", p => p.Splice("SP1", s => s with { Wires = [.. s.Wires, "F04", "F05"] }), ["SP1 joins 5 wires"], p => p.Splice("SP1", s => s with { Wires = [.. s.Wires, "F04"] })),
        new("splice-in-power-lead", p => p.Splice("SP1", s => s with { Wires = ["P03", .. s.Wires] }), ["SP1 is in the lead from alternator B+"], p => p),
        new("same-colour-and-size", p => p.Wire("F04", w => w with { Colour = "YE" }), ["firewall: 2 YE wires of 2 (F01 (dipped beam) and F04 (main beam))"], p => p.Wire("F04", w => w with { Colour = "YE/BK" })),
        new("colours-confusable", p => p.Wire("F01", w => w with { Colour = "GN/WH" }).Wire("F04", w => w with { Colour = "BN/WH" }), ["GN/WH and BN/WH (B2, B3) side by side"], p => p.Wire("F01", w => w with { Colour = "GN/WH" }).Wire("F04", w => w with { Colour = "BN/YE" })),
        new("base-tracer-swapped", p => p.Wire("F01", w => w with { Colour = "RD/GN" }).Wire("F07", w => w with { Colour = "GN/RD" }), ["GN/RD and F01 (dipped beam) RD/GN"], p => p.Wire("F01", w => w with { Colour = "RD/GN" })),
        new("black-feed-red-ground", p => p.Wire("F07", w => w with { Colour = "BK/GN" }), ["F07 (horn) BK/GN is a black feed"], p => p.Wire("F07", w => w with { Colour = "GN/BK" })),
        new("black-feed-red-ground", p => p.Wire("F08", w => w with { Colour = "RD" }), ["F08 (horn return) RD is a red ground"], p => p),
        new("colour-not-stocked", p => Stock(p, "TQ"), ["Not stocked: TQ 1 (F07)"], p => Stock(p, "RD/GN")),
    ];

    private static Plan Length(Plan p, double mm) => p.Path("pass-through - trunk end", x => x with { LengthMm = mm }).Harness(h => h with { Layout = h.Layout with { Paths = [.. h.Layout.Paths.Where(x => x.Id == "pass-through - trunk end")] } });

    private static Plan Clips(Plan p, double mm) => p.Path("left wing rear - left wing front", x => x with { ClipsEveryMm = mm });

    private static Plan Hole(Plan p, double hole, double bundle) => p.Harness(h => h with { Layout = h.Layout with { Openings = [new("trunk end", hole, hole, true) { Panel = "shield" }] } })
        .Segment("S1", s => s with { DiameterMm = bundle }).Segment("S2", s => s with { DiameterMm = bundle }).Segment("S9", s => s with { DiameterMm = bundle });

    private static Plan Passage(Plan p, double fromHoleMm) => p.Splice("SP1", s => s with { AtMm = fromHoleMm })
        .Harness(h => h with { Layout = h.Layout with { Openings = [new("left wing rear", 40, 40, true) { Panel = "inner wing" }] } });

    private static Plan Pass(Plan p, double hole) => p.Harness(h => h with { Layout = h.Layout with { Openings = [new("left lamp", hole, hole, true)] } })
        .Wire("F08", w => w with { To = new("fan relay", "85") }).Wire("F08", w => w with { Segments = ["S6", "S5"] });

    private static Plan Clear(Plan p, double zMm) => p.Harness(h => h with { Layout = h.Layout with { KeepClear = [new("exhaust", 500, -610, zMm, 100, null)] } });

    private static Plan Shaft(Plan p, double zMm) => p.Harness(h => h with { Layout = h.Layout with { KeepClear = [new("steering shaft", 500, -900, zMm, 100, null) { To = (500, 200, zMm), Forbidden = true }] } });

    private static Plan Stock(Plan p, string colour) => p.Harness(h => h with { Catalogue = h.Catalogue with { WireTypes = [.. h.Catalogue.WireTypes.Select(t => t with { Colours = ["RD", "YE", "WH", "BN", "BK", "VT", "GY"] })] } }).Wire("F07", w => w with { Colour = colour });
}
