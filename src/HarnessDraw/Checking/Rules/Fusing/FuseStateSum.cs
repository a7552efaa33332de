using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class FuseStateSum : MeasuredRule
{
    public override RuleInfo Info { get; } = new("fuse-state-sum", "Loads that are on together come near the fuse rating", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "Loads add up only in states that exist: the worst of them must stay below the rating.")
    {
        Limits = [new("share", 100 * PlanningOptions.Usual.MostFuseShare, "%", "common practice, no source"), new("error from", 100, "%", "common practice, no source")],
    };

    // continuous loads and single loads have rules of their own: this one speaks of sums with something that comes and goes
    public override IEnumerable<Measure> Measures(RuleContext context) =>
        FuseBurden.Of(context).Where(b => !((b.Largest?.CurrentA ?? 0) > b.RatingA) && (b.TotalA > b.RatingA || b.ContinuousA <= context.Limit(Info, "share") / 100 * b.RatingA)).Select(b => Of(context, b));

    private Measure Of(RuleContext context, FuseBurden b) =>
        new($"worst state of fuse {b.Fuse.Id}", b.TotalA, context.Limit(Info, "share") / 100 * b.RatingA, "A", () => Over(context, b));

    private Finding Over(RuleContext context, FuseBurden b)
    {
        var worse = b.TotalA > context.Limit(Info, "error from") / 100 * b.RatingA;
        var names = b.InState.Count == 0 ? "" : $" ({Wording.List(b.InState.Select(l => $"{l.Circuit.Id} {Figure.Amps(l.CurrentA)}"))})";
        return context.Found(Info, $"Fuse {b.Fuse.Id} carries {Figure.Amps(b.TotalA)} of {Figure.Amps(b.RatingA)} ({Figure.Percent(b.TotalA / b.RatingA)}) in '{b.State}'{names}: {(worse ? "it opens when all of it is on" : "little is left for ageing and heat")}.",
            "Move a load to another fuse, or take the next rating if the wires bear it.", [b.Fuse.Id], b.Cause(context, context.Limit(Info, "share") / 100 * b.RatingA), FuseWords.At(context, b.Fuse.Id), severity: worse ? Severity.Error : Severity.Warning);
    }
}
