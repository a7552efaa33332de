using System.Collections.Immutable;
using Svg;
using Svg.Pathing;

namespace HarnessDraw.Drawing.Outlines;

/// <summary>One SVG shape as steps; arcs and quadratic curves become cubic ones, so that any map keeps them true.</summary>
internal sealed class SvgSteps
{
    private readonly ImmutableArray<PathStep>.Builder steps = ImmutableArray.CreateBuilder<PathStep>();
    private readonly Affine affine;
    private (double X, double Y) at;
    private (double X, double Y) start;
    private (double X, double Y)? lastCubic;
    private (double X, double Y)? lastQuadratic;

    private SvgSteps(Affine affine) => this.affine = affine;

    /// <summary>The outline of a shape element; null for any other element.</summary>
    public static Outline? Of(SvgElement element, Affine affine)
    {
        var s = new SvgSteps(affine);
        switch (element)
        {
            case SvgPath path when path.PathData is not null:
                foreach (var segment in path.PathData)
                {
                    s.Add(segment);
                }

                break;
            case SvgPolygon polygon: // a polyline is one too
                s.Points(polygon.Points, polygon is not SvgPolyline);
                break;
            case SvgLine line:
                s.MoveTo(line.StartX.Value, line.StartY.Value);
                s.LineTo(line.EndX.Value, line.EndY.Value);
                break;
            case SvgRectangle r:
                s.Rectangle(r.X.Value, r.Y.Value, r.Width.Value, r.Height.Value, r.CornerRadiusX.Value, r.CornerRadiusY.Value);
                break;
            case SvgCircle c:
                s.Ellipse(c.CenterX.Value, c.CenterY.Value, c.Radius.Value, c.Radius.Value);
                break;
            case SvgEllipse e:
                s.Ellipse(e.CenterX.Value, e.CenterY.Value, e.RadiusX.Value, e.RadiusY.Value);
                break;
            default:
                return null;
        }

        return new(s.steps.ToImmutable());
    }

    private void Add(SvgPathSegment segment)
    {
        var (cubic, quadratic) = (lastCubic, lastQuadratic);
        (lastCubic, lastQuadratic) = (null, null);
        switch (segment)
        {
            case SvgMoveToSegment m:
                var to = End(m);
                MoveTo(to.X, to.Y);
                break;
            case SvgLineSegment l:
                var end = End(l);
                LineTo(end.X, end.Y);
                break;
            case SvgCubicCurveSegment c:
                var two = Place(c.SecondControlPoint, c.IsRelative, at);
                var one = float.IsNaN(c.FirstControlPoint.X) ? Mirror(cubic) : Place(c.FirstControlPoint, c.IsRelative, at);
                CurveTo(one, two, End(c));
                lastCubic = two;
                break;
            case SvgQuadraticCurveSegment q:
                var control = float.IsNaN(q.ControlPoint.X) ? Mirror(quadratic) : Place(q.ControlPoint, q.IsRelative, at);
                Quadratic(control, End(q));
                lastQuadratic = control;
                break;
            case SvgArcSegment a:
                Arc(a.RadiusX, a.RadiusY, a.Angle, a.Size == SvgArcSize.Large, a.Sweep == SvgArcSweep.Positive, End(a));
                break;
            case SvgClosePathSegment:
                Close();
                break;
        }
    }

    // level and upright lines leave the other number open
    private (double X, double Y) End(SvgPathSegment s) =>
        (float.IsNaN(s.End.X) ? at.X : s.End.X + (s.IsRelative ? at.X : 0), float.IsNaN(s.End.Y) ? at.Y : s.End.Y + (s.IsRelative ? at.Y : 0));

    private static (double X, double Y) Place(System.Drawing.PointF p, bool relative, (double X, double Y) at) => relative ? (at.X + p.X, at.Y + p.Y) : (p.X, p.Y);

    private (double X, double Y) Mirror((double X, double Y)? control) => control is { } c ? ((2 * at.X) - c.X, (2 * at.Y) - c.Y) : at;

    private void MoveTo(double x, double y)
    {
        steps.Add(new PathStep.MoveTo(affine.Map(x, y)));
        (at, start) = ((x, y), (x, y));
    }

    private void LineTo(double x, double y)
    {
        steps.Add(new PathStep.LineTo(affine.Map(x, y)));
        at = (x, y);
    }

    private void CurveTo((double X, double Y) one, (double X, double Y) two, (double X, double Y) to)
    {
        steps.Add(new PathStep.CurveTo(affine.Map(one.X, one.Y), affine.Map(two.X, two.Y), affine.Map(to.X, to.Y)));
        at = to;
    }

