using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

internal static class GroundingCases
{
    public static IEnumerable<RuleCase> All =>
    [
        new("no-return", p => p.NoWire("F13"), ["headlamp left has no return", "headlamp left 31"], p => p),
        new("no-return", p => p.Harness(h => h with { Power = h.Power with { Returns = ReturnPath.Wire } }).Element("horn", "horn", e => e with { PinB = null }), ["horn grounds itself"], p => p.Element("horn", "horn", e => e with { PinB = null })),
        new("return-through-non-metal", p => Surface(p, false), ["ground left is bolted to wing, which is glass fibre", "F13"], p => Surface(p, true)),
        new("battery-not-bonded", p => p.NoWire("G01"), ["main battery minus reaches no ground point"], p => p),
        new("strap-small", p => p.Wire("G01", w => w with { AreaMm2 = 16 }), ["P02 (starter cable), 50 mm², returns by G01 (battery ground) of 16 mm²"], p => p),
        new("ground-crowded", p => ConnectorCases.Rings(p, "ground left", "stud", 3), ["ground left takes 5 rings", "17.2 A"], p => ConnectorCases.Rings(p, "ground left", "stud", 2)),
        new("sender-shares-return", p => Shared(p, 1.1), ["coolant sender returns through SP9", "F13 (headlamp left return) 1.1 A"], p => Shared(p, 0.9)),
        new("screen-not-grounded", p => Screen(p, null), ["The screen of C1 (coolant signal) is grounded at neither end"], p => Screen(p, new("control unit", "5"))),
        new("ground-finish-missing", p => p.Thing("ground left", t => t with { Note = null }), ["ground left: nothing said about paint"], p => p),
    ];

    private static Plan Surface(Plan p, bool conducts) => p.Thing("ground left", t => t with { Surface = "wing" }).Harness(h => h with { Layout = h.Layout with { Surfaces = [new("wing", "glass fibre", conducts)] } });

    private static Plan Shared(Plan p, double amps)
    {
        var with = p.Wire("F13", w => w with { To = new("SP9", null) { IsSplice = true }, Worst = new("night", amps, 0, 60) }).Circuit("headlamp left return", c => c)
            .AddWire("E03", w => w with { Id = "E13", Circuit = "ignition return", From = new("coolant sender", "2"), To = new("SP9", null) { IsSplice = true } });
        return with with { Splices = [.. with.Splices, new() { Id = "SP9", Circuit = "headlamp left return", Net = "r", Segment = "S2", AtMm = 200, StationMm = 380, Wires = ["F13", "E13"] }] };
    }

    private static Plan Screen(Plan p, PinRef? at) => p.Circuit("coolant signal", c => c with { Cable = new("C1", null, true, at) });
}
