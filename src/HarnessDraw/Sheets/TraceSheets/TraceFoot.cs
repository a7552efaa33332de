using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>The foot of a trace: the red wedge explained, then what the readings mean.</summary>
internal static class TraceFoot
{
    private const double LineMm = 4.4;

    public static double HeightOf(IReadOnlyList<string> sentences, TraceStop? first, double widthMm) =>
        2 + (first is null ? 0 : 6) + (sentences.Sum(s => LineBreaker.Lines(s, widthMm).Length) * LineMm);

    public static void Paint(Pen pen, IReadOnlyList<string> sentences, TraceStop? first, Box box)
    {
        pen.Rule(box.X, box.Y, box.Right, 0.7);
        var y = box.Y + 5.2;
        if (first is not null)
        {
            Wedge(pen, box.X + 4, y - 1.25);
            pen.Letters(LineBreaker.Lines($"TEST HERE FIRST: {(first.Name == PointWords.OfNode(first.Node) ? EndText.OfNode(first.Node) : first.Name)}", box.Width - 7, TextStyle.Bold)[0], box.X + 6.5, y, TextStyle.Bold);
            y += 6;
        }

        foreach (var line in sentences.SelectMany(s => LineBreaker.Lines(s, box.Width)))
        {
            pen.Letters(line, box.X, y - 0.4, TextStyle.Plain);
            y += LineMm;
        }
    }

    /// <summary>A wedge that points right to <paramref name="tipX"/>.</summary>
    public static void Wedge(Pen pen, double tipX, double y) =>
        pen.Add(new PathItem(Outline.Polyline([new(tipX, y), new(tipX - 3.6, y - 1.9), new(tipX - 3.6, y + 1.9)], closed: true)) { Fill = Ink.Caution });
}
