using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Sheets;

/// <summary>One shape of a panel: its size, where it would rather stand, and how it is drawn into its box.</summary>
internal sealed record PanelShape(Panel Size, Action<ChartPen, Box> Draw);

/// <summary>A block beside the chart, in one or several shapes, the one it would rather have first.</summary>
internal sealed record ChartPanel(ImmutableArray<PanelShape> Shapes)
{
    /// <summary>Tells it from the others of its chart.</summary>
    public string Name { get; init; } = "";

    /// <summary>The sentence that stands for the panel when there is no room for what another sheet of the set shows as well; null: it must be shown.</summary>
    public string? Elsewhere { get; init; }

    /// <summary>The panel with such sentences among its own; null: it takes none.</summary>
    public Func<string, ChartPanel>? Saying { get; init; }

    /// <summary>What says more and stands in its place when everything else has found its own and there is still room; null: nothing does.</summary>
    public ChartPanel? Fuller { get; init; }

    /// <summary>The panels without those that another sheet shows; one of the others says where they are.</summary>
    public static ImmutableArray<ChartPanel> Fewer(IReadOnlyList<ChartPanel> panels)
    {
        var words = string.Join(' ', panels.Select(p => p.Elsewhere).OfType<string>());
        return words.Length == 0 ? [.. panels] : [.. panels.Where(p => p.Elsewhere is null).Select(p => p.Saying is { } say ? say(words) with { Name = p.Name } : p)];
    }

    public static ChartPanel Of(double width, double height, double wantX, double wantY, Action<ChartPen, Box> draw) => new([new(new(width, height, wantX, wantY), draw)]);

    /// <summary>The first shape and, where it finds no room, those of the others.</summary>
    public ChartPanel Or(params ReadOnlySpan<ChartPanel> others) => this with { Shapes = [.. Shapes, .. others.ToArray().SelectMany(o => o.Shapes)] };

    /// <summary>How much more than one line a head takes in that width, mm.</summary>
    public static double HeadRowsMm(string title, double width) => (HeadLines(title, width).Length - 1) * HeadRowMm;

    private const double HeadRowMm = 5.2;

    private static ImmutableArray<string> HeadLines(string title, double width) => TextFit.Wrap(title, width, 3.5, FaceWeight.Bold);

    /// <summary>The rule and the head of a panel, whole, in as many lines as it needs; gives the y below them.</summary>
    public static double Head(ChartPen pen, Box box, string title)
    {
        pen.Line(box.X, box.Y + 0.25, box.Right, box.Y + 0.25, 0.5);
        var y = box.Y + 6;
        foreach (var line in HeadLines(title, box.Width))
        {
            pen.Text(line, box.X, y, 3.5, FaceWeight.Bold);
            y += HeadRowMm;
        }

        return y - HeadRowMm + 3;
    }
}
