using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class MixedVoltsInConnector : IDesignRule
{
    public RuleInfo Info { get; } = new("mixed-volts-in-connector", "12 V and 24 V in one connector that can be turned", Severity.Error, Consequence.Damage, "common practice, no source",
        "Plugged wrong, the higher volts reach what the lower were made for.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Connectors.Where(c => c.Part.Key is null && c.Thing.Kind is ThingKind.Mate or ThingKind.Inline or ThingKind.ControlUnit or ThingKind.FusePanel)
            .Select(c => (Connector: c, Volts: c.Wires.Where(w => !context.IsReturn(w.Wire)).Select(w => (w.Wire, Volts: context.Circuit(w.Wire.Circuit)?.NominalV ?? 0)).Where(p => p.Volts > 0).GroupBy(p => p.Volts).OrderBy(g => g.Key).ToList()))
            .Where(p => p.Volts.Count > 1 && p.Connector.Part.Key is null)
            .Select(p => context.Found(Info, $"{p.Connector.Thing.Id} has no key and holds {Wording.List(p.Volts.Select(g => $"{Figure.Volts(g.Key)} ({g.First().Wire.Named()})"))}: plugged wrong, {Figure.Volts(p.Volts[^1].Key)} reaches {Figure.Volts(p.Volts[0].Key)} parts.",
                "Use a keyed body, or one connector for each voltage.", [p.Connector.Thing.Id, .. p.Volts.Select(g => g.First().Wire.Id)], at: p.Connector.Thing.At));
}
