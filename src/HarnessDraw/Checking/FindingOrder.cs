using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The order findings are told in: fire first, untidiness last; within one consequence errors first.</summary>
internal static class FindingOrder
{
    public static ImmutableArray<Finding> Sort(IEnumerable<Finding> findings) =>
    [
        .. findings
            .OrderBy(f => f.WaivedBy is not null)
            .ThenBy(f => RuleCatalogue.Info(f.Rule)?.Consequence ?? Consequence.DoesNotWork)
            .ThenByDescending(f => f.Severity)
            .ThenBy(f => f.Rule, StringComparer.Ordinal)
            .ThenBy(f => string.Join('|', f.Where), StringComparer.Ordinal)
            .ThenBy(f => f.Message, StringComparer.Ordinal),
    ];

    /// <summary>The same words about the same objects are said once.</summary>
    public static IEnumerable<Finding> Once(IEnumerable<Finding> findings) => findings.DistinctBy(f => (f.Rule, f.Message, string.Join('|', f.Where)));
}
