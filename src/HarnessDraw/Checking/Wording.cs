using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>How rules put their findings: lists cut short, wires named with their job, severity from the settings.</summary>
internal static class Wording
{
    private const int NamedAtMost = 6;

    /// <summary>'E01, E02 and E03', or the first six 'and 4 more'.</summary>
    public static string List(IEnumerable<string> names) => List(names, ", ");

    /// <summary>The same with another mark between the names, for names that hold commas.</summary>
    public static string List(IEnumerable<string> names, string between)
    {
        var all = names.Distinct(StringComparer.Ordinal).ToList();
        if (all.Count > NamedAtMost + 1)
        {
            return $"{string.Join(between, all.Take(NamedAtMost))} and {all.Count - NamedAtMost} more";
        }

        return all.Count < 2 ? string.Concat(all) : $"{string.Join(between, all.SkipLast(1))} and {all[^1]}";
    }

    /// <summary>'3 wires', '1 wire'.</summary>
    public static string Count(int count, string noun) => count == 1 ? $"1 {noun}" : $"{count} {noun}s";

    /// <summary>'E05 (dipped beam)'.</summary>
    public static string Named(this Wire wire) => $"{wire.Id} ({wire.Circuit})";

    /// <summary>A finding of this rule with the severity that the settings give it; <paramref name="severity"/> is for rules with two levels.</summary>
    public static Finding Found(this RuleContext context, RuleInfo info, string message, string? cure, IEnumerable<string> where, BuildCondition? builds = null, SourceSpan? at = null, Severity? severity = null) => new()
    {
        Rule = info.Id,
        Severity = context.Settings.SeverityOf(info, severity),
        Message = message,
        Cure = cure,
        Source = info.Source,
        Where = [.. where.Distinct(StringComparer.Ordinal)],
        Builds = builds ?? BuildCondition.Always,
        At = at,
    };
}
