using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>Draws the wires of the chart: bands behind, lanes with round corners, those that cross on top with a white casing.</summary>
internal static class WallChartLanes
{
    public static GroupItem Bands(WallChartProblem problem, ChartPlan chart, double dx, double dy, bool blackInk)
    {
        var pen = new ChartPen(blackInk);
        foreach (var stretch in chart.Stretches)
        {
            var segments = problem.Subject.NodeEdges[stretch.Node].Segments;
            var box = stretch.Box.Grow(1.6).Move(dx, dy);
            for (var i = 0; i < segments.Length; i++)
            {
                var piece = Piece(box, i, segments.Length, stretch.IsHorizontal);
                var words = $"segment {segments[i].Id}, {segments[i].From} to {segments[i].To}, {segments[i].Wires.Length} wires";
                pen.Add(new PathItem(Outline.Rectangle(piece)) { Role = ItemRole.Backdrop, Fill = blackInk ? Ink.Paper : null, Tag = new Tag { Segment = segments[i].Id, Title = words } });
            }
        }

        return pen.Group("bundles");
    }

    private static Box Piece(Box box, int i, int count, bool isHorizontal) => isHorizontal
        ? new(box.X + (box.Width * i / count), box.Y, box.Width / count, box.Height)
        : new(box.X, box.Y + (box.Height * i / count), box.Width, box.Height / count);

    // bundles of more wires than the reader wants lanes of: one body, named by all its wires
    private static void WideBands(ChartPen pen, WallChartProblem problem, ImmutableArray<ChartBand> bands, double dx, double dy)
    {
        var colour = pen.BlackInk ? Ink.Black : Ink.Secondary;
        foreach (var band in bands)
        {
            var tag = new Tag { Title = $"band of {band.Lanes.Length} wires: {string.Join(' ', band.Lanes.Select(l => problem.Subject.Lanes[l].Wire.Id))}" };
            foreach (var outline in (IEnumerable<Outline>)[.. Bodies(band.Pieces, dx, dy), .. band.Corners.Select(c => CornerOf(c, dx, dy))])
            {
                pen.Add(new PathItem(outline) { Role = ItemRole.Edge, Fill = colour, Tag = tag });
            }
        }
    }

    // boxes that follow one another as one outline: forward along one side, back along the other
    private static IEnumerable<Outline> Bodies(ImmutableArray<Box> pieces, double dx, double dy)
    {
        for (var i = 0; i < pieces.Length;)
        {
            var first = i;
            var isHorizontal = i + 1 < pieces.Length && Math.Abs(pieces[i].Right - pieces[i + 1].X) < 1e-6;
            var (there, back) = (new List<Point>(), new List<Point>());
            for (; i < pieces.Length && (i == first || Math.Abs(isHorizontal ? pieces[i - 1].Right - pieces[i].X : pieces[i - 1].Bottom - pieces[i].Y) < 1e-6); i++)
            {
                var b = pieces[i].Move(dx, dy);
                there.AddRange(isHorizontal ? [new(b.X, b.Y), new(b.Right, b.Y)] : [new(b.X, b.Y), new(b.X, b.Bottom)]);
                back.AddRange(isHorizontal ? [new(b.X, b.Bottom), new(b.Right, b.Bottom)] : [new(b.Right, b.Y), new(b.Right, b.Bottom)]);
            }

            back.Reverse();
            yield return Outline.Polyline([.. there, .. back], closed: true);
        }
    }

    private static Outline CornerOf(BandCorner corner, double dx, double dy)
    {
        var (outer, inner, x, y) = corner;
        var (o, i) = (new Point(outer.At.X + dx, outer.At.Y + dy), new Point(inner.At.X + dx, inner.At.Y + dy));
        return new(
        [
            new PathStep.MoveTo(new(o.X + (x * outer.RadiusMm), o.Y)),
            new PathStep.ArcTo(new(o.X, o.Y + (y * outer.RadiusMm)), outer.RadiusMm, x * y < 0),
            new PathStep.LineTo(new(i.X, i.Y + (y * inner.RadiusMm))),
            new PathStep.ArcTo(new(i.X + (x * inner.RadiusMm), i.Y), inner.RadiusMm, x * y > 0),
            new PathStep.Close(),
        ]);
    }

