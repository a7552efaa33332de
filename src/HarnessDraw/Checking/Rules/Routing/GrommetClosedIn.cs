using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class GrommetClosedIn : IDesignRule
{
    public RuleInfo Info { get; } = new("grommet-closed-in", "Grommet with connectors on both ends of its wires", Severity.Warning, Consequence.DoesNotWork, "workshop practice, no standard",
        "What must be threaded on first is remembered when both ends are closed.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var opening in context.Harness.Layout.Openings.Where(o => o.Holds is not null && context.Thing(o.Holds)?.Kind is not (ThingKind.Mate or ThingKind.Inline)))
        {
            var closed = context.Plan.Wires.Where(w => context.SegmentsOf(w).Count(s => s.From == opening.Place || s.To == opening.Place) == 2 && IsClosed(context, w.From, opening) && IsClosed(context, w.To, opening)).ToList();
            if (closed.Count > 0)
            {
                var plugs = closed.SelectMany(w => new[] { w.From.At, w.To.At }).Distinct().ToList();
                yield return context.Found(Info, $"The grommet {opening.Holds} at {opening.Place} has connectors on both ends of its wires ({Wording.List(plugs)}): which end goes on after?",
                    "Thread it on first and say so ('thread on first'), or fit one of the connectors after pulling.", [opening.Place, .. closed.Select(w => w.Id)], at: opening.At);
            }
        }
    }

    private static bool IsClosed(RuleContext context, WireEnd end, Opening opening) =>
        context.PartOf(context.Thing(end.At)) is not null && !end.ThreadOnFirst.Any(t => t.Contains("grommet", StringComparison.OrdinalIgnoreCase) || t == opening.Holds);
}
