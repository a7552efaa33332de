using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

internal static class FusingCases
{
    public static IEnumerable<RuleCase> All =>
    [
        // ABYC E-11 as quoted: 7 in (180 mm) from the battery
        new("unfused-too-long", p => p.Circuit("battery feed", c => c with { UnfusedBecause = null }).Wire("P01", w => w with { PathLengthMm = 190 }), ["190 mm from main battery plus", "P01", "180 mm"],
            p => p.Circuit("battery feed", c => c with { UnfusedBecause = null }).Wire("P01", w => w with { PathLengthMm = 180 })),
        // 40 in (1000 mm) from a junction when sheathed
        new("unfused-too-long", p => p.AddWire("P05", w => w with { Id = "P09", From = new("bus bar", "2"), To = new("F3", "in"), PathLengthMm = 1010 }), ["1010 mm from bus bar 1", "P09", "1000 mm"],
            p => p.AddWire("P05", w => w with { Id = "P09", From = new("bus bar", "2"), To = new("F3", "in"), PathLengthMm = 990 })),
        new("unfused-too-long", p => p.AddWire("P05", w => w with { Id = "P09", From = new("bus bar", "2"), To = new("F3", "in"), PathLengthMm = 620 }).Segment("S4", s => s with { Covering = null }), ["620 mm", "Sheath the lead all the way"],
            p => p.AddWire("P05", w => w with { Id = "P09", From = new("bus bar", "2"), To = new("F3", "in"), PathLengthMm = 620 })),
        new("sources-joined-unfused", p => SecondBattery(p, "starter.B"), ["main battery plus and second battery plus", "without any fuse"], p => p),
        new("sources-joined-unfused", p => SecondBattery(p, "F2.out"), ["one fuse only (F2)"], p => p),
        new("fuse-above-wire", p => p.Wire("P01", w => w with { AmpacityA = 70 }), ["F2 (80 A) is fed by", "P01 (battery feed)", "no fuse protects", "70 A"], p => p.Wire("P01", w => w with { AmpacityA = 80 })),
        new("fuse-above-wire", p => p.Wire("F02", w => w with { AmpacityA = 14 }), ["F7 (15 A)", "F02 (dipped beam)", "14 A"], p => p.Wire("F02", w => w with { AmpacityA = 15 })),
        // 1.35 x 11 A = 14.85 A
        new("fuse-above-contact", p => WeakContact(p, 11), ["F7 (15 A)", "11 A contact at firewall B2", "14.9 A"], p => WeakContact(p, 11.2)),
        // ten times 0.9 A is 9 A
        new("fuse-far-above-load", p => Oversized(p, 0.9), ["Fuse F7 is 15 A for 0.9 A, 17 times its load", "F02 (dipped beam)"], p => Oversized(p, 1.5)),
        // 80 % of 15 A is 12 A
        new("fuse-load-high", p => Lamps(p, 6.1), ["F7: 12.2 A continuous on 15 A is 81.3 %"], p => Lamps(p, 6)),
        // 70 % of 25 A is 17.5 A where the fuse sits at 85 degC
        new("fuse-load-high", p => HotFuse(p, 17.6), ["F3: 17.6 A", "more than 70 %"], p => HotFuse(p, 17.4)),
        new("fuse-overloaded", p => p.Element("fan", "motor", e => e with { CurrentA = 26 }).Circuit("fan", c => c with { }), ["fan draws 26 A on the 25 A fuse F3"], p => p.Element("fan", "motor", e => e with { CurrentA = 25 })),
        new("fuse-state-sum", p => p.Fuse("F9", f => f with { LoadA = 8.1 }), ["F9 carries 8.1 A of 10 A (81 %)"], p => p.Fuse("F9", f => f with { LoadA = 8 })),
        new("fuse-state-sum", p => p.Fuse("F9", f => f with { LoadA = 10.5 }), ["105 %", "opens when all of it is on"], p => p.Fuse("F9", f => f with { LoadA = 8 })),
        // ISO 8820 as reprinted: 350 % opens within half a second, 200 % within five
        new("short-will-not-open-fuse", p => p.Wire("F03", w => w with { CutLengthMm = 12_000 }), ["F03", "times the 15 A fuse F7", "takes seconds"], p => p.Wire("F03", w => w with { CutLengthMm = 2_000 })),
        new("short-will-not-open-fuse", p => p.Wire("F03", w => w with { CutLengthMm = 25_000 }), ["may never open"], p => p.Wire("F03", w => w with { CutLengthMm = 2_000 })),
        new("short-burns-wire", p => p.Fuse("F2", f => f with { RatingA = 100 }).Wire("P03", w => w with { AreaMm2 = 2.5, SizeLabel = "2.5" }), ["P03", "2.5 mm²", "A²s", "fuse F2"], p => p.Fuse("F2", f => f with { RatingA = 100 })),
        new("fuses-not-selective", p => p.Wire("F01", w => w with { ProtectedBy = ["F7", "F1"] }).Fuse("F1", f => f with { RatingA = 25 }), ["F1 (25 A)", "F7 (15 A)", "30 A or more"], p => p.Wire("F01", w => w with { ProtectedBy = ["F7", "F1"] }).Fuse("F1", f => f with { RatingA = 30 })),
        // 1.2 x 55 A = 66 A
        new("alternator-fuse-small", p => p.Fuse("F2", f => f with { RatingA = 60 }), ["alternator gives 55 A", "F2 is 60 A (109 %)"], p => p.Fuse("F2", f => f with { RatingA = 66 })),
        new("alternator-fuse-small", p => p.Fuse("F2", f => f with { RatingA = 40 }), ["opens at full charge"], p => p),
        new("fusible-link-in-cabin", p => p.Protection("F8", f => f with { Kind = ProtectionKind.FusibleLink }), ["F8 sits in the cabin"], p => p.Protection("F3", f => f with { Kind = ProtectionKind.FusibleLink })),
        // four gauge numbers by ASTM B258 are a factor of 2.53 in area: 1.22 mm2 for 3 mm2
        new("fusible-link-size", p => Link(p, 3, 150), ["Link F3 of 3 mm² is 0 gauge numbers thinner than F11", "the wire burns before the link melts"], p => Link(p, 1.22, 150)),
        new("fusible-link-size", p => Link(p, 1.22, 300), ["Link F3 is 300 mm long; about 150 mm is right"], p => Link(p, 1.22, 200)),
        new("no-such-fuse-rating", p => Volts(p, 48), ["Fuse F7 is a blade fuse for 32 V and stands in a 48 V circuit"], p => Volts(p, 24)),
        // ISO 8820-3 ratings
        new("no-such-fuse-rating", p => p.Fuse("F7", f => f with { RatingA = 18 }), ["no 18 A blade fuse", "15 A and 20 A"], p => p.Fuse("F7", f => f with { RatingA = 7.5 })),
        new("shared-lamp-fuse", p => p, ["F7 open means no dipped beam", "headlamp left and headlamp right"], p => p.Circuit("dipped beam", c => c with { Feeds = c.Feeds[..1] }).Circuit("main beam", c => c with { Feeds = c.Feeds[1..] })),
        // the fuse is known from the planned wires where the description names none
        new("shared-lamp-fuse", p => p.Circuit("dipped beam", c => c with { ProtectedBy = [] }), ["F7 open means no dipped beam"], p => p.Circuit("dipped beam", c => c with { Feeds = c.Feeds[..1] }).Circuit("main beam", c => c with { Feeds = c.Feeds[1..] })),
        // without a mark the name tells the side
        new("shared-lamp-fuse", p => p.Thing("headlamp left", t => t with { SideMark = null }).Thing("headlamp right", t => t with { SideMark = null }), ["F7 open means no dipped beam"], p => p.Circuit("dipped beam", c => c with { Feeds = c.Feeds[..1] }).Circuit("main beam", c => c with { Feeds = c.Feeds[1..] })),
        new("critical-with-nuisance", p => p.Circuit("horn", c => c with { ProtectedBy = ["F9"] }), ["ignition shares fuse F9 with horn (5 A)"], p => p.Circuit("horn", c => c with { ProtectedBy = ["F9"] }).Element("horn", "horn", e => e with { CurrentA = 0.9 })),
        new("instruments-with-motor", p => OnF9(p, "fan"), ["coolant signal shares fuse F9 with fan (11 A)", "takes the gauges with it"], p => OnF9(p, "dipped beam")),
        new("unfused-lead-unguarded", p => p.Segment("S12", s => s with { Covering = null }), ["P02 (starter cable)", "S12 (battery tray to starter)"], p => p.Segment("S11", s => s with { Covering = null })),
        // ISO 8820-3 as reprinted: a blade fuse may open after 0.15 s at 200 %
        new("inrush-opens-fuse", p => p.Element("fan", "motor", e => e with { PeakA = 51 }), ["fan pulls 51 A", "25 A fuse F3", "above 50 A"], p => p.Element("fan", "motor", e => e with { PeakA = 50 })),
        new("wire-overloaded", p => p.Wire("F11", w => w with { Worst = new("night", 32, 0.1, 90) }), ["F11 (fan) carries 32 A in 'night'", "31.4 A"], p => p.Wire("F11", w => w with { Worst = new("night", 31, 0.1, 90) })),
        new("return-overloaded", p => p.Wire("F12", w => w with { Worst = new("night", 32, 0.1, 90) }), ["Return wire F12 (fan return) carries 32 A"], p => p.Wire("F12", w => w with { Worst = new("night", 31, 0.1, 90) })),
    ];

