using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class SizeStepsDown : IDesignRule
{
    public RuleInfo Info { get; } = new("size-steps-down", "Thick feed, thin leg, no fuse between", Severity.Warning, Consequence.Fire, "common practice, no source",
        "The fuse is chosen for the thick wire in people's minds: the next, larger one burns the leg.")
    {
        Limits = [new("area ratio", 5, "", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var splice in context.Plan.Splices)
        {
            var wires = splice.Wires.Select(context.Wire).OfType<Wire>().Where(w => !context.IsReturn(w)).ToList();
            if (wires.Count > 1 && wires.MinBy(w => w.AreaMm2) is { } thin && wires.MaxBy(w => w.AreaMm2) is { } thick && thick.AreaMm2 > context.Limit(Info, "area ratio") * thin.AreaMm2)
            {
                var fuse = thin.ProtectedBy.Select(context.Fuse).FirstOrDefault(f => f?.RatingA is not null);
                yield return context.Found(Info, $"{splice.Circuit} steps from {thick.SizeLabel} ({thick.Id}) to {thin.SizeLabel} ({thin.Id}) at {splice.Id}{(fuse is null ? " with no fuse between" : $" behind the {Figure.Amps(fuse.RatingA!.Value)} fuse {fuse.Id}")}.",
                    "Make the leg thicker, or fuse it by itself.", [splice.Id, thick.Id, thin.Id, splice.Circuit], thin.Builds.And(thick.Builds), context.Circuit(splice.Circuit)?.At);
            }
        }
    }
}
