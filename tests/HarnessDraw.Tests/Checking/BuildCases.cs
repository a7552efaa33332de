using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>Rules about building, reaching and mending what the plan says, and about wires given by hand.</summary>
internal static class BuildCases
{
    public static IEnumerable<RuleCase> All =>
    [
        // TM 1-1500-204-23-4: ten diameters; three where clipped
        new("bend-too-tight", p => Thick(p, 200), ["S1/S2 at trunk end turns", "200 mm thick", "has room for"], p => Thick(p, 4)),
        new("openings-too-close", p => Holes(p, 66), ["leave 4 mm of metal", "10 mm is the least"], p => Holes(p, 80)),
        new("openings-too-close", p => Room(p, 60), ["The opening at pass-through reaches 1 mm beyond its panel"], p => Room(p, 82)),
        new("openings-too-close", p => Room(p, 80), ["leaves 9 mm of metal to the edge of its panel", "10 mm is the least"], p => Room(p, 82)),
        new("openings-too-close", p => Brace(p, 20), ["cuts through brace at (20, 0) mm"], p => Brace(p, 40)),
        new("datum-not-given", p => Datum(p, null), ["the opening at pass-through lies on the firewall", "not given"], p => Datum(p, new("left seam", 120, 85))),
        new("datum-not-given", p => Datum(p, new("left seam", 120, null)), ["not measured from left seam"], p => Datum(p, new("left seam", 120, 85))),
        new("drip-loop-missing", p => Falling(p, 60), ["headlamp left", "60 mm down in 'wet'", "loop of 60 mm"], p => Falling(p, 40)),
        new("no-new-terminal", p => Spare(p, 10), ["P01 (battery feed) lacks 58 mm", "2 new terminals"], p => Spare(p, 200)),
        new("not-reachable", p => Behind(p, "left lamp"), ["headlamp left sits behind the inner wing panel"], p => p),
        new("grommet-closed-in", p => Grommet(p, "grommet-40"), ["The grommet grommet-40 at trunk end", "which end goes on after?"], p => Grommet(p, null)),
        new("hand-route-off-path", p => ByHand(p, "trunk end", "grille"), ["F07: the route by hand goes", "from trunk end to grille"], p => ByHand(p, "trunk end", "left wing rear", "left wing front", "left lamp")),
        new("no-terminal-fits", p => Given(p, 16), ["horn 1: F07 (horn) is given as 16"], p => Given(p, 1)),
        // five to one
        new("size-steps-down", p => Feed(p, 5.1), ["dipped beam steps from", "(F01) to 1 (F02) at SP1", "15 A fuse F7"], p => Feed(p, 5)),
        new("splice-unbalanced", p => Feed(p, 6.5), ["SP1 joins 6.5 to 2 mm²", "3 to 1"], p => Feed(p, 6)),
        new("current-not-given", p => p.Element("horn", "horn", e => e with { CurrentA = null, PowerW = null, ResistanceOhm = null }), ["No current given for horn"], p => p),
        new("electronics-before-isolation", p => p.Element("horn", "horn", e => e with { Kind = ElementKind.Electronic }), ["Unplug", "horn", "500 V"], p => p.Harness(h => h with { Things = [.. h.Things.Select(t => t with { Elements = [.. t.Elements.Where(e => e.Kind is not (ElementKind.Electronic or ElementKind.Diode))] })] })),
        new("revisions-mixed", p => Revisions(p, "A", "A"), ["Revision A stands 2 times"], p => Revisions(p, "A", "B")),
    ];

    private static Plan Thick(Plan p, double mm) => p with { Tree = p.Tree with { Segments = [.. p.Tree.Segments.Select(s => s with { DiameterMm = mm })] } };

    private static Plan Holes(Plan p, double apartMm)
    {
        var at = p.Harness.Layout.PlaceOf("pass-through");
        return p.Harness(h => h with { Layout = h.Layout with { Places = [.. h.Layout.Places, at with { Id = "second hole", Ymm = at.Ymm + apartMm }], Openings = [Hole("pass-through"), Hole("second hole")] } });
    }

    private static Plan Brace(Plan p, double asideMm)
    {
        var at = p.Harness.Layout.PlaceOf("pass-through");
        return p.Harness(h => h with { Layout = h.Layout with { Openings = [Hole("pass-through")], KeepClear = [new("brace", at.Xmm, at.Ymm + asideMm, at.Zmm, 5, null)] } });
    }

    private static Plan Room(Plan p, double wideMm) => p.Harness(h => h with { Layout = h.Layout with { Openings = [Hole("pass-through") with { RoomWidthMm = wideMm, RoomHeightMm = 200 }] } });

    private static Plan Datum(Plan p, OpeningDatum? datum) => p.Harness(h => h with { Layout = h.Layout with { Openings = [Hole("pass-through") with { Datum = datum }] } });

    private static Opening Hole(string place) => new(place, 62, 98, false) { Panel = "firewall" };

    private static Plan Falling(Plan p, double mm) => p.Harness(h => h with
    {
        Layout = h.Layout with { Places = [.. h.Layout.Places.Select(x => x with { Zmm = x.Id == "left lamp" ? 600 - mm : 600, Zone = x.Id == "left lamp" ? "wet" : null })] },
    }).Part(p.Harness.ThingOf("headlamp left").ConnectorPart!, c => c with { Sealed = false });

    private static Plan Spare(Plan p, double mm) => p with { Wires = [.. p.Wires.Select(w => w with { Allowances = [new("re-termination (to)", 60)], CutLengthMm = w.PathLengthMm + mm })] };

    private static Plan Behind(Plan p, string place) => p.Harness(h => h with { Layout = h.Layout with { Places = [.. h.Layout.Places.Select(x => x.Id == place ? x with { Behind = "inner wing panel" } : x)] } });

    private static Plan Grommet(Plan p, string? part) => p.Harness(h => h with { Layout = h.Layout with { Openings = [new("trunk end", 40, 40, true) { Panel = "shield", Holds = part }] } });

    private static Plan ByHand(Plan p, params string[] route) => p.Harness(h => h with
    {
        Nets = [.. h.Nets.Select(n => n.Circuit == "horn" ? n with { ByHand = [new HandWire { Id = "F07", From = new("firewall", "B4"), To = new("horn", "1"), Route = [.. route] }] } : n)],
    });

    private static Plan Given(Plan p, double mm2) => p.Wire("F07", w => w with { DecidedBy = "given by hand", AreaMm2 = mm2, SizeLabel = $"{mm2}", To = w.To with { Terminal = null } });

    private static Plan Feed(Plan p, double mm2) => p.Wire("F01", w => w with { AreaMm2 = mm2, ProtectedBy = ["F7"] }).Wire("F02", w => w with { ProtectedBy = ["F7"] });

    private static Plan Revisions(Plan p, params string[] letters) =>
        p.Harness(h => h with { Drawing = h.Drawing with { Revisions = [.. letters.Select(l => new Revision(l, "2026-09-11", "change", null, null))] } });
}