    // F7, on the same panel and with the same key, feeds lamps alone
    private static Plan OnF9(Plan p, string circuit) =>
        p.Circuit("coolant signal", c => c with { LiveWith = KeyPosition.Run }).Circuit("dipped beam", c => c with { LiveWith = KeyPosition.Run }).Circuit(circuit, c => c with { ProtectedBy = ["F9"] });

    private static Plan Oversized(Plan p, double loadA) => p.Fuse("F7", f => f with { LoadA = loadA }).Wire("F02", w => w with { DecidedBy = "protection" });

    private static Plan Lamps(Plan p, double amps) =>
        p.Element("headlamp left", "dipped", e => e with { CurrentA = amps }).Element("headlamp right", "dipped", e => e with { CurrentA = amps }).Fuse("F7", f => f with { LoadA = 2 * amps });

    private static Plan Link(Plan p, double areaMm2, double lengthMm) => p.Protection("F3", f => f with { Kind = ProtectionKind.FusibleLink, LinkAreaMm2 = areaMm2, LinkLengthMm = lengthMm });

    private static Plan Volts(Plan p, double volts) => p.Circuit("dipped beam", c => c with { NominalV = volts }).Harness(h => h with { Catalogue = h.Catalogue with { Fuses = [.. h.Catalogue.Fuses.Select(f => f with { MaxV = 32 })] } });

