using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class SenderByItsThread : IDesignRule
{
    public RuleInfo Info { get; } = new("sender-by-its-thread", "Sender that is grounded by its thread alone", Severity.Advice, Consequence.DoesNotWork, "workshop practice, no standard",
        "Thread tape or sealant lifts the ground, and the gauge reads wrong without a fault in the wiring.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var senders = context.Harness.Things.Where(t => t is { Side: Side.Bay, Kind: ThingKind.Sender, Note: null } && t.Elements.Any(e => e is { Kind: ElementKind.Sender, PinB: null } && context.EndsAt(t.Id, e.PinA).Any())).ToList();
        if (senders.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.List(senders.Select(t => t.Id))}: grounded by the thread alone; tape or sealant on it can lift the ground.", "Leave the first threads bare, and measure from the sender's body to the battery; say so in its note.", [.. senders.Select(t => t.Id)]);
        }
    }
}
