using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class WireSurvivesShort : MeasuredRule
{
    public override RuleInfo Info { get; } = new("short-burns-wire", "A short lets more heat through than the wire bears", Severity.Warning, Consequence.Fire, "IEC 60364-4-43 adiabatic method; ISO 8820 windows as reprinted on data sheets",
        "Until the fuse opens all heat stays in the copper: I²t must stay below (k·S)².")
    {
        Limits = [new("k of PVC", 115, "A√s/mm²", "IEC 60364-4-43, copper in PVC"), new("k of cross-linked", 143, "A√s/mm²", "IEC 60364-4-43, copper in XLPE")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        ShortCurrent.Of(context).Where(s => s.CurrentA >= 2 * s.Fuse.RatingA)
            .GroupBy(s => s.Fuse.Id, StringComparer.Ordinal)
            .Select(g => g.Select(s => Of(context, s)).OrderBy(m => m.Margin).ThenBy(m => m.What, StringComparer.Ordinal).First());

    private Measure Of(RuleContext context, ShortCurrent s)
    {
        var k = context.Limit(Info, context.TypeOf(s.Wire)?.CrossLinked == true ? "k of cross-linked" : "k of PVC");
        // from twice the rating on every fuse opens
        var seconds = FuseWindow.Of(s.Fuse.Kind, s.CurrentA / s.Fuse.RatingA!.Value).LongestS!.Value;
        var heat = s.CurrentA * s.CurrentA * seconds;
        var bears = k * s.Wire.AreaMm2 * (k * s.Wire.AreaMm2);
        return new($"let-through of fuse {s.Fuse.Id} in {s.Wire.Named()}", heat, bears, "A²s", () => context.Found(Info,
            $"Wire {s.Wire.Named()}, {Figure.Area(s.Wire.AreaMm2)}, cannot survive {Figure.Amps(s.CurrentA)} for the {Figure.Number(seconds)} s that fuse {s.Fuse.Id} may take: {Figure.Number(heat)} A²s, and {Figure.Number(bears)} is the most.",
            "Use larger wire, or a smaller fuse.", [s.Fuse.Id, s.Wire.Id, s.Wire.Circuit], s.Wire.Builds, FuseWords.At(context, s.Fuse.Id)));
    }
}
