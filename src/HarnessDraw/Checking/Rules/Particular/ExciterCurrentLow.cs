using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class ExciterCurrentLow : MeasuredRule
{
    public override RuleInfo Info { get; } = new("exciter-current-low", "Charge lamp lets too little exciter current through", Severity.Warning, Consequence.DoesNotWork, "workshop practice, no standard",
        "With too little current the alternator charges only after the engine is revved.")
    {
        Limits = [new("resistance at 12 V", 150, "Ω", "workshop practice: 50 to 150 Ω; scaled with the square of the nominal volts")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        foreach (var (circuit, alternator) in Exciters.Of(context))
        {
            var most = context.Limit(Info, "resistance at 12 V") * circuit.NominalV * circuit.NominalV / 144;
            foreach (var (thing, ohm) in Exciters.On(context, circuit).SelectMany(t => t.Elements.Where(e => e.Kind is ElementKind.Lamp or ElementKind.Heater).Select(e => (t, Ohm: Ohm(e, circuit.NominalV)))).Where(p => p.Ohm is not null))
            {
                yield return new($"exciter path through {thing.Id}", ohm!.Value, most, "Ω", () => context.Found(Info,
                    $"{thing.Id} puts {Figure.Of(ohm.Value, "Ω")} in {circuit.Id}; more than {Figure.Of(most, "Ω")} and {alternator.Id} may not start charging until revved.", "Use a lamp of more watts, or put a resistor beside it.", [circuit.Id, thing.Id, alternator.Id], circuit.OnlyWith, circuit.At));
            }
        }
    }

    private static double? Ohm(Element e, double volts) => e.ResistanceOhm ?? (e.Amps(volts) is > 0 and { } amps ? (e.NominalV ?? volts) / amps : null);
}
