using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class DiodeReversed : IDesignRule
{
    public RuleInfo Info { get; } = new("diode-reversed", "Diode across a coil the wrong way round", Severity.Error, Consequence.Damage, "common practice, no source",
        "It conducts as soon as the coil is fed: a dead short.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var positive = context.Harness.Power.Ground == GroundPolarity.Positive;
        foreach (var thing in context.Harness.Things)
        {
            foreach (var diode in thing.Elements.Where(e => e.Kind == ElementKind.Diode && thing.Elements.Any(c => c.Kind == ElementKind.Coil && SamePins(c, e))))
            {
                var fed = context.Harness.Circuits.Where(c => !c.IsReturn).SelectMany(c => c.Feeds).FirstOrDefault(f => f.Thing == thing.Id && (f.Pin == diode.PinA || f.Pin == diode.PinB))?.Pin;
                var anode = positive ? diode.PinB : diode.PinA;
                if (fed is not null && fed == anode)
                {
                    yield return context.Found(Info, $"{thing.Id}: its diode conducts from {diode.PinA} to {diode.PinB}, and {fed} is the fed side with {(positive ? "positive" : "negative")} ground: dead short.", $"Swap the wires of {diode.PinA} and {diode.PinB}, or use a relay with a resistor.", [thing.Id], thing.OnlyWith, thing.At);
                }
            }
        }
    }

    private static bool SamePins(Element a, Element b) => (a.PinA == b.PinA && a.PinB == b.PinB) || (a.PinA == b.PinB && a.PinB == b.PinA);
}
