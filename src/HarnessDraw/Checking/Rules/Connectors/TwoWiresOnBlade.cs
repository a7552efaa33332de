using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class TwoWiresOnBlade : IDesignRule
{
    public RuleInfo Info { get; } = new("two-wires-on-blade", "Two wires on one blade", Severity.Warning, Consequence.DoesNotLast, "workshop practice, no standard",
        "Two wires in one barrel: the thinner one pulls out.")
    {
        Limits = [new("area ratio", 2, "", "workshop practice, no standard")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var thing in context.Harness.Things.Where(t => t.ConnectorPart is null))
        {
            foreach (var pin in thing.Pins.Where(p => p.Style == PinStyle.Blade))
            {
                var ends = context.EndsAt(thing.Id, pin.Name).ToList();
                if (ends.Count > 1 && context.CanMeet(ends[0].Wire.Builds, ends[1].Wire.Builds) && Wrong(context, ends) is { } why)
                {
                    yield return context.Found(Info, $"{PointWords.Of(thing.Id, pin.Name)} takes {Wording.List(ends.Select(e => $"{e.Wire.Named()} {Figure.Area(e.Wire.AreaMm2)}"))} in one terminal: {why}.", "Splice them before the terminal, or use a piggyback blade.",
                        [$"{thing.Id}.{pin.Name}", .. ends.Select(e => e.Wire.Id)], ends[0].Wire.Builds.And(ends[1].Wire.Builds), thing.At);
                }
            }
        }
    }

    private string? Wrong(RuleContext context, List<PlannedEnd> ends)
    {
        var (sum, ratio) = (ends.Sum(e => e.Wire.AreaMm2), ends.Max(e => e.Wire.AreaMm2) / ends.Min(e => e.Wire.AreaMm2));
        var most = ends.Select(e => context.Terminal(e.End.Terminal)?.MaxAreaMm2).Max();
        return sum > most ? $"together {Figure.Area(sum)}, and it takes {Figure.Area(most.Value)}" : ratio > context.Limit(Info, "area ratio") ? $"one is {Figure.Number(ratio)} times the other and pulls out" : null;
    }
}
