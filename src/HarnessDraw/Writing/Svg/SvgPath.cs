using System.Text;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>An outline as the data of an SVG path: absolute commands, h and v where a line is level or upright.</summary>
internal static class SvgPath
{
    public static string Of(Outline outline, StringBuilder work)
    {
        work.Clear();
        var (x, y) = (double.NaN, double.NaN);
        foreach (var step in outline.Steps)
        {
            (x, y) = Append(work, step, x, y);
        }

        return work.ToString();
    }

    private static (double X, double Y) Append(StringBuilder d, PathStep step, double x, double y)
    {
        switch (step)
        {
            case PathStep.MoveTo(var to):
                Pair(d.Append('M'), to);
                return (to.X, to.Y);
            case PathStep.LineTo(var to):
                AppendLine(d, to, x, y);
                return (to.X, to.Y);
            case PathStep.ArcTo(var to, var radius, var clockwise):
                d.Append('A').AppendNumber(radius).Append(' ').AppendNumber(radius).Append(" 0 0 ").Append(clockwise ? '1' : '0').Append(' ');
                Pair(d, to);
                return (to.X, to.Y);
            case PathStep.CurveTo(var one, var two, var to):
                Pair(d.Append('C'), one);
                Pair(d.Append(' '), two);
                Pair(d.Append(' '), to);
                return (to.X, to.Y);
            default:
                d.Append('Z');
                return (double.NaN, double.NaN);
        }
    }

    private static void AppendLine(StringBuilder d, Point to, double x, double y)
    {
        if (to.Y == y)
        {
            d.Append('H').AppendNumber(to.X);
        }
        else if (to.X == x)
        {
            d.Append('V').AppendNumber(to.Y);
        }
        else
        {
            Pair(d.Append('L'), to);
        }
    }

    private static void Pair(StringBuilder d, Point p) => d.AppendNumber(p.X).Append(' ').AppendNumber(p.Y);
}
