using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class PositiveGround : IDesignRule
{
    public RuleInfo Info { get; } = new("positive-ground-alternator", "Alternator with positive ground", Severity.Error, Consequence.Damage, "common practice, no source",
        "An alternator's diodes are built for negative ground: the other way round they short the battery at once.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Power.Ground == GroundPolarity.Negative ? [] : context.Harness.Power.Sources.Where(s => s is { Kind: SourceKind.Alternator, IsDynamo: false } && !IsDynamo(s.Id) && context.Thing(s.Id)?.Elements.FirstOrDefault(e => e.Kind == ElementKind.Source) is { PinB: null })
            .Select(s => context.Found(Info, $"Positive ground, and {s.Id} is an alternator with its case as the other pole: its diodes short the battery.", "Fit one made for positive ground or with an insulated return, or change the vehicle to negative ground.", [s.Id], at: s.At));

    private static bool IsDynamo(string id) => id.Contains("dynamo", StringComparison.OrdinalIgnoreCase) || id.Contains("generator", StringComparison.OrdinalIgnoreCase);
}
