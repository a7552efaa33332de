using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class TwoWiresInCavity : IDesignRule
{
    public RuleInfo Info { get; } = new("two-wires-in-cavity", "Two wires in one cavity", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "A cavity takes one terminal. Wires of options that exclude each other may share it, one at a time.");

    // an inline connector has two bodies, and the cavity of one lies on that of the other
    private static bool AreMated(Wire a, Wire b) => a.Circuit == b.Circuit && a.Net != b.Net;

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors)
        {
            foreach (var group in connector.Wires.GroupBy(w => w.Cavity, StringComparer.Ordinal))
            {
                var wires = group.ToList();
                var clash = wires.SelectMany((a, i) => wires.Skip(i + 1).Where(b => a.Wire.Id != b.Wire.Id && !(connector.Thing.Kind == ThingKind.Inline && AreMated(a.Wire, b.Wire)) && context.CanMeet(a.Wire.Builds, b.Wire.Builds)).Select(b => (A: a.Wire, B: b.Wire))).ToList();
                if (clash.Count > 0)
                {
                    var names = clash.SelectMany(c => new[] { c.A, c.B }).DistinctBy(w => w.Id).ToList();
                    yield return context.Found(Info, $"{PointWords.Of(connector.Thing.Id, group.Key)} has {Wording.List(names.Select(w => w.Named()))}: one cavity takes one terminal.", "Splice them first (one circuit that feeds both is spliced by itself), or give one another cavity.",
                        [$"{connector.Thing.Id}.{group.Key}", .. names.Select(w => w.Id)], clash[0].A.Builds.And(clash[0].B.Builds), context.Circuit(clash[0].B.Circuit)?.At);
                }
            }
        }
    }
}
