using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Sheets;

/// <summary>Draws what stands beside the bundles: lengths on dimension lines, splices, cuts, flags and discs.</summary>
internal sealed class WallChartMarks(WallChartProblem problem, ChartPlan chart, ChartPen pen, double dx, double dy, bool isToScale)
{
    public void Lengths()
    {
        var inBand = chart.Stretches.GroupBy(s => s.Node).ToDictionary(g => g.Key, g => g.Sum(s => s.BandLanes));
        foreach (var mark in chart.Lengths)
        {
            var text = WallChartStyle.Caption(problem.Subject.NodeEdges[mark.Index], inBand.GetValueOrDefault(mark.Index));
            var box = mark.Box.Move(dx, dy);
            var (at, other) = (Moved(mark.At), Moved(mark.Other));
            if (Math.Abs(at.Y - other.Y) < 0.01)
            {
                var (x0, x1) = (Math.Min(at.X, other.X), Math.Max(at.X, other.X));
                var isBelow = box.Centre.Y > at.Y;
                var y = isBelow ? box.Bottom - 1.2 - 3.6 : box.Bottom - 1.2;
                pen.Dimension(new(x0, y), new(x1, y), hasTicks: true, isToScale && !mark.IsToScale);
                pen.Text(text, (x0 + x1) / 2, isBelow ? y + 3.4 : y - 0.9, WallChartStyle.TextMm, anchor: TextAnchor.Middle);
            }
            else
            {
                var (y0, y1) = (Math.Min(at.Y, other.Y), Math.Max(at.Y, other.Y));
                var isLeft = box.Centre.X < at.X;
                var x = isLeft ? box.Right - 1.2 : box.X + 1.2;
                pen.Dimension(new(x, y0), new(x, y1), hasTicks: true, isToScale && !mark.IsToScale);
                pen.Text(text, x + (isLeft ? -1.6 : 1.6), ((y0 + y1) / 2) + 1.25, WallChartStyle.TextMm, anchor: isLeft ? TextAnchor.End : TextAnchor.Start);
            }
        }
    }

    public void Splices()
    {
        foreach (var splice in chart.Splices)
        {
            var own = problem.Subject.Splices[splice.Splice].Splice;
            var feed = Moved(splice.Dots[0]);
            if (splice.Label is { } label)
            {
                Label(own, label, feed);
            }

            for (var i = 1; i < splice.Dots.Length; i++)
            {
                pen.Circle(Moved(splice.Dots[i]), 0.9, 0, Ink.Black, role: ItemRole.Edge);
            }

            pen.Circle(feed, 1.25, 0.35, Ink.Black, Ink.Paper);
        }
    }

    private void Label(Planning.Splice splice, PlacedMark label, Point feed)
    {
        var box = label.Box.Move(dx, dy);
        var at = Moved(label.At);
        pen.Line(feed.X, feed.Y, at.X, at.Y, 0.85, Ink.Paper, ItemRole.LaneDress);
        pen.Line(feed.X, feed.Y, at.X, at.Y, 0.25);
        var station = WallChartProblem.StationText(splice.StationMm);
        if (Math.Abs(feed.X - at.X) < 0.01)
        {
            var isBelow = box.Centre.Y > feed.Y;
            var top = isBelow ? at.Y + 3.2 : at.Y - 0.8 - 3.6;
            pen.Text(splice.Id, at.X, top, WallChartStyle.TextMm, FaceWeight.Bold, TextAnchor.Middle);
            pen.Text(station, at.X, top + 3.6, WallChartStyle.TextMm, anchor: TextAnchor.Middle);
        }
        else
        {
            var isLeft = box.Centre.X < feed.X;
            var x = at.X + (isLeft ? -0.7 : 0.7);
            var anchor = isLeft ? TextAnchor.End : TextAnchor.Start;
            pen.Text(splice.Id, x, at.Y - 0.3, WallChartStyle.TextMm, FaceWeight.Bold, anchor);
            pen.Text(station, x, at.Y + 3.2, WallChartStyle.TextMm, anchor: anchor);
        }
    }

    public void Cuts()
    {
        for (var i = 0; i < chart.Cuts.Length; i++)
        {
            var cut = chart.Cuts[i];
            var letter = ((char)('a' + i)).ToString();
            var box = cut.Letter.Move(dx, dy);
            var (from, to) = (Moved(cut.From), Moved(cut.To));
            var r = problem.Style.Metrics.CutMm / 2 - 0.4;
            var away = cut.IsHorizontalBundle ? new Point(0, Math.Sign(box.Centre.Y - from.Y)) : new Point(Math.Sign(box.Centre.X - from.X), 0);
            var centre = new Point(to.X + (away.X * (r + 1.4)), to.Y + (away.Y * (r + 1.4)));
            pen.Line(from.X, from.Y, centre.X - (away.X * r), centre.Y - (away.Y * r), 0.5);
            pen.Circle(centre, r, 0.5, Ink.Paper);
            pen.Text(letter, centre.X, centre.Y + 0.95, WallChartStyle.TextMm, FaceWeight.Bold, TextAnchor.Middle);
        }
    }

    public void Flags()
    {
        foreach (var mark in chart.Flags)
        {
            pen.Flag(problem.FlagNumbers[mark.Index], problem.FlagText(mark.Index), mark.Box.Move(dx, dy), WallChartStyle.FlagCapMm);
        }

        foreach (var mark in chart.Discs)
        {
            pen.Disc(problem.FlagNumbers[mark.Index], mark.Box.Move(dx, dy).Centre, problem.Style.Metrics.DiscMm / 2);
        }
    }

    private Point Moved(Point p) => new(p.X + dx, p.Y + dy);
}
