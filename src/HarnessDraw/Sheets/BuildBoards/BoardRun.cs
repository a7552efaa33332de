using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>
/// A segment as it lies on the board: straight legs with rounded bends between them. The drawn line is as long as the segment: what a bend cuts off the corner is added
/// to the last leg.
/// </summary>
internal sealed record BoardRun(Segment Segment, ImmutableArray<Point> Corners, double BendMm)
{
    // two tangents of a quarter circle less the circle itself
    private const double CutOff = 2 - (Math.PI / 2);

    /// <summary>The drawn line as short straight pieces, for distances.</summary>
    public ImmutableArray<Point> Flat { get; } = Flattened(Corners, BendMm);

    public Point Start => Corners[0];

    public Point End => Corners[^1];

    /// <summary>The unit direction in which it ends.</summary>
    public Point Heading => Unit(Corners[^1] - Corners[^2]);

    /// <summary>Legs in directions that turn by right angles; null where a leg is too short for its bends.</summary>
    public static BoardRun? Of(Segment segment, Point start, double bendMm, params ReadOnlySpan<(Point Direction, double Mm)> legs)
    {
        var corners = ImmutableArray.CreateBuilder<Point>(legs.Length + 1);
        corners.Add(start);
        for (var i = 0; i < legs.Length; i++)
        {
            var mm = legs[i].Mm + (i == legs.Length - 1 ? CutOff * bendMm * (legs.Length - 1) : 0);
            var bends = (i > 0 ? 1 : 0) + (i < legs.Length - 1 ? 1 : 0);
            if (mm < (bends * bendMm) - 1e-9 || (mm <= 0 && legs.Length > 1))
            {
                return null;
            }

            corners.Add(new(corners[^1].X + (legs[i].Direction.X * mm), corners[^1].Y + (legs[i].Direction.Y * mm)));
        }

        return new(segment, corners.ToImmutable(), bendMm);
    }

    public Outline Line()
    {
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        steps.Add(new PathStep.MoveTo(Corners[0]));
        for (var i = 1; i < Corners.Length - 1; i++)
        {
            var (into, outOf) = (Unit(Corners[i] - Corners[i - 1]), Unit(Corners[i + 1] - Corners[i]));
            steps.Add(new PathStep.LineTo(new(Corners[i].X - (into.X * BendMm), Corners[i].Y - (into.Y * BendMm))));
            steps.Add(new PathStep.ArcTo(new(Corners[i].X + (outOf.X * BendMm), Corners[i].Y + (outOf.Y * BendMm)), BendMm, (into.X * outOf.Y) - (into.Y * outOf.X) > 0));
        }

        steps.Add(new PathStep.LineTo(Corners[^1]));
        return new(steps.ToImmutable());
    }

    /// <summary>The point and direction at a distance from the start along the drawn line.</summary>
    public (Point At, Point Direction) Along(double mm)
    {
        var left = mm;
        for (var i = 0; i < Corners.Length - 1; i++)
        {
            var direction = Unit(Corners[i + 1] - Corners[i]);
            var (from, to) = (i > 0 ? BendMm : 0, i < Corners.Length - 2 ? BendMm : 0);
            var straight = Length(Corners[i + 1] - Corners[i]) - from - to;
            if (left <= straight + 1e-9 || i == Corners.Length - 2)
            {
                return (new(Corners[i].X + (direction.X * (from + left)), Corners[i].Y + (direction.Y * (from + left))), direction);
            }

            left -= straight;
            var quarter = BendMm * Math.PI / 2;
            if (left <= quarter)
            {
                return OnBend(Corners, BendMm, i + 1, direction, left / BendMm);
            }

            left -= quarter;
        }

        return (End, Heading);
    }

    private static ImmutableArray<Point> Flattened(ImmutableArray<Point> corners, double bendMm)
    {
        var points = ImmutableArray.CreateBuilder<Point>();
        points.Add(corners[0]);
        for (var i = 1; i < corners.Length - 1; i++)
        {
            for (var step = 0; step <= 6; step++)
            {
                points.Add(OnBend(corners, bendMm, i, Unit(corners[i] - corners[i - 1]), step * Math.PI / 12).At);
            }
        }

        points.Add(corners[^1]);
        return points.ToImmutable();
    }

    private static (Point At, Point Direction) OnBend(ImmutableArray<Point> corners, double bendMm, int corner, Point into, double angle)
    {
        var outOf = Unit(corners[corner + 1] - corners[corner]);
        var (sin, cos) = Math.SinCos(angle);
        var start = new Point(corners[corner].X - (into.X * bendMm), corners[corner].Y - (into.Y * bendMm));
        var at = new Point(start.X + (bendMm * ((into.X * sin) + (outOf.X * (1 - cos)))), start.Y + (bendMm * ((into.Y * sin) + (outOf.Y * (1 - cos)))));
        return (at, new((into.X * cos) + (outOf.X * sin), (into.Y * cos) + (outOf.Y * sin)));
    }

    public static double Length(Point p) => Math.Sqrt((p.X * p.X) + (p.Y * p.Y));

    public static Point Unit(Point p) => Length(p) is > 1e-12 and var mm ? new(p.X / mm, p.Y / mm) : new(1, 0);
}
