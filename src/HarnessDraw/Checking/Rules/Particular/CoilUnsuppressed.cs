using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class CoilUnsuppressed : IDesignRule
{
    public RuleInfo Info { get; } = new("coil-unsuppressed", "Nothing fitted across a relay coil", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "A coil that is switched off throws back several hundred volts: they burn the contact that switches it and upset electronics on the same feed.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Things.Where(t => t.Kind == ThingKind.Relay && t.Suppression == "none")
            .Select(t => context.Found(Info, $"{t.Id} has nothing across its coil{(t.Elements.FirstOrDefault(e => e.Kind == ElementKind.Coil)?.Amps(Volts(context, t)) is { } amps ? $" of {Figure.Amps(amps)}" : "")}.", "Use a relay with a resistor across its coil; with a diode mind the polarity.", [t.Id], t.OnlyWith, t.At));

    private static double Volts(RuleContext context, Thing relay) => context.Harness.Circuits.FirstOrDefault(c => c.Feeds.Any(f => f.Thing == relay.Id))?.NominalV ?? context.Harness.Power.NominalV;
}
