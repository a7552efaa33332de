using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking;

/// <summary>A threshold of one rule set by a rule file.</summary>
public sealed record LimitSetting(string Rule, string Limit, double Value);

/// <summary>The severity of one rule set by a rule file.</summary>
public sealed record SeveritySetting(string Rule, Severity Severity);

/// <summary>What a rule file changes; all else is as the rules themselves say.</summary>
public sealed record RuleSettings
{
    public static readonly RuleSettings BuiltIn = new();

    public ImmutableArray<LimitSetting> Limits { get; init; } = [];
    public ImmutableArray<SeveritySetting> Severities { get; init; } = [];

    /// <summary>The rule file's name, printed beside the findings; null when none was given.</summary>
    public string? File { get; init; }

    public double LimitOf(RuleInfo rule, string limit)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return Limits.LastOrDefault(l => l.Rule == rule.Id && l.Limit == limit)?.Value ?? rule.Limit(limit).Value;
    }

    /// <summary>A severity from the rule file wins over both levels of a rule.</summary>
    public Severity SeverityOf(RuleInfo rule, Severity? level = null)
    {
        ArgumentNullException.ThrowIfNull(rule);
        return Severities.LastOrDefault(s => s.Rule == rule.Id)?.Severity ?? level ?? rule.Severity;
    }

    /// <summary>What differs from the built-in rules, in words for the title block ('fuse-load-high: share 75 %').</summary>
    public ImmutableArray<string> Changes =>
    [
        .. Severities.Select(s => $"{s.Rule}: {s.Severity.ToString().ToLowerInvariant()}"),
        .. Limits.Select(l => $"{l.Rule}: {l.Limit} {Figure.Of(l.Value, RuleCatalogue.Info(l.Rule)?.Limits.FirstOrDefault(t => t.Name == l.Limit)?.Unit ?? "")}"),
    ];
}
