using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class TooManyCircuits : IDesignRule
{
    public RuleInfo Info { get; } = new("more-wires-than-cavities", "More wires than a connector has cavities", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "What has no cavity cannot be plugged in.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors)
        {
            var needed = Needed(context, connector);
            var homeless = connector.Wires.Where(w => !connector.Part.Cavities.Any(c => c.Name == w.Cavity)).Select(w => w.Wire.Id).ToList();
            if (needed > connector.Part.Cavities.Length || homeless.Count > 0)
            {
                var which = homeless.Count == 0 ? "" : $"; without a cavity: {Wording.List(homeless)}";
                yield return context.Found(Info, $"{connector.Thing.Id}: {needed} cavities needed, {connector.Part.Cavities.Length} there{which}.", "Use a larger body or a second one, or feed some circuits another way.", [connector.Thing.Id, .. homeless], at: connector.Thing.At);
            }
        }
    }

    /// <summary>The most that one build needs.</summary>
    internal static int Needed(RuleContext context, ConnectorUse connector) =>
        context.Builds.Heaviest([.. connector.Wires], w => w.Wire.Builds, _ => 1).Select(w => w.Cavity).Distinct().Count();
}
