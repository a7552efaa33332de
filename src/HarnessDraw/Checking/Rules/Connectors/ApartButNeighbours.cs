using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class ApartButNeighbours : IDesignRule
{
    public RuleInfo Info { get; } = new("keep-apart-broken", "Circuits to be kept apart are neighbours", Severity.Warning, Consequence.DoesNotWork, "the description's own wish",
        "The description asks for distance between them.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var apart in context.Harness.KeepApart)
        {
            foreach (var connector in context.Connectors)
            {
                foreach (var (a, b) in connector.Neighbours().Where(p => p.A.Wire.Circuit != p.B.Wire.Circuit && apart.Circuits.Contains(p.A.Wire.Circuit) && apart.Circuits.Contains(p.B.Wire.Circuit) && context.CanMeet(p.A.Wire.Builds, p.B.Wire.Builds)))
                {
                    yield return context.Found(Info, $"{a.Wire.Circuit} and {b.Wire.Circuit} are to be kept apart, but {PointWords.Of(connector.Thing.Id, a.Cavity)} and {b.Cavity} are neighbours.", "Fix one of them in a cavity farther away, or free one.",
                        [connector.Thing.Id, a.Wire.Id, b.Wire.Id, a.Wire.Circuit, b.Wire.Circuit], a.Wire.Builds.And(b.Wire.Builds), apart.At);
                }
            }
        }
    }
}
