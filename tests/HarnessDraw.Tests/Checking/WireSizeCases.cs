using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

internal static class WireSizeCases
{
    public static IEnumerable<RuleCase> All =>
    [
        // 3 % of 12 V is 0.36 V: 12.5 - (12.18 - 0.05) = 0.37 V (ABYC E-11 as quoted)
        new("loop-drop", p => p.Volts("headlamp right.56b", 12.18), ["headlamp right (dipped) loses 0.37 V", "3 % of 12 V is 0.36 V", "Light about"], p => p),
        new("loop-drop", p => p.Volts("headlamp right.56b", 11.8), ["headlamp right (dipped) loses 0.75 V (6.25 %)"], p => p.Volts("headlamp right.56b", 12.3)),
        // a second element in series is load, not loss: 0.7 V of the 0.75 V lies across it
        new("loop-drop", p => Series(p, ElementKind.Contact), ["ignition coil (primary) loses 0.75 V"], p => Series(p, ElementKind.Sender)),
        new("charge-lead-drop", p => p.Wire("P03", w => w with { AreaMm2 = 4, SizeLabel = "4" }), ["at 55 A", "alternator B+ and main battery plus", "P03"], p => p),
        new("starter-loop-drop", p => p.Wire("P02", w => w with { AreaMm2 = 6, SizeLabel = "6", CutLengthMm = 1000 }), ["160 A from main battery plus to starter B", "P02 (starter cable), 6 mm²", "0.5 V is the most"], p => p),
        new("starter-loop-drop", p => p.Wire("G02", w => w with { AreaMm2 = 6, SizeLabel = "6", CutLengthMm = 1000 }), ["main battery minus to engine ground stud", "0.3 V is the most"], p => p),
        // 0.5 mm2 in an engine bay
        new("wire-too-thin", p => p.Wire("E03", w => w with { AreaMm2 = 0.35 }), ["E03 (coolant signal) is 0.35 mm²", "0.5 mm²"], p => p),
        new("outside-crimp-range", p => p.Wire("E01", w => w with { AreaMm2 = 4 }), ["firewall A2: 4 mm²", "takes 0.5 to 1 mm²"], p => p),
        new("insulation-unsupported", p => p.Wire("E01", w => w with { OutsideMm = 2.6 }), ["ignition coil 15", "2.6 mm over its insulation", "1.4 to 2.5 mm"], p => p.Wire("E01", w => w with { OutsideMm = 2.2 })),
        new("insulation-below-zone", p => p.Zone("engine", z => z with { AmbientC = 125 }), ["Thin-wall PVC (105 °C)", "at 125 °C", "E01"], p => p.Zone("engine", z => z with { AmbientC = 105 })),
        new("cross-linked-in-fuel", p => Fuel(p, true), ["E03 is cross-linked", "engine top to thermostat"], p => Fuel(p, false)),
        // 12.6 V behind 60 mohm with 160 A: 3 V are left of 12
        new("cranking-sag", p => p.Source("main battery", s => s with { InternalOhm = 0.06 }), ["ignition coil primary gets", "while starter turns and takes", "60 % of its volts is the least"], p => p.Source("main battery", s => s with { InternalOhm = 0.008 })),
        new("cross-linked-replaced", p => Replaced(p, false), ["ignition replaces XL (125 °C) by Thin-wall PVC (105 °C): E01"], p => Replaced(p, true)),
        // 3 % of 6 V is 0.18 V, of 24 V 0.72 V: 12.5 - (12.25 - 0.05) = 0.3 V
        new("loop-drop", p => Nominal(p, 6), ["headlamp right (dipped) loses 0.3 V", "3 % of 6 V is 0.18 V"], p => Nominal(p, 24)),
        // ASTM B258: 16 AWG is 1.31 mm2
        new("gauge-not-its-area", p => p.Wire("E01", w => w with { Awg = "16", AreaMm2 = 1.5 }), ["16 AWG is 1.31 mm²", "1.5 mm² (14.6 % apart)"], p => p.Wire("E01", w => w with { Awg = "16", AreaMm2 = 1.22 })),
        // vehicle 16 AWG holds 1.22 mm2: no metric size is the same
        new("size-not-in-catalogue", p => p.Wire("E01", w => w with { Awg = "16", SizeLabel = "16 AWG", AreaMm2 = 1.22 }), ["E01 (ignition): 16 AWG, which is 1.22 mm², is given", "the nearest it has: 1 mm² and"], p => p.Wire("E01", w => w with { AreaMm2 = 1 })),
        new("size-not-in-catalogue", p => p.Wire("G01", w => w with { SizeLabel = "36", AreaMm2 = 36 }), ["G01 (battery ground): 36 mm² is given", "and 50 mm²"], p => p),
        new("pair-sizes-differ", p => p.Wire("F03", w => w with { AreaMm2 = 1.5, SizeLabel = "1.5" }), ["headlamp left and headlamp right are a pair on wires of two sizes", "F02 (dipped beam) 1 mm²", "F03 (dipped beam) 1.5 mm²"], p => p),
        new("pair-sizes-differ", p => p.Wire("F14", w => w with { AreaMm2 = 3, SizeLabel = "3" }), ["F13 (headlamp left return) 2 mm²"], p => p.Wire("F14", w => w with { AreaMm2 = 3, SizeLabel = "3" }).Wire("F13", w => w with { AreaMm2 = 3, SizeLabel = "3" })),
        new("pair-sizes-differ", p => Alike(p).Wire("F03", w => w with { AreaMm2 = 1.5, SizeLabel = "1.5" }), ["sized alike", "the size of F02 (dipped beam) is given"], Alike),
        new("parallel-wires", p => p.AddWire("P04", w => w with { Id = "P14", To = w.To with { Pin = "A6" } }), ["P04 (cabin feed) and P14 (cabin feed) run in parallel from F1 to firewall"], p => p),
    ];

    private static Plan Alike(Plan p) => p.Harness(h => h with { SizedAlike = [new(["headlamp left", "headlamp right"], false, null)] });

    private static Plan Series(Plan p, ElementKind kind) => p.Thing("gauges", t => t with { Side = Side.Bay, Pins = [.. t.Pins, new("2", PinStyle.Blade, "6.3")], Elements = [new("module", kind, "1", "2")] })
        .Wire("E02", w => w with { To = new("gauges", "1") }).Volts("ignition coil.15", 12.45).Volts("ignition coil.1", 0.7).Volts("gauges.1", 0.7).Volts("gauges.2", 0);

    private static Plan Replaced(Plan p, bool byItsOwn) => p.Circuit("ignition", c => c with { ReplacesWireType = "xl" })
        .Harness(h => h with { Catalogue = h.Catalogue with { WireTypes = [.. h.Catalogue.WireTypes, h.Catalogue.WireTypes[0] with { Id = "xl", Title = "XL", MaxC = 125, CrossLinked = true }] } })
        .Wire("E01", w => byItsOwn ? w with { WireType = "xl" } : w);

    private static Plan Nominal(Plan p, double volts) => p.Circuit("dipped beam", c => c with { NominalV = volts }).Source("main battery", s => s with { NominalV = volts });

    private static Plan Fuel(Plan p, bool crossLinked) => p.Zone("engine", z => z with { Exposure = Exposure.Fuel })
        .Harness(h => h with { Catalogue = h.Catalogue with { WireTypes = [.. h.Catalogue.WireTypes, h.Catalogue.WireTypes[0] with { Id = "xl", CrossLinked = crossLinked }] } }).Wire("E03", w => w with { WireType = "xl" });
}
