using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class WrongHalf : IDesignRule
{
    public RuleInfo Info { get; } = new("wrong-half", "Wire in the other half's cavity", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "The halves are separate harnesses: a wire of one cannot be plugged into the other.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors.Where(c => c.Thing.Kind == ThingKind.Mate))
        {
            foreach (var pinned in connector.Wires)
            {
                var half = connector.Thing.Pins.FirstOrDefault(p => p.Name == pinned.End.Pin)?.Half;
                if (half is not null && context.Circuit(pinned.Wire.Circuit)?.Half is { } own && own != half)
                {
                    yield return context.Found(Info, $"{pinned.Wire.Named()} belongs to half {Named(connector.Thing, own)} but sits in {PointWords.Of(pinned.End)} of half {Named(connector.Thing, half)}.",
                        $"Move it to a free cavity of half {own}.", [pinned.Wire.Id, $"{connector.Thing.Id}.{pinned.End.Pin}"], pinned.Wire.Builds, context.Circuit(pinned.Wire.Circuit)?.At);
                }
            }
        }
    }

    private static string Named(Thing mate, string letter) => mate.Halves.FirstOrDefault(h => h.Letter == letter) is { } half ? $"{letter} ({half.Name})" : letter;
}
