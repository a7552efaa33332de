using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>Small letters that stand for option conditions in a table, explained once on the sheet.</summary>
internal sealed class OptionKeys
{
    private readonly ImmutableArray<string> conditions;

    public OptionKeys(IEnumerable<BuildCondition> used) =>
        conditions = [.. used.Where(c => !c.IsAlways).Select(InWords).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>'cooling: electric fan or none' as a person says it; conditions of several options with 'and' between.</summary>
    public static string InWords(BuildCondition condition) =>
        string.Join(" and ", condition.AllOf.Select(c => c.Words));

    public bool IsEmpty => conditions.IsEmpty;

    /// <summary>'a', 'b', ... 'aa'; the empty text for what is always built.</summary>
    public string KeyOf(BuildCondition condition) => condition.IsAlways ? "" : Letter(conditions.IndexOf(InWords(condition)));

    /// <summary>'a only with cooling: electric fan'.</summary>
    public IEnumerable<string> Explained => conditions.Select((c, i) => $"{Letter(i)} only with {c}");

    /// <summary>Only the letters that some rows use, explained.</summary>
    public IEnumerable<string> ExplainedFor(IEnumerable<BuildCondition> used)
    {
        var letters = used.Select(KeyOf).ToHashSet(StringComparer.Ordinal);
        return Explained.Where(e => letters.Contains(e[..e.IndexOf(' ', StringComparison.Ordinal)]));
    }

    private static string Letter(int index) => index < 26 ? ((char)('a' + index)).ToString() : Letter((index / 26) - 1) + Letter(index % 26);
}
