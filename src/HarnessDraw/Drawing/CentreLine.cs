using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>
/// One sub-path of an outline measured along its length, so that things can be set out at a distance from its start: lines
/// and arcs exactly, curves as short chords.
/// </summary>
public sealed class CentreLine
{
    private const int ChordsPerCurve = 24;
    private readonly Piece[] pieces;

    private CentreLine(Piece[] pieces)
    {
        this.pieces = pieces;
        LengthMm = pieces.Length == 0 ? 0 : pieces[^1].StartMm + pieces[^1].LengthMm;
    }

    public double LengthMm { get; }

    /// <summary>The sub-paths of an outline, those without length left out.</summary>
    public static ImmutableArray<CentreLine> Of(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var lines = ImmutableArray.CreateBuilder<CentreLine>();
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        var (start, at) = (default(Point), default(Point));
        foreach (var step in outline.Steps)
        {
            switch (step)
            {
                case PathStep.MoveTo(var to):
                    Finish();
                    (start, at) = (to, to);
                    break;
                case PathStep.LineTo(var to):
                    AddLine(pieces, at, to);
                    at = to;
                    break;
                case PathStep.ArcTo(var to, var radius, var clockwise):
                    AddArc(pieces, at, to, radius, clockwise);
                    at = to;
                    break;
                case PathStep.CurveTo curve:
                    AddCurve(pieces, at, curve);
                    at = curve.To;
                    break;
                case PathStep.Polygons polygons:
                    for (var i = 0; i < polygons.Count; i++)
                    {
                        Finish();
                        AddPolygon(pieces, polygons[i]);
                    }

                    (start, at) = (polygons.LastBegin, polygons.LastBegin);
                    break;
                default:
                    AddLine(pieces, at, start);
                    at = start;
                    break;
            }
        }

        Finish();
        return lines.ToImmutable();

        void Finish()
        {
            if (pieces.Count > 0)
            {
                lines.Add(new(pieces.ToArray()));
                pieces.Clear();
            }
        }
    }

    /// <summary>The point at a distance from the start and the unit direction there; beyond the ends the line goes straight on.</summary>
    public (Point At, Point Direction) At(double distanceMm) => At(Index(distanceMm), distanceMm);

    /// <summary>The point at a distance along and a distance beside the line, positive to the right of its direction.</summary>
    /// <param name="piece">The number of the piece when it is known, as by <see cref="StraightPiece"/>.</param>
    public Point Beside(double distanceMm, double rightMm, int? piece = null)
    {
        var (at, direction) = At(piece ?? Index(distanceMm), distanceMm);
        return new(at.X - (direction.Y * rightMm), at.Y + (direction.X * rightMm));
    }

    /// <summary>The number of the straight piece on which the whole stretch lies; null where it bends.</summary>
    public int? StraightPiece(double fromMm, double toMm)
    {
        var index = Index(fromMm);
        return index == Index(toMm) && pieces[index].Radius == 0 ? index : null;
    }

    private (Point At, Point Direction) At(int piece, double distanceMm)
    {
        ref readonly var on = ref pieces[piece];
        return on.At(distanceMm - on.StartMm);
    }

    private int Index(double distanceMm)
    {
        var i = 0;
        while (i + 1 < pieces.Length && pieces[i + 1].StartMm <= distanceMm)
        {
            i++;
        }

        return i;
    }

    private static double End(ImmutableArray<Piece>.Builder pieces) => pieces.Count == 0 ? 0 : pieces[^1].StartMm + pieces[^1].LengthMm;

    private static void AddLine(ImmutableArray<Piece>.Builder pieces, Point a, Point b)
    {
        var length = Length(b - a);
        if (length > 1e-9)
        {
            pieces.Add(new(End(pieces), length, a, new((b.X - a.X) / length, (b.Y - a.Y) / length), 0, true));
        }
    }

    private static void AddPolygon(ImmutableArray<Piece>.Builder pieces, ReadOnlySpan<Point> corners)
    {
        for (var i = 0; i < corners.Length; i++)
        {
            AddLine(pieces, corners[i], corners[(i + 1) % corners.Length]);
        }
    }

    private static void AddArc(ImmutableArray<Piece>.Builder pieces, Point a, Point b, double radius, bool clockwise)
    {
        var chord = Length(b - a);
        if (chord < 1e-9 || radius <= 0)
        {
            AddLine(pieces, a, b);
            return;
        }

        // a radius too small for the chord grows to the half circle, as SVG and the canvas do it
        var r = Math.Max(radius, chord / 2);
        var half = Math.Asin(Math.Min(1, chord / (2 * r)));
        var turn = clockwise ? -half : half;
        var along = new Point((b.X - a.X) / chord, (b.Y - a.Y) / chord);
        var direction = new Point((along.X * Math.Cos(turn)) - (along.Y * Math.Sin(turn)), (along.X * Math.Sin(turn)) + (along.Y * Math.Cos(turn)));
        pieces.Add(new(End(pieces), 2 * half * r, a, direction, r, clockwise));
    }

    private static void AddCurve(ImmutableArray<Piece>.Builder pieces, Point a, PathStep.CurveTo c)
    {
        var last = a;
        for (var i = 1; i <= ChordsPerCurve; i++)
        {
            var t = (double)i / ChordsPerCurve;
            var u = 1 - t;
            double Mix(double p0, double p1, double p2, double p3) => (u * u * u * p0) + (3 * u * u * t * p1) + (3 * u * t * t * p2) + (t * t * t * p3);
            var next = new Point(Mix(a.X, c.Control1.X, c.Control2.X, c.To.X), Mix(a.Y, c.Control1.Y, c.Control2.Y, c.To.Y));
            AddLine(pieces, last, next);
            last = next;
        }
    }

    private static double Length(Point p) => Math.Sqrt((p.X * p.X) + (p.Y * p.Y));

    // Radius 0: a straight piece
    private readonly record struct Piece(double StartMm, double LengthMm, Point From, Point Direction, double Radius, bool Clockwise)
    {
        public (Point At, Point Direction) At(double mm)
        {
            if (Radius == 0)
            {
                return (new(From.X + (Direction.X * mm), From.Y + (Direction.Y * mm)), Direction);
            }

            var turn = (Clockwise ? 1 : -1) * Math.Clamp(mm, 0, LengthMm) / Radius;
            var side = Clockwise ? Radius : -Radius;
            var centre = new Point(From.X - (Direction.Y * side), From.Y + (Direction.X * side));
            var (sin, cos) = Math.SinCos(turn);
            var d = new Point((Direction.X * cos) - (Direction.Y * sin), (Direction.X * sin) + (Direction.Y * cos));
            var at = new Point(centre.X + (d.Y * side), centre.Y - (d.X * side));
            var beyond = mm - Math.Clamp(mm, 0, LengthMm);
            return (new(at.X + (d.X * beyond), at.Y + (d.Y * beyond)), d);
        }
    }
}
