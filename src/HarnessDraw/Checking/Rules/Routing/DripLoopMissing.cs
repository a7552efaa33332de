using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class DripLoopMissing : IDesignRule
{
    public RuleInfo Info { get; } = new("drip-loop-missing", "Wires run down into an unsealed connector in the wet", Severity.Warning, Consequence.DoesNotLast, "FAA AC 43.13-1B chapter 11",
        "Water follows the wire into the connector unless a loop below it lets it drip off.")
    {
        Limits = [new("fall", 50, "mm", "common practice, no source: less is a level run"), new("loop", 60, "mm", "common practice, no source: 50 to 80 mm")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var wet = context.Connectors.Where(c => c is { Part.Sealed: false, Thing.Side: Side.Bay, Wires.IsEmpty: false } && context.ZoneAt(c.Thing.Place)?.Exposure is Exposure.Spray or Exposure.Splash)
            .Where(c => !c.Wires.Any(w => w.Wire.Allowances.Any(a => a.What.Contains("drip", StringComparison.OrdinalIgnoreCase))))
            .Select(c => (c.Thing, FallMm: Fall(context, c.Thing.Place))).Where(p => p.FallMm >= context.Limit(Info, "fall")).DistinctBy(p => p.Thing.Id).ToList();
        if (wet.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.List(wet.Select(p => $"{p.Thing.Id} ({Figure.Millimetres(p.FallMm)} down in '{context.Place(p.Thing.Place)!.Zone}')"))}: the wires come from above and the connector is not sealed.",
                $"Add a loop of {Figure.Millimetres(context.Limit(Info, "loop"))} with its lowest point below the connector, or use a sealed one.", wet.Select(p => p.Thing.Id), at: wet[0].Thing.At);
        }
    }

    private static double Fall(RuleContext context, string place) =>
        context.Plan.Tree.Above(place) is { } above && context.Place(above.From) is { } from && context.Place(place) is { } to ? from.Zmm - to.Zmm : 0;
}
