using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

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
        var seconds = OpeningTime.Longest(s.Fuse.Kind, s.CurrentA / s.Fuse.RatingA!.Value);
        var heat = s.CurrentA * s.CurrentA * seconds;
        var bears = k * s.Wire.AreaMm2 * (k * s.Wire.AreaMm2);
        return new($"let-through of fuse {s.Fuse.Id} in {s.Wire.Named()}", heat, bears, "A²s", () => context.Found(Info,
            $"Wire {s.Wire.Named()}, {Figure.Area(s.Wire.AreaMm2)}, cannot survive {Figure.Amps(s.CurrentA)} for the {Figure.Number(seconds)} s that fuse {s.Fuse.Id} may take: {Figure.Number(heat)} A²s, and {Figure.Number(bears)} is the most.",
            "Use larger wire, or a smaller fuse.", [s.Fuse.Id, s.Wire.Id, s.Wire.Circuit], s.Wire.Builds, FuseWords.At(context, s.Fuse.Id)));
    }
}

/// <summary>Longest time a fuse may take to open, by multiple of its rating: the upper edges of the windows, joined on logarithmic scales.</summary>
internal static class OpeningTime
{
    // ISO 8820-3 blade and ISO 8820-5 bolt-in windows as commonly reprinted on data sheets
    private static readonly (double Times, double Seconds)[] Blade = [(1.35, 600), (2, 5), (3.5, 0.5), (6, 0.1)];
    private static readonly (double Times, double Seconds)[] BoltIn = [(1.35, 1800), (2, 15), (3.5, 5), (5, 1)];

    public static double Longest(ProtectionKind kind, double times)
    {
        var window = kind == ProtectionKind.Blade ? Blade : BoltIn;
        var last = window[^1];
        if (times >= last.Times)
        {
            // beyond the window the melting heat is constant
            return last.Seconds * (last.Times / times) * (last.Times / times);
        }

        var i = Array.FindIndex(window, w => times < w.Times);
        if (i <= 0)
        {
            return window[0].Seconds;
        }

        var (a, b) = (window[i - 1], window[i]);
        var share = Math.Log(times / a.Times) / Math.Log(b.Times / a.Times);
        return a.Seconds * Math.Pow(b.Seconds / a.Seconds, share);
    }
}
