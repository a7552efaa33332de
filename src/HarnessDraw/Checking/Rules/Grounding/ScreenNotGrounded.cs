using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Grounding;

internal sealed class ScreenNotGrounded : IDesignRule
{
    public RuleInfo Info { get; } = new("screen-not-grounded", "Screen that is grounded nowhere", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "A screen works when one end, and only one, is grounded.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Circuits.Where(c => c.Cable is { Screened: true, ScreenGroundedAt: null })
            .Select(c => context.Found(Info, $"The screen of {c.Cable!.Id} ({c.Id}) is grounded at neither end.", "Name the one end: 'grounded-at: control unit.5'.", [c.Id, c.Cable.Id], c.OnlyWith, c.At));
}
