using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>What is said of readings: below a way where to test first and what is its own, at the foot of the page what holds for every way on it.</summary>
internal static class TraceFoot
{
    private const double LineMm = 4.4;
    private const double FirstMm = 6;
    private const double RuleMm = 2;

    private const string Common = "The volts printed at the solid wedge: the fault lies beyond it. About 0 V: before it, towards the source. Volts of the source on the far side of the load: the return is open, the reading comes through the load. ≥, ≤: still good. "
        + "Any joint may lose 0.1 V, the ground side 0.2 V, the whole feed side 0.5 V, measured under load (common practice, no source).";

    public static double OwnMm(ImmutableArray<string> lines, TraceStop? first) => (first is null ? 0 : FirstMm) + (lines.Length * LineMm);

    /// <summary>Gives the height below.</summary>
    public static double PaintOwn(Pen pen, ImmutableArray<string> lines, TraceStop? first, Box area)
    {
        var y = area.Y;
        if (first is not null)
        {
            var words = $"TEST HERE FIRST: {(first.Name == PointWords.OfNode(first.Node) ? EndText.OfNode(first.Node) : first.Name)}";
            Wedge(pen, area.X + 4, y + 2.75);
            pen.Letters(LineBreaker.Lines(words, area.Width - 7, TextStyle.Bold)[0], area.X + 6.5, y + 4, TextStyle.Bold);
            y += FirstMm;
        }

        foreach (var line in lines)
        {
            pen.Letters(line, area.X, y + 3.4, TextStyle.Plain);
            y += LineMm;
        }

        return y;
    }

    public static double CommonMm(double widthMm) => RuleMm + (LineBreaker.Lines(Common, widthMm).Length * LineMm);

    /// <summary>At the bottom of an area.</summary>
    public static void PaintCommon(Pen pen, Box area)
    {
        var y = area.Bottom - CommonMm(area.Width);
        pen.Rule(area.X, y + (RuleMm / 2), area.Right, 0.7);
        y += RuleMm;
        foreach (var line in LineBreaker.Lines(Common, area.Width))
        {
            y += LineMm;
            pen.Letters(line, area.X, y - 0.4, TextStyle.Plain);
        }
    }

    /// <summary>A wedge that points right to <paramref name="tipX"/>.</summary>
    public static void Wedge(Pen pen, double tipX, double y) =>
        pen.Add(new PathItem(Outline.Polyline([new(tipX, y), new(tipX - 3.6, y - 1.9), new(tipX - 3.6, y + 1.9)], closed: true)) { Fill = Ink.Caution });
}
