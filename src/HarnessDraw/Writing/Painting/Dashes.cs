using System.Collections.Immutable;
using HarnessDraw.Drawing;
using SkiaSharp;

namespace HarnessDraw.Writing.Painting;

/// <summary>
/// A dashed line as the strokes it is made of. The engine's own dashes have no counterpart in its PDF: it would write the outline of each, ten times as much as two points.
/// </summary>
internal static class Dashes
{
    /// <summary>The dashes of every contour; the pattern begins anew on each, at its phase.</summary>
    public static SKPath Of(SKPath path, Stroke stroke)
    {
        // an odd list counts twice, as in SVG
        var pattern = stroke.DashMm.Length % 2 == 0 ? stroke.DashMm : stroke.DashMm.AddRange(stroke.DashMm);
        var all = pattern.Sum();
        using var cut = new SKPathBuilder();
        using var measure = new SKPathMeasure(path, false, 100);
        do
        {
            for (var from = all > 0 ? -(((stroke.DashPhaseMm % all) + all) % all) : double.MaxValue; from < measure.Length; from += all)
            {
                Period(measure, cut, pattern, from);
            }
        }
        while (measure.NextContour());
        return cut.Detach();
    }

    private static void Period(SKPathMeasure measure, SKPathBuilder cut, ImmutableArray<double> pattern, double from)
    {
        for (var i = 0; i < pattern.Length; i++)
        {
            var to = from + pattern[i];
            if (i % 2 == 0 && to > 0 && from < measure.Length)
            {
                measure.GetSegment((float)Math.Max(from, 0), (float)Math.Min(to, measure.Length), cut, true);
            }

            from = to;
        }
    }
}
