using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class FuseOverloaded : MeasuredRule
{
    public override RuleInfo Info { get; } = new("fuse-overloaded", "A load larger than its fuse", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "The fuse opens as soon as the load is switched on.");

    public override IEnumerable<Measure> Measures(RuleContext context) => FuseBurden.Of(context).Where(b => b.Largest is not null).Select(b =>
        new Measure($"largest load of fuse {b.Fuse.Id}", b.Largest!.CurrentA, b.RatingA, "A", () => context.Found(Info,
            $"{b.Largest.Thing.Id} draws {Figure.Amps(b.Largest.CurrentA)} on the {Figure.Amps(b.RatingA)} fuse {b.Fuse.Id}: it opens at once.",
            "Take a larger fuse if the wires behind it bear it, share the load, or check the current given.",
            [b.Fuse.Id, b.Largest.Thing.Id, b.Largest.Circuit.Id], b.Largest.Circuit.OnlyWith, FuseWords.At(context, b.Fuse.Id))));
}
