using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class NoRoute : IDesignRule
{
    public RuleInfo Info { get; } = new("no-path-in-layout", "No permitted path between two places", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "A wire without a path has no length and no place on the drawing.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Tree.Segments.Where(s => s.Assumed && !s.Wires.IsEmpty && !SaidInPlanning(context, s))
            .Select(s => context.Found(Info, $"The layout has no path from {s.From} to {s.To}: {Wording.List(s.Wires)} {(s.Wires.Length == 1 ? "runs" : "run")} on an assumed one.", "Add the path with its measured length.", [s.Id, s.From, s.To, .. s.Wires]));

    private static bool SaidInPlanning(RuleContext context, Segment segment) => context.Plan.PlanningFindings.Any(f => f.Rule == "no-path" && f.Where.Contains(segment.To) && f.Where.Contains(segment.From));
}
