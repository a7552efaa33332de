using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>
/// The body's lines behind the chart, warped so that they lie where the loads were drawn, rounded, and broken wherever something is lettered or drawn.
/// </summary>
internal static class WallChartBody
{
    private const double SampleMm = 25;
    private const int Smoothings = 6;
    private const double StepMm = 2;
    private const double LeastRunMm = 30;
    private const double ClearMm = 1.5;

    public static GroupItem Paint(ChartFit fit, bool blackInk)
    {
        var lines = fit.Problem.Subject.Plan.Harness.Layout.Outline;
        var items = ImmutableArray.CreateBuilder<Item>();
        if (!lines.IsEmpty)
        {
            var (mapX, mapY) = Warps(fit);
            var taken = Taken(fit);
            var stroke = blackInk ? new Stroke(Ink.Black, 0.35) { DashMm = [0.35, 1.6] } : new Stroke(Ink.Hairline, 0.7);
            // the largest, the body, lies under what it holds: filled shapes are seen as one thing where their lines are broken
            var body = lines.MaxBy(Extent);
            foreach (var line in lines.OrderBy(l => l != body))
            {
                var points = Smoothed([.. Sampled(line).Select(p => new Point(mapX.Map(-p.Xmm), mapY.Map(-p.Ymm)))], line.Closed);
                if (!blackInk && (line == body || line.Closed))
                {
                    items.Add(new PathItem(Outline.Polyline(points, closed: true)) { Role = ItemRole.Backdrop, Fill = line == body ? Ink.BodyFill : Ink.PartFill });
                }

                foreach (var run in Visible(line.Closed ? [.. points, points[0]] : points, taken))
                {
                    items.Add(new PathItem(Outline.Polyline(run)) { Role = ItemRole.Backdrop, Stroke = stroke });
                }
            }
        }

        return new GroupItem([new GroupItem(items.ToImmutable()) { Name = "x", Clip = fit.Frame.Border.Frame.Grow(-0.5) }]) { Name = "body", Role = ItemRole.Backdrop };
    }

    private static double Extent(BodyLine line) =>
        line.Points.IsEmpty ? 0 : (line.Points.Max(p => p.Xmm) - line.Points.Min(p => p.Xmm)) * (line.Points.Max(p => p.Ymm) - line.Points.Min(p => p.Ymm));

    private static ImmutableArray<Box> Taken(ChartFit fit) =>
        [.. fit.PanelPlaces.Select(p => p.Box.Grow(ClearMm)), fit.Frame.TitleBox.Grow(ClearMm), .. fit.Chart.Occupied.Select(b => b.Move(fit.MoveX, fit.MoveY).Grow(ClearMm))];

    // a point every 25 mm of the vehicle, corners included
    private static IEnumerable<PlanPoint> Sampled(BodyLine line)
    {
        var last = line.Closed ? line.Points.Length : line.Points.Length - 1;
        for (var i = 0; i < last; i++)
        {
            var (a, b) = (line.Points[i], line.Points[(i + 1) % line.Points.Length]);
            var steps = Math.Max(1, (int)Math.Ceiling(Math.Sqrt(((b.Xmm - a.Xmm) * (b.Xmm - a.Xmm)) + ((b.Ymm - a.Ymm) * (b.Ymm - a.Ymm))) / SampleMm));
            for (var k = 0; k < steps; k++)
            {
                yield return new(a.Xmm + ((b.Xmm - a.Xmm) * k / steps), a.Ymm + ((b.Ymm - a.Ymm) * k / steps));
            }
        }

        if (!line.Closed && line.Points.Length > 0)
        {
            yield return line.Points[^1];
        }
    }

    // weights 1-2-1; the ends of an open line stay
    private static Point[] Smoothed(Point[] points, bool closed)
    {
        for (var pass = 0; pass < Smoothings && points.Length > 2; pass++)
        {
            var n = points.Length;
            var next = (Point[])points.Clone();
            for (var i = closed ? 0 : 1; i < (closed ? n : n - 1); i++)
            {
                var (before, after) = (points[(i + n - 1) % n], points[(i + 1) % n]);
                next[i] = new((before.X + (2 * points[i].X) + after.X) / 4, (before.Y + (2 * points[i].Y) + after.Y) / 4);
            }

            points = next;
        }

        return points;
    }

    // the runs of a line that lie free
    private static List<List<Point>> Visible(Point[] points, ImmutableArray<Box> taken)
    {
        var runs = new List<List<Point>>();
        List<Point>? run = null;
        for (var i = 1; i < points.Length; i++)
        {
            var (a, b) = (points[i - 1], points[i]);
            var steps = Math.Max(1, (int)Math.Ceiling(Math.Sqrt(((b.X - a.X) * (b.X - a.X)) + ((b.Y - a.Y) * (b.Y - a.Y))) / StepMm));
            for (var k = 0; k < steps; k++)
            {
                var p = new Point(a.X + ((b.X - a.X) * k / steps), a.Y + ((b.Y - a.Y) * k / steps));
                if (IsTaken(p, taken))
                {
                    run = null;
                    continue;
                }

                if (run is null)
                {
                    runs.Add(run = []);
                }

                run.Add(p);
            }
        }

        // what is left of a line between cards and lists would be seen as a mark of its own
        runs.RemoveAll(r => r.Count * StepMm < LeastRunMm);
        return runs;
    }

    private static bool IsTaken(Point p, ImmutableArray<Box> taken)
    {
        foreach (var box in taken)
        {
            if (p.X > box.X && p.X < box.Right && p.Y > box.Y && p.Y < box.Bottom)
            {
                return true;
            }
        }

        return false;
    }

    private static (BodyWarp X, BodyWarp Y) Warps(ChartFit fit)
    {
        var xs = new List<(double, double)>();
        var ys = new List<(double, double)>();
        foreach (var card in fit.Chart.Cards)
        {
            var place = fit.Problem.Subject.PlaceAt(fit.Problem.Subject.Cards[card.Card].Node);
            xs.Add((-place.Xmm, card.Box.Centre.X + fit.MoveX));
            ys.Add((-place.Ymm, card.Box.Centre.Y + fit.MoveY));
        }

        return (BodyWarp.Fit(xs), BodyWarp.Fit(ys));
    }
}
