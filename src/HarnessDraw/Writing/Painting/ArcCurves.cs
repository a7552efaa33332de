using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Painting;

/// <summary>
/// An arc as cubic curves of at most 90 degrees, off by less than 0.03 % of its radius. The engine's own arcs become dozens of curves each in a PDF.
/// </summary>
internal static class ArcCurves
{
    /// <summary>The two control points and the end of each curve; the arc is the smaller one. Clockwise as seen on paper, y pointing down.</summary>
    public static IEnumerable<(Point One, Point Two, Point End)> Of(Point from, Point to, double radius, bool clockwise)
    {
        var (halfX, halfY) = ((to.X - from.X) / 2, (to.Y - from.Y) / 2);
        var half = Math.Sqrt((halfX * halfX) + (halfY * halfY));
        if (half < 1e-9)
        {
            yield break;
        }

        // a radius too small for its ends grows, as in SVG
        var r = Math.Max(radius, half);
        var away = Math.Sqrt(Math.Max(0, (r * r) - (half * half))) / half * (clockwise ? 1 : -1);
        var centre = new Point(from.X + halfX - (halfY * away), from.Y + halfY + (halfX * away));
        var start = Math.Atan2(from.Y - centre.Y, from.X - centre.X);
        var sweep = 2 * Math.Asin(Math.Min(1, half / r)) * (clockwise ? 1 : -1);
        var pieces = Math.Max(1, (int)Math.Ceiling((Math.Abs(sweep) / (Math.PI / 2)) - 1e-6));
        var step = sweep / pieces;
        var handle = 4.0 / 3 * Math.Tan(step / 4) * r;
        for (var i = 0; i < pieces; i++)
        {
            var (a, b) = (start + (i * step), start + ((i + 1) * step));
            var (sinA, cosA) = Math.SinCos(a);
            var (sinB, cosB) = Math.SinCos(b);
            var end = i == pieces - 1 ? to : new Point(centre.X + (r * cosB), centre.Y + (r * sinB));
            yield return (new(centre.X + (r * cosA) - (handle * sinA), centre.Y + (r * sinA) + (handle * cosA)), new(end.X + (handle * sinB), end.Y - (handle * cosB)), end);
        }
    }
}
