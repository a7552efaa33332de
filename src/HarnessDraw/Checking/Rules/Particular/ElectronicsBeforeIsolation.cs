using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class ElectronicsBeforeIsolation : IDesignRule
{
    public RuleInfo Info { get; } = new("electronics-before-isolation", "Electronics to unplug before an insulation test", Severity.Advice, Consequence.Damage, "common practice, no source",
        "500 V kills electronics and diodes at once.")
    {
        Limits = [new("test", 500, "V", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var modules = context.Harness.Things.Where(t => t.Side == Side.Bay && t.Elements.Any(e => e.Kind is ElementKind.Electronic or ElementKind.Diode) && context.EndsAt(t.Id).Any()).ToList();
        if (modules.Count > 0)
        {
            yield return context.Found(Info, $"Unplug {Wording.List(modules.Select(t => t.Id))} before an insulation test with {Figure.Volts(context.Limit(Info, "test"))}.", "Print it on the test sheet; test on the bench, never in the vehicle.", modules.Select(t => t.Id), at: modules[0].At);
        }
    }
}
