using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class JumperBesideWire : IDesignRule
{
    public RuleInfo Info { get; } = new("jumper-beside-wire", "A jumper in a build that needs none", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "A jumper stands for a part that is not fitted; beside the part's own wires it puts the part out of work.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var jumper in context.Plan.Wires.Where(w => w.From.At == w.To.At && w.From.Pin is not null && w.To.Pin is not null && w.From.Pin != w.To.Pin && context.Circuit(w.Circuit)?.IsReturn == false))
        {
            var beside = new[] { jumper.From, jumper.To }.SelectMany(e => context.EndsAt(e.At, e.Pin!)).Select(e => e.Wire).Where(w => w.Circuit != jumper.Circuit && context.CanMeet(w.Builds, jumper.Builds)).DistinctBy(w => w.Id).ToList();
            if (beside.Count > 0)
            {
                yield return context.Found(Info, $"{jumper.Named()} joins {PointWords.Of(jumper.From)} and {PointWords.Of(jumper.To)} beside {Wording.List(beside.Select(w => w.Named()))} in one build: it defeats what those wires lead to.",
                    "Let the jumper be built only where the part is not fitted (only-with).", [jumper.Id, .. beside.Select(w => w.Id)], jumper.Builds, context.AtOf(jumper));
            }
        }
    }
}
