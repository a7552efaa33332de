using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Grounding;

internal sealed class GroundFinishMissing : IDesignRule
{
    public RuleInfo Info { get; } = new("ground-finish-missing", "Nothing said about the surface at ground points", Severity.Advice, Consequence.DoesNotLast, "common practice, no source",
        "Paint under a ring is the oldest fault of all.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var open = context.Harness.Things.Where(t => t is { Kind: ThingKind.GroundPoint, Note: null } && context.EndsAt(t.Id).Any()).Select(t => t.Id).ToList();
        if (open.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.List(open)}: nothing said about paint, washer and sealing.", "Note 'bare metal, star washer, seal after'.", open);
        }
    }
}
