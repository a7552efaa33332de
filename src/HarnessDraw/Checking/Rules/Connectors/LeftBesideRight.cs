using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class LeftBesideRight : IDesignRule
{
    public RuleInfo Info { get; } = new("left-beside-right", "Lamps of both sides, or both beams, in neighbouring cavities", Severity.Advice, Consequence.LostFunction, "common practice, no source",
        "One bent pin or one hot contact then takes both.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors.Where(c => c.Thing.Kind is ThingKind.Mate or ThingKind.Inline))
        {
            var pairs = connector.Neighbours().Where(p => context.Circuit(p.A.Wire.Circuit) is { } a && context.Circuit(p.B.Wire.Circuit) is { } b && FailSafePairs.Are(a, b, context.Thing)
                && context.CanMeet(p.A.Wire.Builds, p.B.Wire.Builds)).ToList();
            if (pairs.Count > 0)
            {
                yield return context.Found(Info, $"{connector.Thing.Id}: {Wording.List(pairs.Select(p => $"{p.A.Cavity}/{p.B.Cavity} ({p.A.Wire.Circuit}, {p.B.Wire.Circuit})"))} are neighbours: one bent pin joins them.",
                    "Put another circuit between them.", [connector.Thing.Id, .. pairs.SelectMany(p => new[] { p.A.Wire.Id, p.B.Wire.Id })], at: connector.Thing.At);
            }
        }
    }
}
