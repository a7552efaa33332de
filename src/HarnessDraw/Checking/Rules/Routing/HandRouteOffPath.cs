using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class HandRouteOffPath : IDesignRule
{
    public RuleInfo Info { get; } = new("hand-route-off-path", "Route given by hand leaves the permitted paths", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "Where the layout has no path there is no length, no clip and no zone to reckon with.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var hand in context.Harness.Nets.SelectMany(n => n.ByHand).Where(h => !h.Route.IsEmpty))
        {
            string[] stops = [.. new[] { PlaceOf(context, hand.From) }.Concat(hand.Route).Append(PlaceOf(context, hand.To)).OfType<string>()];
            var gaps = stops.Zip(stops.Skip(1)).Where(p => p.First != p.Second && !context.Harness.Layout.Paths.Any(x => (x.From == p.First && x.To == p.Second) || (x.From == p.Second && x.To == p.First))).ToList();
            if (gaps.Count > 0)
            {
                yield return context.Found(Info, $"{hand.Id}: the route by hand goes {Wording.List(gaps.Select(g => $"from {g.First} to {g.Second}"))}, where the layout has no path: the shortest way between them was taken.",
                    "Name the places on the way, or add the path to the layout.", [hand.Id, .. gaps.SelectMany(g => new[] { g.First, g.Second })], at: hand.At);
            }

            if (context.Wire(hand.Id) is { } wire && hand.Route.Where(p => !context.SegmentsOf(wire).Any(s => s.From == p || s.To == p)).ToList() is { Count: > 0 } missed)
            {
                yield return context.Found(Info, $"{hand.Id}: the route by hand passes {Wording.List(missed)}; the bundle that holds it does not.", "Give the other wires of the bundle the same route, or leave it out.", [hand.Id, .. missed], at: hand.At);
            }
        }
    }

    private static string? PlaceOf(RuleContext context, PinRef pin) => context.Thing(pin.Thing)?.Place;
}