    private void Quadratic((double X, double Y) c, (double X, double Y) to) => CurveTo(
        (at.X + ((c.X - at.X) * 2 / 3), at.Y + ((c.Y - at.Y) * 2 / 3)), (to.X + ((c.X - to.X) * 2 / 3), to.Y + ((c.Y - to.Y) * 2 / 3)), to);

    private void Close()
    {
        steps.Add(new PathStep.Close());
        at = start;
    }

    private void Points(SvgPointCollection points, bool closed)
    {
        for (var i = 0; i + 1 < points.Count; i += 2)
        {
            var (x, y) = (points[i].Value, points[i + 1].Value);
            if (i == 0)
            {
                MoveTo(x, y);
            }
            else
            {
                LineTo(x, y);
            }
        }

        if (closed && steps.Count > 0)
        {
            Close();
        }
    }

    private void Ellipse(double x, double y, double rx, double ry)
    {
        if (rx > 0 && ry > 0)
        {
            MoveTo(x - rx, y);
            Arc(rx, ry, 0, false, true, (x + rx, y));
            Arc(rx, ry, 0, false, true, (x - rx, y));
            Close();
        }
    }

    private void Rectangle(double x, double y, double width, double height, double rx, double ry)
    {
        if (width <= 0 || height <= 0)
        {
            return;
        }

        rx = Math.Clamp(rx > 0 ? rx : ry, 0, width / 2);
        ry = Math.Clamp(ry > 0 ? ry : rx, 0, height / 2);
        MoveTo(x + rx, y);
        LineTo(x + width - rx, y);
        Arc(rx, ry, 0, false, true, (x + width, y + ry));
        LineTo(x + width, y + height - ry);
        Arc(rx, ry, 0, false, true, (x + width - rx, y + height));
        LineTo(x + rx, y + height);
        Arc(rx, ry, 0, false, true, (x, y + height - ry));
        LineTo(x, y + ry);
        Arc(rx, ry, 0, false, true, (x + rx, y));
        Close();
    }

    // SVG 1.1 appendix F.6: from end points to centre, then one cubic for every quarter turn at most
    private void Arc(double rx, double ry, double angleDegrees, bool large, bool sweep, (double X, double Y) to)
    {
        (rx, ry) = (Math.Abs(rx), Math.Abs(ry));
        if (to == at)
        {
            return;
        }

        if (rx < 1e-9 || ry < 1e-9)
        {
            LineTo(to.X, to.Y);
            return;
        }

        var (sin, cos) = Math.SinCos(angleDegrees * Math.PI / 180);
        var (hx, hy) = ((at.X - to.X) / 2, (at.Y - to.Y) / 2);
        var (px, py) = ((cos * hx) + (sin * hy), (cos * hy) - (sin * hx));
        var grow = Math.Sqrt(Math.Max(1, (px * px / (rx * rx)) + (py * py / (ry * ry))));
        (rx, ry) = (rx * grow, ry * grow);
        var share = ((rx * rx * ry * ry) - (rx * rx * py * py) - (ry * ry * px * px)) / ((rx * rx * py * py) + (ry * ry * px * px));
        var k = (large == sweep ? -1 : 1) * Math.Sqrt(Math.Max(0, share));
        var (cx, cy) = (k * rx * py / ry, -k * ry * px / rx);
        var from = Math.Atan2((py - cy) / ry, (px - cx) / rx);
        var turn = Math.Atan2((-py - cy) / ry, (-px - cx) / rx) - from;
        turn += sweep && turn < 0 ? 2 * Math.PI : !sweep && turn > 0 ? -2 * Math.PI : 0;
        var (mx, my) = ((at.X + to.X) / 2, (at.Y + to.Y) / 2);
        (double X, double Y) Place(double ex, double ey) => ((cos * (cx + (rx * ex))) - (sin * (cy + (ry * ey))) + mx, (sin * (cx + (rx * ex))) + (cos * (cy + (ry * ey))) + my);
        var parts = (int)Math.Ceiling((Math.Abs(turn) / (Math.PI / 2)) - 1e-9);
        for (var i = 0; i < parts; i++)
        {
            var (t0, t1) = (from + (turn * i / parts), from + (turn * (i + 1) / parts));
            var pull = 4.0 / 3 * Math.Tan((t1 - t0) / 4);
            var ((s0, c0), (s1, c1)) = (Math.SinCos(t0), Math.SinCos(t1));
            CurveTo(Place(c0 - (pull * s0), s0 + (pull * c0)), Place(c1 + (pull * s1), s1 - (pull * c1)), i + 1 == parts ? to : Place(c1, s1));
        }
    }
}
