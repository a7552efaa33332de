using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The rules looking at a plan: they begin at once, and whoever asks for what they find helps with what is left.</summary>
internal sealed class RuleRun
{
    private readonly SharedWork work;
    private ImmutableArray<Finding> found;
    private int looked;

    public RuleRun(RuleContext context)
    {
        // rules are pure and each fills its own place; whoever looks by the last one puts all in order
        var byRule = new Finding[RuleCatalogue.All.Length][];
        work = SideBySide.Begin(byRule.Length, () => r =>
        {
            byRule[r] = [.. RuleCatalogue.All[r].Find(context)];
            if (Interlocked.Increment(ref looked) == byRule.Length)
            {
                var all = context.Plan.PlanningFindings.Concat(byRule.SelectMany(f => f)).Select(f => SmallestOptions.Of(f, context));
                found = FindingOrder.Sort(Waivers.Apply(context.Plan.Harness, FindingOrder.Once(all), context));
            }
        });
    }

    public bool IsDone => work.IsDone;

    /// <summary>Findings of planning and of the rules, waivers applied, worst consequence first; the same order on every run.</summary>
    public ImmutableArray<Finding> Findings
    {
        get
        {
            work.Finish();
            return found;
        }
    }
}
