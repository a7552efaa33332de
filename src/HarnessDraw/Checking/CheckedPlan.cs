using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>A plan with what the design rules found in it.</summary>
public sealed record CheckedPlan(Plan Plan, ImmutableArray<Finding> Findings)
{
    /// <summary>The rules' look-ups over this plan, with what they have measured.</summary>
    internal RuleContext? Rules { get; init; }

    /// <summary>True when a finding that nobody waived says 'do not build'.</summary>
    public bool NotForBuild => HasOpen(Severity.Error);

    public bool HasOpen(Severity severity) => Findings.Any(f => f.Severity == severity && f.WaivedBy is null);

    /// <summary>One build of it: the wires, cavities and findings that belong to it.</summary>
    public CheckedPlan For(ImmutableSortedDictionary<string, string> build) => new(Plan.For(build), [.. Findings.Where(f => f.Builds.Holds(build))]);
}
