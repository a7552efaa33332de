using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking;

/// <summary>A number a rule compares with: its name in rule files, its value in <paramref name="Unit"/> and where it comes from.</summary>
public sealed record Threshold(string Name, double Value, string Unit, string Source)
{
    public override string ToString() => $"{Name} {Figure.Of(Value, Unit)}";
}

/// <summary>What is known about a rule: the one place its severity, thresholds, source and reason are written.</summary>
public sealed record RuleInfo(string Id, string Title, Severity Severity, Consequence Consequence, string Source, string Why)
{
    public ImmutableArray<Threshold> Limits { get; init; } = [];

    /// <summary>The threshold of that name; a rule asks only for its own.</summary>
    public Threshold Limit(string name) => Limits.First(l => l.Name == name);
}
