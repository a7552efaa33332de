using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class NominalVoltsDiffer : IDesignRule
{
    public RuleInfo Info { get; } = new("nominal-volts-differ", "Load made for other volts than its circuit", Severity.Error, Consequence.Damage, "common practice, no source",
        "Heat grows with the square of the volts; too few and it does not work.")
    {
        Limits = [new("apart", 20, "%", "common practice, no source: 12 V parts are marked 12 to 14 V")],
    };

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Circuits.Where(c => !c.IsReturn).SelectMany(c => c.Feeds.SelectMany(f => context.Thing(f.Thing) is { } thing ? Of(context, c, thing, f.Pin) : []));

    private IEnumerable<Finding> Of(RuleContext context, Circuit circuit, Thing thing, string? pin)
    {
        foreach (var element in Loads.At(thing, pin).Where(e => e.NominalV is > 0))
        {
            var (made, fed) = (element.NominalV!.Value, circuit.NominalV);
            if (Math.Abs(fed - made) > context.Limit(Info, "apart") / 100 * made)
            {
                yield return context.Found(Info, $"{thing.Id} ({element.Id}) is made for {Figure.Volts(made)} but {circuit.Id} is a {Figure.Volts(fed)} circuit: {(fed > made ? $"{Figure.Number(fed * fed / (made * made))} times the heat, it burns" : "it does not work")}.",
                    $"Feed it from a {Figure.Volts(made)} source, or fit a {Figure.Volts(fed)} part.", [thing.Id, circuit.Id], circuit.OnlyWith, thing.At ?? circuit.At);
            }
        }
    }
}
