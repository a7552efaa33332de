using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

internal static class IdentityCases
{
    public static IEnumerable<RuleCase> All =>
    [
        new("id-not-spreadsheet-safe", p => p.Wire("E05", w => w with { Id = "7E05" }), ["'7E05' will turn into a number", "Use W705"], p => p.Wire("E05", w => w with { Id = "W705" })),
        new("id-not-spreadsheet-safe", p => p.Wire("E05", w => w with { Id = "MAR2" }), ["'MAR2' will turn into a date"], p => p.Wire("E05", w => w with { Id = "MA2" })),
        // more than 3 % and more than 15 mm
        new("measurements-disagree", p => Again(p, 620, 640), ["620 mm and 640 mm", "20 mm apart"], p => Again(p, 620, 635)),
        new("measurements-disagree", p => Again(p, 400, 420), ["400 mm and 420 mm"], p => Again(p, 1000, 1030)),
        new("estimated-lengths", p => p.Wire("P02", w => w with { Estimated = true }).Segment("S12", s => s with { Estimated = true }), ["1 wire depends", "battery tray to starter", "P02"], p => p),
        new("lengths-unknown", p => p.Wire("P02", w => w with { CutLengthMm = null }), ["1 wire length is still unknown (P02)"], p => p),
        new("open-questions", p => p.Harness(h => h with { OpenQuestions = [new("length of battery tray to starter", null)] }), ["1 value still unknown: length of battery tray"], p => p),
        new("load-not-connected", p => p.NoWire("F03"), ["headlamp right 56b"], p => p),
        new("load-not-connected", p => p.NoWire("F07"), ["horn is listed but no wire feeds it"], p => p),
        new("wire-ends-on-itself", p => p.Wire("F07", w => w with { To = w.From }), ["F07 (horn) starts and ends at firewall B1"], p => p),
        // 12 V over 3 ohm is 4 A
        new("power-figures-disagree", p => p.Element("ignition coil", "primary", e => e with { ResistanceOhm = 2.5 }), ["the current gives 4 A and 2.5 Ω gives 4.8 A"], p => p.Element("ignition coil", "primary", e => e with { ResistanceOhm = 2.7 })),
        new("nominal-volts-differ", p => p.Element("fan relay", "coil", e => e with { NominalV = 12 }).Circuit("fan trigger", c => c with { NominalV = 24 }), ["made for 12 V", "24 V circuit: 4 times the heat"], p => p.Element("fan relay", "coil", e => e with { NominalV = 13.8 })),
        new("options-contradict", p => Never(p, "exciter", "single wire"), ["No build is possible"], p => p),
        new("dead-choice", p => Never(p, "single wire"), ["charging=single wire is in none of the"], p => p),
        new("never-built", p => p.Circuit("exciter", c => c with { OnlyWith = new([new("charging", ["dynamo"])]) }), ["exciter is built only with charging=dynamo"], p => p),
        new("not-fitted-no-fate", p => p.Circuit("exciter", c => c with { WhenNotFitted = null }), ["Without charging=exciter", "firewall A5"], p => p),
    ];

    private static Plan Never(Plan p, params string[] choices) => p.Harness(h => h with { OptionRules = [.. choices.Select(c => new OptionRule("charging", c, false, "charging", c, null))] });

    private static Plan Again(Plan p, double a, double b) => p.Path("left wing rear - left wing front", x => x with { LengthMm = a, AgainMm = b });
}
