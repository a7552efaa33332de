using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class ShortWillNotOpenFuse : MeasuredRule
{
    public override RuleInfo Info { get; } = new("short-will-not-open-fuse", "A short at the far end does not open the fuse quickly", Severity.Warning, Consequence.Fire, "ISO 8820 opening windows as reprinted on data sheets",
        "A long thin wire limits the short-circuit current: below twice the rating the fuse may never open and the wire heats.")
    {
        Limits = [new("times rating", 3.5, "", "ISO 8820 as reprinted: 350 % opens within 0.5 s"), new("error below", 2, "", "ISO 8820 as reprinted: 200 % opens within 5 s")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        ShortCurrent.Of(context).GroupBy(s => s.Fuse.Id, StringComparer.Ordinal)
            .Select(g => g.OrderBy(s => s.CurrentA).ThenBy(s => s.Wire.Id, StringComparer.Ordinal).First()).Select(s => Of(context, s));

    private Measure Of(RuleContext context, ShortCurrent s)
    {
        var rating = s.Fuse.RatingA!.Value;
        return new($"short at the far end of {s.Wire.Named()} on fuse {s.Fuse.Id}", s.CurrentA, context.Limit(Info, "times rating") * rating, "A", () => Weak(context, s, rating), AtLeast: true);
    }

    private Finding Weak(RuleContext context, ShortCurrent s, double rating)
    {
        var never = s.CurrentA < context.Limit(Info, "error below") * rating;
        return context.Found(Info, $"A short at {PointWords.Of(s.Wire.To)} (wire {s.Wire.Named()}) draws {Figure.Amps(s.CurrentA)} (source, joints and warm copper counted; the power sheet tells the most, cold and without joints), {Figure.Number(s.CurrentA / rating)} times the {Figure.Amps(rating)} fuse {s.Fuse.Id}: {(never ? "the fuse may never open" : "it takes seconds to open")}.",
            "Use a smaller fuse, thicker or shorter wire.",
            [s.Fuse.Id, s.Wire.Id, s.Wire.Circuit], s.Wire.Builds, FuseWords.At(context, s.Fuse.Id), never ? Severity.Error : Severity.Warning);
    }
}
