using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>A plan with what the design rules find in it. They may still be looking when it is handed on: whoever asks for the findings waits for them.</summary>
public sealed record CheckedPlan
{
    private readonly ImmutableArray<Finding> given;
    private readonly RuleRun? run;

    public CheckedPlan(Plan plan, ImmutableArray<Finding> findings)
    {
        Plan = plan;
        given = findings;
    }

    internal CheckedPlan(Plan plan, RuleRun run)
    {
        Plan = plan;
        this.run = run;
    }

    public Plan Plan { get; init; }

    public ImmutableArray<Finding> Findings
    {
        get => run?.Findings ?? given;
        init => (given, run) = (value, null);
    }

    /// <summary>False while the rules are still looking.</summary>
    internal bool IsChecked => run?.IsDone != false;

    /// <summary>The rules' look-ups over this plan, with what they have measured.</summary>
    internal RuleContext? Rules { get; init; }

    /// <summary>True when a finding that nobody waived says 'do not build'.</summary>
    public bool NotForBuild => HasOpen(Severity.Error);

    public bool HasOpen(Severity severity) => Findings.Any(f => f.Severity == severity && f.WaivedBy is null);

    /// <summary>One build of it: the wires, cavities and findings that belong to it.</summary>
    public CheckedPlan For(ImmutableSortedDictionary<string, string> build) => new(Plan.For(build), [.. Findings.Where(f => f.Builds.Holds(build))]);
}
