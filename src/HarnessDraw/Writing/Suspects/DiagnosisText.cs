using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Writing.Suspects;

/// <summary>A diagnosis as text: suspects with reasons, groups that cannot be told apart, the next test with what each outcome means.</summary>
public static class DiagnosisText
{
    private const int MostShown = 5;
    private const int MostReasons = 6;
    private const double LeastShown = 0.01;

    // of what an outcome leaves, the rarest are not counted
    private const double LeastLeft = 0.02;

    public static string Of(Diagnosis diagnosis)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        var text = new StringBuilder();
        foreach (var remark in diagnosis.Remarks)
        {
            Line(text, remark);
        }

        if (!diagnosis.Groups.IsEmpty)
        {
            Line(text, Text($"{diagnosis.Tried} single faults tried in every state."));
            Suspects(text, diagnosis);
        }

        foreach (var pair in diagnosis.Pairs)
        {
            Line(text, $"two at once: {pair.First.Words}, and {pair.Second.Words}{(pair.Shared is { } shared ? $" (both at {shared})" : "")}");
        }

        if (diagnosis.Next is { } next)
        {
            text.Append('\n');
            Next(text, diagnosis.Bench, next);
        }
        else if (!diagnosis.Groups.IsEmpty)
        {
            text.Append('\n');
            Line(text, diagnosis.Groups[0].Group.Probability >= Troubleshooter.Sure ? "No further test is needed: look there, mend it, measure the same point again with the load on."
                : "No reading from outside tells more: unplug, look, and measure ohms at what is named first; then measure the same point again with the load on.");
        }

        if (!diagnosis.Groups.IsEmpty)
        {
            Line(text, "Measure with the load switched on and everything plugged in. CAUTION: never fit a larger fuse; battery off before you part a connector; do not pierce insulation.");
        }

        return text.ToString();
    }

    /// <summary>The test in one line: 'volts at firewall B1 (at pass-through) in state night: 12.2 V when all is well'.</summary>
    public static string Words(FaultBench bench, NextTest test)
    {
        ArgumentNullException.ThrowIfNull(bench);
        ArgumentNullException.ThrowIfNull(test);
        var state = bench.States[test.State].Id;
        var sound = bench.WithoutFault;
        return test.Kind switch
        {
            TestKind.Volts => Text($"volts at {bench.Points[test.Number].Called} ({bench.Points[test.Number].Where}) in state '{state}'; {sound.Volts[test.State][test.Number]:0.0} V when all is well"),
            TestKind.Lost => Text($"volts from the battery's live post to {bench.Points[test.Number].Called} ({bench.Points[test.Number].Where}) in state '{state}'; {sound.LiveV[test.State] - sound.Volts[test.State][test.Number]:0.00} V when all is well"),
            TestKind.Fuse => $"put a new fuse {bench.Plan.Fuses[test.Number].Id} of the same rating in and go through the states once: does it hold?",
            _ => $"look at {bench.Loads[test.Number].Name} in state '{state}'; it {(bench.ShouldWork[test.State][test.Number] ? "should work" : "should be off")}",
        };
    }

    private static void Suspects(StringBuilder text, Diagnosis diagnosis)
    {
        var number = 0;
        foreach (var group in diagnosis.Groups.Where((g, i) => i == 0 || g.Group.Probability >= LeastShown).Take(MostShown))
        {
            text.Append('\n');
            var alike = group.Group.Suspects;
            Line(text, Text($"{++number}. {Percent(group.Group.Probability)}  {alike[0].Fault.Words}, {alike[0].Fault.Where}"));
            if (alike.Length > 1)
            {
                Line(text, Text($"   cannot be told apart from it without unplugging or opening the wrap ({alike.Length - 1} more):"));
                foreach (var other in alike.Skip(1).Take(MostReasons))
                {
                    Line(text, $"     {other.Fault.Words}, {other.Fault.Where}");
                }
            }

            Reasons(text, "explains", group.Explains);
            Reasons(text, "does not explain", group.Unexplained);
        }

        var rest = 1 - diagnosis.Groups.Take(number).Sum(g => g.Group.Probability);
        if (rest > 0.005)
        {
            Line(text, Text($"   all others together {Percent(rest)}"));
        }
    }

    private static void Reasons(StringBuilder text, string words, ImmutableArray<string> reasons)
    {
        if (!reasons.IsEmpty)
        {
            Line(text, Text($"   {words}: {string.Join("; ", reasons.Take(MostReasons))}{(reasons.Length > MostReasons ? $"; {reasons.Length - MostReasons} more" : "")}"));
        }
    }

    private static void Next(StringBuilder text, FaultBench bench, NextTest next)
    {
        Line(text, Text($"NEXT TEST ({next.Minutes:0.#} min, {next.Bits:0.0} bits): {Words(bench, next)}"));
        foreach (var outcome in next.Outcomes.Where(o => o.Probability >= LeastShown).Take(MostShown))
        {
            var seen = outcome.Words.Length > 0 ? outcome.Words : Range(outcome);
            var likely = outcome.Leaves.Where((l, i) => i == 0 || l.Probability >= LeastLeft * outcome.Probability).ToList();
            Line(text, Text($"   {seen} ({Percent(outcome.Probability)}): then {string.Join("; or ", likely.Take(3).Select(l => l.Fault.Words))}{(likely.Count > 3 ? $"; or {likely.Count - 3} more" : "")}"));
        }
    }

    private static string Range(TestOutcome outcome) =>
        outcome.HighV - outcome.LowV < 0.1 ? Text($"about {Zero((outcome.LowV + outcome.HighV) / 2):0.0} V") : Text($"{Zero(outcome.LowV):0.0} to {Zero(outcome.HighV):0.0} V");

    private static double Zero(double volts) => Math.Abs(volts) < 0.05 ? 0 : volts;

    private static string Percent(double share) => share >= 0.995 ? "over 99 %" : share < 0.01 ? "under 1 %" : Text($"{share * 100:0} %");

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