    public static GroupItem Lanes(WallChartProblem problem, ChartPlan chart, double dx, double dy, bool blackInk)
    {
        var pen = new ChartPen(blackInk);
        var lanes = problem.Subject.Lanes;
        var (bands, shown) = chart.Stretches.Any(s => s.BandLanes > 0) ? ChartBands.Of(chart.Lanes) : ([], []);
        WideBands(pen, problem, bands, dx, dy);
        // wires of a splice last: their bars lie over the lanes they cross
        for (var pass = 0; pass < 2; pass++)
        {
            for (var i = 0; i < lanes.Count; i++)
            {
                var (wire, from, to) = lanes[i];
                var isOver = from.Kind == ChartEndKind.Splice || to.Kind == ChartEndKind.Splice || (from.Kind == ChartEndKind.Card && to.Kind == ChartEndKind.Card);
                if (isOver == (pass == 1))
                {
                    foreach (var way in bands.IsEmpty ? [chart.Lanes[i]] : shown[i])
                    {
                        Paint(pen, Rounded(way, dx, dy), wire, i, isOver ? 0.5 : 0);
                    }
                }
            }
        }

        return pen.Group("wires");
    }

    public static void Paint(ChartPen pen, Outline line, Planning.Wire wire, int index, double casing)
    {
        var style = new LaneStyle(WireColour.Parse(wire.Colour)) { WidthMm = wire.AreaMm2 >= 4 ? 1.3 : 1.0, BlackInk = pen.BlackInk, Index = index, CasingMm = casing };
        pen.AddRange(LanePainter.Paint(line, style, new Tag { Wire = wire.Id, Circuit = wire.Circuit, Title = $"{wire.Id} {wire.Colour} {wire.SizeLabel}, {wire.Circuit}: {PointWords.Of(wire.From)} to {PointWords.Of(wire.To)}" }));
    }

    /// <summary>A right-angled line with its corners rounded; a radius never takes more than its share of a leg.</summary>
    public static Outline Rounded(ImmutableArray<LanePoint> points, double dx, double dy)
    {
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        if (points.Length == 0)
        {
            return new([]);
        }

        steps.Add(new PathStep.MoveTo(new(points[0].At.X + dx, points[0].At.Y + dy)));
        var used = 0.0;
        for (var i = 1; i < points.Length; i++)
        {
            var at = points[i].At;
            if (i == points.Length - 1 || points[i].RadiusMm <= 0.01)
            {
                steps.Add(new PathStep.LineTo(new(at.X + dx, at.Y + dy)));
                used = 0;
                continue;
            }

            var (before, after) = (points[i - 1].At, points[i + 1].At);
            var inX = Math.Sign(Math.Round(at.X - before.X, 3));
            var inY = Math.Sign(Math.Round(at.Y - before.Y, 3));
            var outX = Math.Sign(Math.Round(after.X - at.X, 3));
            var outY = Math.Sign(Math.Round(after.Y - at.Y, 3));
            var turn = (inX * outY) - (inY * outX);
            if (turn == 0)
            {
                steps.Add(new PathStep.LineTo(new(at.X + dx, at.Y + dy)));
                used = 0;
                continue;
            }

            var room = Math.Abs(at.X - before.X) + Math.Abs(at.Y - before.Y) - used;
            var next = Math.Abs(after.X - at.X) + Math.Abs(after.Y - at.Y);
            var r = Math.Max(0.01, Math.Min(points[i].RadiusMm, Math.Min(room, i == points.Length - 2 ? next : Math.Max(next / 2, next - points[i + 1].RadiusMm))));
            steps.Add(new PathStep.LineTo(new(at.X - (inX * r) + dx, at.Y - (inY * r) + dy)));
            steps.Add(new PathStep.ArcTo(new(at.X + (outX * r) + dx, at.Y + (outY * r) + dy), r, turn > 0));
            used = r;
        }

        return new(steps.ToImmutable());
    }
}
