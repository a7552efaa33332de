using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>A point on paper in millimetres, x to the right, y downwards, origin at the sheet's top left corner.</summary>
public readonly record struct Point(double X, double Y)
{
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);
    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);
}

/// <summary>An upright rectangle on paper in millimetres.</summary>
public readonly record struct Box(double X, double Y, double Width, double Height)
{
    public double Right => X + Width;
    public double Bottom => Y + Height;
    public Point Centre => new(X + (Width / 2), Y + (Height / 2));

    public static Box FromEdges(double left, double top, double right, double bottom) => new(left, top, right - left, bottom - top);

    public Box Grow(double by) => new(X - by, Y - by, Width + (2 * by), Height + (2 * by));

    public Box Move(double dx, double dy) => new(X + dx, Y + dy, Width, Height);

    public Box Union(Box other) => FromEdges(Math.Min(X, other.X), Math.Min(Y, other.Y), Math.Max(Right, other.Right), Math.Max(Bottom, other.Bottom));

    public bool Overlaps(Box other) => X < other.Right && other.X < Right && Y < other.Bottom && other.Y < Bottom;

    public bool Contains(Box other) => X <= other.X && Y <= other.Y && Right >= other.Right && Bottom >= other.Bottom;
}

/// <summary>One step of an outline. A closed set: move, line, circular arc, cubic curve, close, and many closed polygons at once.</summary>
public abstract record PathStep
{
    private PathStep() { }

    public sealed record MoveTo(Point To) : PathStep;
    public sealed record LineTo(Point To) : PathStep;

    /// <summary>A circular arc of at most 180 degrees to <paramref name="To"/>; clockwise as seen on paper (y down).</summary>
    public sealed record ArcTo(Point To, double Radius, bool Clockwise) : PathStep;
    public sealed record CurveTo(Point Control1, Point Control2, Point To) : PathStep;
    public sealed record Close : PathStep;

    /// <summary>
    /// Closed polygons, each what a move to its first corner, lines to the others and a close are: for the many small bars of a tracer, which as steps of their
    /// own would be most of what a sheet holds. <paramref name="Ends"/> has the number of corners up to the end of each.
    /// </summary>
    public sealed record Polygons(ImmutableArray<Point> Corners, ImmutableArray<int> Ends) : PathStep
    {
        public int Count => Ends.Length;

        /// <summary>Where a pen stands after them.</summary>
        public Point LastBegin => this[Count - 1][0];

        /// <summary>The corners of one polygon, at least two.</summary>
        public ReadOnlySpan<Point> this[int i] => Corners.AsSpan()[(i == 0 ? 0 : Ends[i - 1])..Ends[i]];
    }
}

/// <summary>An outline in millimetres; may hold several sub-paths.</summary>
public sealed record Outline(ImmutableArray<PathStep> Steps)
{
    public static Outline Line(double x1, double y1, double x2, double y2) =>
        new([new PathStep.MoveTo(new(x1, y1)), new PathStep.LineTo(new(x2, y2))]);

    public static Outline Polyline(IEnumerable<Point> points, bool closed = false)
    {
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        foreach (var p in points)
        {
            steps.Add(steps.Count == 0 ? new PathStep.MoveTo(p) : new PathStep.LineTo(p));
        }

        if (closed)
        {
            steps.Add(new PathStep.Close());
        }

        return new(steps.ToImmutable());
    }

    public static Outline Circle(Point centre, double radius)
    {
        var left = new Point(centre.X - radius, centre.Y);
        var right = new Point(centre.X + radius, centre.Y);
        return new([new PathStep.MoveTo(left), new PathStep.ArcTo(right, radius, true), new PathStep.ArcTo(left, radius, true), new PathStep.Close()]);
    }

    public static Outline Rectangle(Box b, double radius = 0)
    {
        if (radius <= 0)
        {
            return Polyline([new(b.X, b.Y), new(b.Right, b.Y), new(b.Right, b.Bottom), new(b.X, b.Bottom)], closed: true);
        }

        var r = Math.Min(radius, Math.Min(b.Width, b.Height) / 2);
        return new(
        [
            new PathStep.MoveTo(new(b.X + r, b.Y)),
            new PathStep.LineTo(new(b.Right - r, b.Y)), new PathStep.ArcTo(new(b.Right, b.Y + r), r, true),
            new PathStep.LineTo(new(b.Right, b.Bottom - r)), new PathStep.ArcTo(new(b.Right - r, b.Bottom), r, true),
            new PathStep.LineTo(new(b.X + r, b.Bottom)), new PathStep.ArcTo(new(b.X, b.Bottom - r), r, true),
            new PathStep.LineTo(new(b.X, b.Y + r)), new PathStep.ArcTo(new(b.X + r, b.Y), r, true),
            new PathStep.Close(),
        ]);
    }
}
