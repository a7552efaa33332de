using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Gives a finding the smallest option set that causes it.</summary>
internal static class SmallestOptions
{
    /// <summary>
    /// A finding that speaks of wires or circuits of one condition alone is of that condition, whether its rule says so or not; then what the option rules bring
    /// about by themselves is left out.
    /// </summary>
    public static Finding Of(Finding finding, RuleContext context)
    {
        if (context.Harness.Options.IsEmpty)
        {
            return finding;
        }

        var named = finding.Builds.IsAlways ? finding.Where.Select(w => ConditionOf(context, w)).OfType<BuildCondition>().DistinctBy(c => c.ToString(), StringComparer.Ordinal).ToList() : [];
        return finding with { Builds = context.Builds.Smallest(named.Count == 1 ? named[0] : finding.Builds) };
    }

    private static BuildCondition? ConditionOf(RuleContext context, string id) => context.Wire(id)?.Builds ?? context.Circuit(id)?.OnlyWith;
}
