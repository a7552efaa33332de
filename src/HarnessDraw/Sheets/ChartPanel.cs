using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Sheets;

/// <summary>A block beside the chart: its size, where it would rather stand, and how it is drawn into its box.</summary>
internal sealed record ChartPanel(Panel Size, Action<ChartPen, Box> Draw)
{
    /// <summary>A panel that may be left to a sheet of its own when there is no room (the connector views).</summary>
    public bool MayBeLeftOut { get; init; }

    public static ChartPanel Of(double width, double height, double wantX, double wantY, Action<ChartPen, Box> draw) => new(new(width, height, wantX, wantY), draw);

    /// <summary>The rule and the head of a panel; gives the y below them.</summary>
    public static double Head(ChartPen pen, Box box, string title)
    {
        pen.Line(box.X, box.Y + 0.25, box.Right, box.Y + 0.25, 0.5);
        pen.Text(TextFit.Ellipsis(title, box.Width, 3.5, FaceWeight.Bold), box.X, box.Y + 6, 3.5, FaceWeight.Bold);
        return box.Y + 9;
    }
}
