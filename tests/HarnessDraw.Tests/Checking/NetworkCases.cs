using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>Networks that cannot be solved into anything useful, and parts of them that work against one another.</summary>
internal static class NetworkCases
{
    public static IEnumerable<RuleCase> All =>
    [
        new("no-source", p => p.Harness(h => h with { Power = h.Power with { Sources = [] } }), ["No battery, alternator or converter feeds the", "none is described"], p => p),
        new("dead-short", p => Shorted(p, 2000), ["In 'night' 'horn' joins the live pole to ground at horn with no load between: a dead short behind fuse F10"], p => Shorted(p, 20)),
        new("floating-net", p => Lost(p, new("probe", "1")), ["F20 (horn) hangs on nothing: from probe 1 on"], p => Lost(p, new("horn", "1"))),
        new("no-length-left", p => p.Wire("F07", w => w with { CutLengthMm = Stripped(w) }), ["F07 (horn) is cut", "no wire is left"], p => p.Wire("F07", w => w with { CutLengthMm = Stripped(w) + 1 })),
        new("never-on", p => Running(p, KeyPosition.Start), ["horn is on in none of the states"], p => Running(p, KeyPosition.Run)),
        // the relay of the fan has no volts over its coil: both ends stand at the battery's
        new("on-but-dead", p => Coil(p, groundV: 12.4), ["fan relay and fan are on in", "but draw nothing: the path stops at probe 1"], p => Coil(p, groundV: 0)),
        new("on-but-dead", p => p.Volts("headlamp right.56b", 0.05), ["headlamp right is on in 'night' but draws nothing: the path stops at headlamp right 56b"], p => p.Volts("headlamp right.56b", 0.8)),
        new("jumper-beside-wire", p => Jumper(p, "horn"), ["F20 (horn) joins fan relay 86 and fan relay x beside F09 (fan trigger)"], p => Jumper(p, "fan trigger")),
        new("ammeter-below-output", p => Ammeter(p, 54), ["alternator gives 55 A through ammeter, which is made for 54 A", "more than the alternator gives"], p => Ammeter(p, 55)),
        new("sender-by-its-thread", p => Sender(p, null), ["coolant sender: grounded by the thread alone"], p => Sender(p, "threads bare, measured to the battery")),
    ];

    private static Plan Coil(Plan p, double groundV) => p.NoWire("F10").AddWire("F09", w => w with { Id = "F10", Circuit = "fan trigger", From = new("fan relay", "85"), To = new("probe", "1") })
        .Volts("fan relay.86", 12.4).Volts("fan relay.85", groundV).Volts("fan relay.30", 12.4).Volts("fan relay.87", groundV > 0 ? 0 : 12.3).Volts("fan.1", groundV > 0 ? 0 : 12.2).Volts("fan.2", 0);

    internal static Plan Shorted(Plan p, double amps) => p.Wire("F07", w => w with { ProtectedBy = ["F10"], Worst = new("night", amps, 1, 60) }).Wire("F08", w => w with { Worst = new("night", amps, 1, 60) });

    private static double Stripped(Wire wire) => wire.From.StripMm!.Value + wire.To.StripMm!.Value;

    private static Plan Lost(Plan p, WireEnd from) => p.AddWire("F07", w => w with { Id = "F20", From = from, To = new("second probe", "1") });

    private static Plan Running(Plan p, KeyPosition hornFrom) => p.Circuit("horn", c => c with { LiveWith = hornFrom })
        .Harness(h => h with { States = [new("all", KeyPosition.Run, EngineState.Running, [.. h.Circuits.Select(c => c.Id)], null)] }).Circuit("starter solenoid", c => c with { LiveWith = KeyPosition.Run });

    private static Plan Jumper(Plan p, string circuit) => p.AddWire("F07", w => w with { Id = "F20", Circuit = circuit, From = new("fan relay", "86"), To = new("fan relay", "x") });

    private static Plan Ammeter(Plan p, double ratedA) => p
        .Harness(h => h with { Things = [.. h.Things, h.ThingOf("horn") with { Id = "ammeter", Kind = ThingKind.Switch, Elements = [new("scale", ElementKind.Contact, "1", "2") { RatedA = ratedA }] }] })
        .AddWire("P03", w => w with { Id = "P09", From = new("ammeter", "2") }).Wire("P03", w => w with { To = new("ammeter", "1") });

    private static Plan Sender(Plan p, string? note) => p.Thing("coolant sender", t => t with { Note = note, Elements = [new("sender", ElementKind.Sender, "1", null) { ResistanceOhm = 100 }] });
}
