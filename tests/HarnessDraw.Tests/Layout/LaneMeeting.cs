using HarnessDraw.Drawing;

namespace HarnessDraw.Tests.Layout;

/// <summary>Counts, from the lanes drawn on a sheet alone, how often each pair of different circuits crosses.</summary>
internal static class LaneMeeting
{
    public static Dictionary<(string A, string B), int> Crossings(Sheet sheet) => Places(sheet).ToDictionary(p => p.Key, p => p.Value.Count);

    /// <summary>Where each pair meets, mm on paper.</summary>
    public static Dictionary<(string A, string B), List<Point>> Places(Sheet sheet)
    {
        var legs = new List<(Point A, Point B, string Wire, string Circuit, int Order)>();
        foreach (var path in Lanes(sheet.Items))
        {
            var points = Flatten(path.Outline);
            for (var i = 1; i < points.Count; i++)
            {
                legs.Add((points[i - 1], points[i], path.Tag!.Wire!, path.Tag.Circuit!, legs.Count));
            }
        }

        var met = new Dictionary<(string, string), List<Point>>();
        legs.Sort((a, b) => Math.Min(a.A.X, a.B.X).CompareTo(Math.Min(b.A.X, b.B.X)));
        for (var i = 0; i < legs.Count; i++)
        {
            var right = Math.Max(legs[i].A.X, legs[i].B.X);
            for (var j = i + 1; j < legs.Count && Math.Min(legs[j].A.X, legs[j].B.X) <= right; j++)
            {
                if (legs[i].Circuit != legs[j].Circuit && Meet(legs[i].A, legs[i].B, legs[j].A, legs[j].B))
                {
                    var key = string.CompareOrdinal(legs[i].Wire, legs[j].Wire) < 0 ? (legs[i].Wire, legs[j].Wire) : (legs[j].Wire, legs[i].Wire);
                    (met.TryGetValue(key, out var at) ? at : met[key] = []).Add(MeetingOf(legs[i].A, legs[i].B, legs[j].A, legs[j].B));
                }
            }
        }

        return met;
    }

    /// <summary>How many pairs of leaders cross: open lines of two ends that are no lanes, be they hairlines to a mark or dimension lines; ticks and lines that meet at an end do not count.</summary>
    public static int Leaders(Sheet sheet)
    {
        const double TickMm = 4;
        var lines = Edges(sheet.Items).Where(p => p.Outline.Steps is [PathStep.MoveTo, PathStep.LineTo] && p.Stroke is not null).Select(p => Flatten(p.Outline)).Where(l => Math.Abs(l[0].X - l[1].X) + Math.Abs(l[0].Y - l[1].Y) > TickMm).ToList();
        lines.Sort((a, b) => Math.Min(a[0].X, a[1].X).CompareTo(Math.Min(b[0].X, b[1].X)));
        var count = 0;
        for (var i = 0; i < lines.Count; i++)
        {
            var (a, b) = (lines[i][0], lines[i][1]);
            for (var j = i + 1; j < lines.Count && Math.Min(lines[j][0].X, lines[j][1].X) < Math.Max(a.X, b.X) - Touching; j++)
            {
                var (c, d) = (lines[j][0], lines[j][1]);
                count += Apart(a, b, c, d) && Apart(c, d, a, b) ? 1 : 0;
            }
        }

        return count;

        static bool Apart(Point a, Point b, Point c, Point d)
        {
            var (from, to) = (Side(a, b, c), Side(a, b, d));
            var least = Touching * Math.Sqrt(((b.X - a.X) * (b.X - a.X)) + ((b.Y - a.Y) * (b.Y - a.Y)));
            return (from > least && to < -least) || (from < -least && to > least);
        }
    }

    private const double Touching = 0.05;

    /// <summary>Length of all lanes, mm on paper.</summary>
    public static double LengthMm(Sheet sheet)
    {
        var sum = 0.0;
        foreach (var path in Lanes(sheet.Items))
        {
            var points = Flatten(path.Outline);
            for (var i = 1; i < points.Count; i++)
            {
                sum += Math.Sqrt(((points[i].X - points[i - 1].X) * (points[i].X - points[i - 1].X)) + ((points[i].Y - points[i - 1].Y) * (points[i].Y - points[i - 1].Y)));
            }
        }

        return sum;
    }

    private static IEnumerable<PathItem> Edges(IEnumerable<Item> items) =>
        items.SelectMany(i => i is GroupItem g ? g.Name is "frame" or "tile-marks" ? [] : Edges(g.Items) : i is PathItem { Role: ItemRole.Edge } p ? [p] : (IEnumerable<PathItem>)[]);

    private static IEnumerable<PathItem> Lanes(IEnumerable<Item> items) =>
        items.SelectMany(i => i is GroupItem g ? Lanes(g.Items) : i is PathItem { Role: ItemRole.Lane } p ? [p] : (IEnumerable<PathItem>)[]);

    // arcs as eight chords; the ends of the chords of neighbours never coincide as radii differ
    private static List<Point> Flatten(Outline outline)
    {
        var points = new List<Point>();
        foreach (var step in outline.Steps)
        {
            if (step is PathStep.MoveTo m)
            {
                points.Add(m.To);
            }
            else if (step is PathStep.LineTo l)
            {
                points.Add(l.To);
            }
            else if (step is PathStep.ArcTo a)
            {
                AddArc(points, points[^1], a);
            }
        }

        return points;
    }

    private static void AddArc(List<Point> points, Point from, PathStep.ArcTo arc)
    {
        var (mx, my) = ((from.X + arc.To.X) / 2, (from.Y + arc.To.Y) / 2);
        var (dx, dy) = (arc.To.X - from.X, arc.To.Y - from.Y);
        var half = Math.Sqrt((dx * dx) + (dy * dy)) / 2;
        var rise = Math.Sqrt(Math.Max(0, (arc.Radius * arc.Radius) - (half * half))) / (2 * half) * (arc.Clockwise ? 1 : -1);
        var centre = new Point(mx - (dy * rise), my + (dx * rise));
        var start = Math.Atan2(from.Y - centre.Y, from.X - centre.X);
        var end = Math.Atan2(arc.To.Y - centre.Y, arc.To.X - centre.X);
        var sweep = end - start;
        while (arc.Clockwise && sweep < 0)
        {
            sweep += 2 * Math.PI;
        }

        while (!arc.Clockwise && sweep > 0)
        {
            sweep -= 2 * Math.PI;
        }

        for (var i = 1; i < 8; i++)
        {
            points.Add(new(centre.X + (arc.Radius * Math.Cos(start + (sweep * i / 8))), centre.Y + (arc.Radius * Math.Sin(start + (sweep * i / 8)))));
        }

        points.Add(arc.To);
    }

    // proper meetings; a touch at an end counts for one of the two legs that share it
    private static bool Meet(Point a, Point b, Point c, Point d) =>
        (Side(a, b, c) >= 0) != (Side(a, b, d) >= 0) && (Side(c, d, a) >= 0) != (Side(c, d, b) >= 0);

    private static Point MeetingOf(Point a, Point b, Point c, Point d)
    {
        var (from, to) = (Side(c, d, a), Side(c, d, b));
        var share = from == to ? 0 : from / (from - to);
        return new(a.X + ((b.X - a.X) * share), a.Y + ((b.Y - a.Y) * share));
    }

    private static double Side(Point a, Point b, Point p) => ((b.X - a.X) * (p.Y - a.Y)) - ((b.Y - a.Y) * (p.X - a.X));
}
