using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking.Rules.Making;

internal sealed class LongerThanReel : MeasuredRule
{
    public override RuleInfo Info { get; } = new("longer-than-reel", "A wire longer than a reel", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "It cannot be cut in one piece, and a joint that nobody planned is a fault.")
    {
        Limits = [new("reel", 100, "m", "common practice, no source: the longest of the usual reels; 'reels' reckons with yours")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) => context.Plan.Wires.Where(w => w.CutLengthMm is not null).OrderByDescending(w => w.CutLengthMm).ThenBy(w => w.Id, StringComparer.Ordinal).Select(w =>
        new Measure($"length of {w.Named()}", w.CutLengthMm!.Value / 1000, context.Limit(Info, "reel"), "m", () => context.Found(Info,
            $"{w.Named()} is cut {Figure.Of(Math.Round(w.CutLengthMm.Value / 1000, 2), "m")}; the longest reel holds {Figure.Of(context.Limit(Info, "reel"), "m")}.", "Find a longer reel, or give it a connector on the way.", [w.Id, w.Circuit], w.Builds, context.AtOf(w))));
}
