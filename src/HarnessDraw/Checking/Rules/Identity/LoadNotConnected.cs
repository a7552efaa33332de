using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class LoadNotConnected : IDesignRule
{
    public RuleInfo Info { get; } = new("load-not-connected", "A load that no wire reaches", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "It is on the list and does nothing.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var thing in context.Harness.Things.Where(t => t.Side == Side.Bay && t.Kind is not (ThingKind.Alternator or ThingKind.Battery)))
        {
            var drawing = thing.Elements.Where(e => e.Draws() || e.Kind == ElementKind.Sender).ToList();
            var dead = drawing.Select(e => e.PinA).Distinct().Where(pin => !context.EndsAt(thing.Id, pin).Any()).ToList();
            if (dead.Count > 0)
            {
                var all = dead.Count == drawing.Select(e => e.PinA).Distinct().Count();
                yield return context.Found(Info, all ? $"{thing.Id} is listed but no wire feeds it." : $"No wire reaches {Wording.List(dead.Select(p => PointWords.Of(thing.Id, p)))}.",
                    "Add a circuit that feeds it, or take it out of the description.", [thing.Id, .. dead.Select(p => $"{thing.Id}.{p}")], thing.OnlyWith, thing.At);
            }
        }
    }
}