    private static Plan HotFuse(Plan p, double amps) =>
        p.Thing("F3", t => t with { Place = "engine top" }).Harness(h => h with { Layout = h.Layout with { Places = [.. h.Layout.Places.Select(x => x.Id == "engine top" ? x with { Zone = "engine" } : x)] } })
            .Harness(h => h with { States = [.. h.States.Select(s => s with { On = [.. s.On, "fan"] })] })
            .Element("fan", "motor", e => e with { CurrentA = amps }).Fuse("F3", f => f with { LoadA = amps });

    private static Plan WeakContact(Plan p, double amps) => p.Harness(h => h with
    {
        Catalogue = h.Catalogue with { Terminals = [.. h.Catalogue.Terminals.Select(t => t.Id == "bulkhead-2.8-l" ? t with { CurrentA = amps } : t)] },
    });

    private static Plan SecondBattery(Plan p, string joinedTo)
    {
        var dot = joinedTo.LastIndexOf('.');
        return p.Harness(h => h with
        {
            Power = h.Power with { Sources = [.. h.Power.Sources, new() { Id = "second battery", Kind = SourceKind.Battery, NominalV = 12 }] },
            Things = [.. h.Things, h.ThingOf("main battery") with { Id = "second battery" }],
        }).AddWire("P02", w => w with { Id = "P08", From = new("second battery", "plus"), To = new(joinedTo[..dot], joinedTo[(dot + 1)..]) });
    }
}
