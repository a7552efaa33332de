using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Grounding;

internal sealed class NoReturn : IDesignRule
{
    public RuleInfo Info { get; } = new("no-return", "A load without a return", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Current that cannot come back finds another lamp's way, or none.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var lacking = context.Plan.PlanningFindings.Where(f => f.Rule == "no-ground-point").SelectMany(f => f.Where).ToHashSet(StringComparer.Ordinal);
        var byWire = context.Harness.Power.Returns == ReturnPath.Wire;
        foreach (var thing in context.Harness.Things.Where(t => t.Side == Side.Bay && t.Kind is not (ThingKind.Battery or ThingKind.Alternator or ThingKind.Starter or ThingKind.Converter)))
        {
            var fed = thing.Elements.Where(e => e.Draws() && context.EndsAt(thing.Id, e.PinA).Any()).ToList();
            // a pin under 'returns' without a wire lacks its ground point, which has a finding of its own
            var open = fed.Where(e => e.PinB is { } b && !context.EndsAt(thing.Id, b).Any() && !(lacking.Contains(thing.Id) && thing.Returns.Any(r => r.Pin == b))).Select(e => e.PinB!).Distinct().ToList();
            if (open.Count > 0)
            {
                yield return context.Found(Info, $"{thing.Id} has no return: no wire at {Wording.List(open.Select(p => PointWords.Of(thing.Id, p)))}.", "Add 'returns:' to it, or a circuit to a ground point.", [thing.Id], thing.OnlyWith, thing.At);
            }
            else if (byWire && fed.Any(e => e.PinB is null))
            {
                yield return context.Found(Info, $"{thing.Id} grounds itself, but the body returns nothing here (returns-by: wire).", "Give it a return pin and a wire to the source.", [thing.Id], thing.OnlyWith, thing.At);
            }
        }
    }
}
