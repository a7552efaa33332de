using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class WireEndsOnItself : IDesignRule
{
    public RuleInfo Info { get; } = new("wire-ends-on-itself", "Wire that starts and ends at one terminal", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "It joins nothing: one of its ends is written wrong.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Wires.Where(w => w.From.At == w.To.At && w.From.Pin == w.To.Pin)
            .Select(w => context.Found(Info, $"{w.Named()} starts and ends at {PointWords.Of(w.From)}.", "Correct one of its ends.", [w.Id, w.Circuit], w.Builds, context.Circuit(w.Circuit)?.At));
}
