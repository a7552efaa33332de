using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Holds a plan against every rule.</summary>
public static class HarnessChecker
{
    /// <summary>Findings of planning and of the rules, waivers applied, worst consequence first; the same order on every run.</summary>
    public static ImmutableArray<Finding> Check(Plan plan, RuleSettings settings)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new RuleRun(new(plan, settings)).Findings;
    }

    /// <summary>The plan with its findings, which the rules go on to look for, and with what they measure for the margins.</summary>
    public static CheckedPlan Checked(Plan plan, RuleSettings settings)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var context = new RuleContext(plan, settings);
        return new(plan, new RuleRun(context)) { Rules = context };
    }

    /// <summary>'27 A of 31.4 A': the figure that a rule holds against its limit, by the rule's own name for it; null when the plan has none of that name.</summary>
    public static string? MeasureOf(Plan plan, RuleSettings settings, string rule, string what)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var measured = RuleCatalogue.All.OfType<MeasuredRule>().FirstOrDefault(r => r.Info.Id == rule);
        return measured?.Measures(new(plan, settings)).Where(m => m.What == what).Select(m => $"{m.What} {Figure.Of(m.Value, m.Unit)}, {(m.AtLeast ? "at least" : "at most")} {Figure.Of(m.Limit, m.Unit)}").FirstOrDefault();
    }

    /// <summary>What passes, the closest to its limit first.</summary>
    public static ImmutableArray<Margin> Margins(Plan plan, RuleSettings settings, int atMost = 10)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Margins(new RuleContext(plan, settings), atMost);
    }

    /// <summary>What passes in a plan that was checked, the closest to its limit first.</summary>
    public static ImmutableArray<Margin> Margins(CheckedPlan planned, RuleSettings settings, int atMost = 10)
    {
        ArgumentNullException.ThrowIfNull(planned);
        return Margins(planned.Rules is { } known && known.Settings == settings && known.Plan == planned.Plan ? known : new(planned.Plan, settings), atMost);
    }

    private static ImmutableArray<Margin> Margins(RuleContext context, int atMost)
    {
        var passed = new List<Margin>();
        foreach (var rule in RuleCatalogue.All.OfType<MeasuredRule>())
        {
            foreach (var m in context.MeasuresOf(rule))
            {
                if (!m.Broken)
                {
                    passed.Add(new(rule.Info.Id, m.What, m.Value, m.Limit, m.Unit, m.Margin));
                }
            }
        }

        return
        [
            .. passed.OrderBy(m => Math.Round(m.Fraction, 9)).ThenBy(m => m.Rule, StringComparer.Ordinal).ThenBy(m => m.What, StringComparer.Ordinal)
                .Take(atMost),
        ];
    }
}
