using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class ClipsTooFar : IDesignRule
{
    public RuleInfo Info { get; } = new("clips-too-far", "Supports too far apart", Severity.Warning, Consequence.DoesNotLast, "FAA AC 43.13-1B chapter 11",
        "An unsupported bundle swings, chafes and pulls on its terminals.")
    {
        Limits = [new("support", 600, "mm", "FAA AC 43.13-1B chapter 11: 24 in"), new("ties from", 300, "mm", "FAA AC 43.13-1B chapter 11: ties where supports are more than 12 in apart")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var segment in context.Plan.Tree.Segments.Where(s => !s.Wires.IsEmpty))
        {
            if (context.PathOf(segment)?.ClipsEveryMm is { } every && every > context.Limit(Info, "ties from"))
            {
                var far = every > context.Limit(Info, "support");
                yield return context.Found(Info, $"{segment.Id} ({segment.From} to {segment.To}) is clipped every {Figure.Millimetres(every)}; {(far ? $"{Figure.Millimetres(context.Limit(Info, "support"))} is the most" : $"over {Figure.Millimetres(context.Limit(Info, "ties from"))} it needs ties between")}.",
                    far ? "Add clips: 150 to 300 mm along a wing." : "Tie the bundle between the clips.", [segment.Id], at: context.PathOf(segment)?.At, severity: far ? Severity.Warning : Severity.Advice);
            }
        }
    }
}
