using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

internal static class ParticularCases
{
    public static IEnumerable<RuleCase> All =>
    [
        new("ignition-off-while-turning", p => States(p, "ignition", "night"), ["ignition coil is off in 'cranking'", "ignition is named in 'night', and a circuit that any state names is off in all others"], p => States(p, "ignition")),
        new("one-side-named", p => TurnLamps(p, "turn left"), ["turn right is named in no state", "turn left is on in 'night' only"], p => TurnLamps(p, "turn left", "turn right")),
        new("trigger-feeds-load", p => p.Circuit("fan trigger", c => c with { Feeds = [new("fan", "1")] }), ["fan trigger is a trigger", "fan (11 A)"], p => p),
        // 80 % of 13 A is 10.4 A, the fan draws 11 A
        new("relay-contact-overloaded", p => p.Element("fan relay", "contact", e => e with { RatedA = 13 }), ["fan relay switches 11 A (fan) with a 13 A contact", "10.4 A"], p => p.Element("fan relay", "contact", e => e with { RatedA = 14 })),
        new("coil-above-contact", p => Rated(p, 4), ["contact of ignition switch is rated 4 A", "4.17 A"], p => Rated(p, 4.2)),
        new("diode-reversed", p => Diode(p, "86", "85"), ["fan relay: its diode conducts from 86 to 85"], p => Diode(p, "85", "86")),
        new("diode-reversed", p => Positive(Diode(p, "85", "86")), ["positive ground: dead short"], p => Positive(Diode(p, "86", "85"))),
        new("positive-ground-alternator", Positive, ["alternator is an alternator"], p => p),
        // a dynamo has no diodes, whatever it is called
        new("positive-ground-alternator", Positive, ["its diodes short the battery"], p => Positive(p).Harness(h => h with { Power = h.Power with { Sources = [.. h.Power.Sources.Select(s => s with { IsDynamo = s.Kind == SourceKind.Alternator })] } })),
        new("exciter-run-on", p => p.Circuit("exciter", c => c with { From = new("ignition switch", "15") }), ["exciter joins alternator to ignition switch 15"], p => p),
        // 12 V squared over 0.9 W is 160 ohm, over 1.2 W 120 ohm
        new("exciter-current-low", p => Lamp(p, 0.9), ["charge lamp puts 160 Ω in exciter", "150 Ω"], p => Lamp(p, 1.2)),
        new("one-wire-keeps-exciter", p => p.Circuit("exciter", c => c with { OnlyWith = BuildCondition.Always }), ["With charging=single wire the exciter wire"], p => p),
        new("live-end-unguarded", p => Fed(p, "F1.out"), ["E01 (ignition) at ignition coil 15: always live on a bare blade"], p => Fed(p, "F1.out").Wire("E01", w => w with { To = w.To with { ThreadOnFirst = ["boot"] } })),
        // through a switch it is not always live
        new("live-end-unguarded", p => Fed(p, "F1.out"), ["E01"], p => p.Circuit("ignition", c => c with { LiveWith = KeyPosition.Off }).Harness(h => h with { States = [] })),
        new("key-off-drain", p => Drain(p, 0.06), ["Key-off drain 60 mA", "20.8 days"], p => Drain(p, 0.05)),
        new("green-yellow-used", p => p.Wire("F07", w => w with { Colour = "GN/YE" }), ["F07 (horn) is GN/YE"], p => p.Wire("F07", w => w with { Colour = "GN/WH" })),
        new("coil-unsuppressed", p => p.Thing("fan relay", t => t with { Suppression = "none" }), ["fan relay has nothing across its coil of 0.17 A"], p => p.Thing("fan relay", t => t with { Suppression = "resistor" })),
        // 5 % of 12 V is 0.6 V: 12.5 - (11.8 - 0.05) = 0.75 V
        new("headlamps-through-switch", p => Through(p, "ignition switch").Volts("headlamp right.56b", 11.8), ["dipped beam passes ignition switch and no relay: headlamp right loses 0.75 V (6.25 %)", "0.6 V is a good loop"], p => Through(p, "ignition switch")),
        new("headlamps-through-switch", p => Through(p, "ignition switch").Volts("headlamp right.56b", 11.8), ["dipped beam"], p => Through(p, "fan relay").Volts("headlamp right.56b", 11.8)),
        new("signal-beside-charge-lead", p => Tach(p, 360), ["runs 360 mm in one bundle with P03 (charge lead)"], p => Tach(p, 290)),
    ];

    internal static Plan Fed(Plan p, string from) => p.Circuit("ignition", c => c with { LiveWith = KeyPosition.Off })
        .Harness(h => h with { Kept = [.. h.Kept, new() { Connector = "firewall", Cavity = "A2", ComesFrom = from }], States = [.. h.States.Select(s => s with { On = s.On.Remove("ignition") })] });

    // the circuit named in just these states
    private static Plan States(Plan p, string circuit, params string[] named) =>
        p.Harness(h => h with { States = [.. h.States.Select(s => s with { On = [.. s.On.Where(c => c != circuit), .. named.Contains(s.Id) ? new[] { circuit } : []] })] });

    private static Plan TurnLamps(Plan p, params string[] named) => p.Harness(h => h with
    {
        Circuits = [.. h.Circuits, new Circuit { Id = "turn left", Duty = Duty.Intermittent }, new Circuit { Id = "turn right", Duty = Duty.Intermittent }],
        States = [.. h.States.Select(s => s.Id == "night" ? s with { On = [.. s.On, .. named] } : s)],
    });

    private static Plan Through(Plan p, string passed) => p.Harness(h => h with { Kept = [.. h.Kept.Where(k => k.Cavity != "B2"), new() { Connector = "firewall", Cavity = "B2", ComesFrom = "F1", Through = [passed] }] });

    private static Plan Rated(Plan p, double amps) => p.Element("ignition switch", "run", e => e with { RatedA = amps });

    private static Plan Diode(Plan p, string a, string b) => p.Thing("fan relay", t => t with { Elements = [.. t.Elements, new("diode", ElementKind.Diode, a, b)] });

    private static Plan Positive(Plan p) => p.Harness(h => h with { Power = h.Power with { Ground = GroundPolarity.Positive } });

    private static Plan Lamp(Plan p, double watts) => p.Thing("charge lamp", t => t with { Elements = [new("lamp", ElementKind.Lamp, "1", "2") { PowerW = watts }] });

    private static Plan Drain(Plan p, double amps) => p.Thing("gauges", t => t with { Elements = [new("clock", ElementKind.Electronic, "1", null) { CurrentA = amps }] })
        .Harness(h => h with { Circuits = [.. h.Circuits, new() { Id = "clock", From = new("F7", "out"), Feeds = [new("gauges", "1")], LiveWith = KeyPosition.Off }] });

    private static Plan Tach(Plan p, double shared) => p.Harness(h => h with { Circuits = [.. h.Circuits, new() { Id = "tachometer", Duty = Duty.Signal }] }).Wire("E03", w => w with { Circuit = "tachometer", Segments = ["S9", "S10"] }).Segment("S9", s => s with { LengthMm = shared });
}
