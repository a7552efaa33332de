using System.Text;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>
/// An outline as the data of an SVG path, h and v where a line is level or upright: absolute commands for a single run, relative ones (less than half as
/// long) for the many small runs of a tracer. Relative steps are taken between rounded places, so that roundings do not add up.
/// </summary>
internal static class SvgPath
{
    public static string Of(Outline outline, StringBuilder work)
    {
        work.Clear();
        var relative = HasSeveralRuns(outline);
        var (at, start) = ((X: 0L, Y: 0L), (X: 0L, Y: 0L));
        foreach (var step in outline.Steps)
        {
            var from = relative ? at : (X: 0, Y: 0);
            switch (step)
            {
                case PathStep.MoveTo(var to):
                    start = Pair(work.Append(relative ? 'm' : 'M'), to, from);
                    at = start;
                    break;
                case PathStep.LineTo(var to):
                    at = Line(work, to, at, from, relative);
                    break;
                case PathStep.ArcTo(var to, var radius, var clockwise):
                    work.Append(relative ? 'a' : 'A').AppendNumber(radius).Append(' ').AppendNumber(radius).Append(" 0 0 ").Append(clockwise ? '1' : '0').Append(' ');
                    at = Pair(work, to, from);
                    break;
                case PathStep.CurveTo(var one, var two, var to):
                    Pair(work.Append(relative ? 'c' : 'C'), one, from);
                    Pair(work.Append(' '), two, from);
                    at = Pair(work.Append(' '), to, from);
                    break;
                default:
                    work.Append(relative ? 'z' : 'Z');
                    at = start;
                    break;
            }
        }

        return work.ToString();
    }

    private static bool HasSeveralRuns(Outline outline)
    {
        var runs = 0;
        foreach (var step in outline.Steps)
        {
            runs += step is PathStep.MoveTo ? 1 : 0;
        }

        return runs > 1;
    }

    // places in thousandths
    private static (long X, long Y) Line(StringBuilder d, Point to, (long X, long Y) at, (long X, long Y) from, bool relative)
    {
        var (x, y) = (SvgNumber.Thousandths(to.X), SvgNumber.Thousandths(to.Y));
        if (y == at.Y)
        {
            d.Append(relative ? 'h' : 'H').AppendThousandths(x - from.X);
        }
        else if (x == at.X)
        {
            d.Append(relative ? 'v' : 'V').AppendThousandths(y - from.Y);
        }
        else
        {
            d.Append(relative ? 'l' : 'L').AppendThousandths(x - from.X).Append(' ').AppendThousandths(y - from.Y);
        }

        return (x, y);
    }

    private static (long X, long Y) Pair(StringBuilder d, Point p, (long X, long Y) from)
    {
        var (x, y) = (SvgNumber.Thousandths(p.X), SvgNumber.Thousandths(p.Y));
        d.AppendThousandths(x - from.X).Append(' ').AppendThousandths(y - from.Y);
        return (x, y);
    }
}
