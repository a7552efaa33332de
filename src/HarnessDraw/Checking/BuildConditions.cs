using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Checking;

/// <summary>Option sets put together.</summary>
internal static class BuildConditions
{
    /// <summary>Builds in which both hold, as the smallest set of options that says so.</summary>
    public static BuildCondition And(this BuildCondition a, BuildCondition b)
    {
        if (a.IsAlways)
        {
            return b;
        }

        var merged = a.AllOf.Concat(b.AllOf)
            .GroupBy(c => c.Option, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new OptionChoice(g.Key, g.Select(c => c.Choices).Aggregate((x, y) => [.. x.Intersect(y, StringComparer.Ordinal)])));
        return new(merged.ToImmutableArray());
    }

    /// <summary>'Only with charging=exciter: ' or nothing.</summary>
    public static string Only(this BuildCondition condition) => condition.IsAlways ? "" : $"Only with {condition}: ";
}
