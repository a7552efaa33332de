using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>
/// Draws the border of a sheet (frame 0.7, grid border 0.35 with field names, centring marks) and its title block. The whole
/// is one group named 'frame'.
/// </summary>
public static class Frame
{
    private const double MarkerCapMm = 3.5;

    public static FrameLayout Compose(Paper paper, TitleBlock block, FrameOptions? options = null)
    {
        options ??= new FrameOptions();
        var border = GridBorder.Of(paper);
        var items = ImmutableArray.CreateBuilder<Item>();
        items.Add(Rectangle(border.Frame, 0.7));
        items.Add(Rectangle(border.Outer, 0.35));
        AddDivisions(items, border);
        AddNames(items, border);
        var (title, titleBox) = TitleBlockPainter.Paint(border, block, options);
        AddCentringMarks(items, border, options, titleBox);
        items.AddRange(title);
        var inset = Math.Max(3, options.CentringInsideMm);
        var group = new GroupItem(items.ToImmutable()) { Name = "frame" };
        return new([group], border.Frame.Grow(-inset), titleBox) { Border = border };
    }

    private static void AddDivisions(ImmutableArray<Item>.Builder items, GridBorder border)
    {
        var (frame, outer) = (border.Frame, border.Outer);
        foreach (var x in border.Across)
        {
            items.Add(Line(x, outer.Y, x, frame.Y, 0.35));
            items.Add(Line(x, frame.Bottom, x, outer.Bottom, 0.35));
        }

        foreach (var y in border.Down)
        {
            items.Add(Line(outer.X, y, frame.X, y, 0.35));
            items.Add(Line(frame.Right, y, outer.Right, y, 0.35));
        }
    }

    private static void AddNames(ImmutableArray<Item>.Builder items, GridBorder border)
    {
        var (frame, outer) = (border.Frame, border.Outer);
        var half = border.StripMm / 2;
        var columns = Middles(outer.X, border.Across, outer.Right);
        for (var i = 0; i < columns.Length; i++)
        {
            AddName(items, GridBorder.Number(i), columns[i], frame.Y - half);
            if (!border.NamesOnTwoSides)
            {
                AddName(items, GridBorder.Number(i), columns[i], frame.Bottom + half);
            }
        }

        var rows = Middles(outer.Y, border.Down, outer.Bottom);
        for (var i = 0; i < rows.Length; i++)
        {
            AddName(items, GridBorder.Letter(i), frame.Right + half, rows[i]);
            if (!border.NamesOnTwoSides)
            {
                AddName(items, GridBorder.Letter(i), frame.X - half, rows[i]);
            }
        }

        var size = border.Paper.Name.StartsWith("roll", StringComparison.Ordinal) ? "roll" : border.Paper.Name.Replace(" landscape", "", StringComparison.Ordinal).Replace(" portrait", "", StringComparison.Ordinal);
        items.Add(new TextItem(size, new(outer.Right - 2, frame.Bottom + half + 1.25), 2.5) { Role = ItemRole.Lettering, Anchor = TextAnchor.End });
    }

    // the corner fields reach to the outer line
    private static ImmutableArray<double> Middles(double from, ImmutableArray<double> divisions, double to)
    {
        ImmutableArray<double> edges = [from, .. divisions, to];
        return [.. Enumerable.Range(0, edges.Length - 1).Select(i => (edges[i] + edges[i + 1]) / 2)];
    }

    // a W is wider than the strip at full height
    private static void AddName(ImmutableArray<Item>.Builder items, string name, double x, double y)
    {
        var cap = TextMeasure.Width(name, MarkerCapMm) > 4 && !char.IsAsciiDigit(name[0]) ? 2.5 : MarkerCapMm;
        items.Add(new TextItem(name, new(x, y + (cap / 2)), cap) { Role = ItemRole.Lettering, Anchor = TextAnchor.Middle });
    }

    private static void AddCentringMarks(ImmutableArray<Item>.Builder items, GridBorder border, FrameOptions options, Box titleBox)
    {
        var (frame, outer, inside) = (border.Frame, border.Outer, options.CentringInsideMm);
        var (x, y) = (border.Paper.WidthMm / 2, border.Paper.HeightMm / 2);

        // outside only where the title block is
        double Inside(double markX, double markY) => titleBox.Grow(0.1).Contains(new Box(markX, markY, 0, 0)) ? 0 : inside;
        items.Add(Line(x, outer.Y, x, frame.Y + Inside(x, frame.Y), 0.7));
        items.Add(Line(x, outer.Bottom, x, frame.Bottom - Inside(x, frame.Bottom), 0.7));
        items.Add(Line(outer.X, y, frame.X + Inside(frame.X, y), y, 0.7));
        items.Add(Line(outer.Right, y, frame.Right - Inside(frame.Right, y), y, 0.7));
    }

    private static PathItem Rectangle(Box box, double widthMm) =>
        new(Outline.Rectangle(box)) { Stroke = new(Ink.Black, widthMm) { RoundJoin = false } };

    private static PathItem Line(double x1, double y1, double x2, double y2, double widthMm) =>
        new(Outline.Line(x1, y1, x2, y2)) { Stroke = new(Ink.Black, widthMm) };
}
