using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>The revision table: stands on the title block and grows upward, heads at the foot, newest line on top.</summary>
internal static class RevisionTable
{
    private const double RowMm = 6.2;
    private const double LineMm = 4;
    private static readonly ImmutableArray<(double X, string Head)> Columns = [(0, "REV"), (13, "DATE"), (41, "WHAT CHANGED"), (134, "WHERE"), (157, "BY")];

    /// <summary>Adds the table and returns its top; nothing when there is no revision.</summary>
    public static double Paint(TitleBlockPainter.Cells cells, Box block, ImmutableArray<RevisionLine> revisions, int most)
    {
        if (revisions.IsEmpty)
        {
            return block.Y;
        }

        var y = block.Y - RowMm;
        Row(cells, y, RowMm, [.. Columns.Select(c => ImmutableArray.Create(c.Head))], FaceWeight.Medium, Ink.Secondary);
        var hidden = revisions.Length - most;
        if (hidden > 0)
        {
            y -= RowMm;
            Row(cells, y, RowMm, [[], [], [$"{hidden.ToString(CultureInfo.InvariantCulture)} earlier revisions are not listed here"], [], []], FaceWeight.Medium, Ink.Secondary);
        }

        foreach (var line in revisions.Skip(Math.Max(0, hidden)))
        {
            var values = Values(cells, line);
            var height = RowMm + (LineMm * (values.Max(v => v.Length) - 1));
            y -= height;
            Row(cells, y, height, values, FaceWeight.Medium, Ink.Black);
        }

        Frame(cells, Box.FromEdges(block.X, y, block.Right, block.Y));
        return y;
    }

    private static ImmutableArray<ImmutableArray<string>> Values(TitleBlockPainter.Cells cells, RevisionLine line)
    {
        ImmutableArray<string> texts = [line.Rev, line.Date, line.Changed, line.Where, line.By];
        return [.. texts.Select((t, i) => i == 2 ? [.. TextFit.Wrap(t, Room(cells, i), 2.5).Take(3)] : ImmutableArray.Create(TextFit.Ellipsis(t, Room(cells, i), 2.5)))];
    }

    private static double Room(TitleBlockPainter.Cells cells, int column) =>
        cells.Scaled((column + 1 < Columns.Length ? Columns[column + 1].X : 180) - Columns[column].X) - 4;

    private static void Row(TitleBlockPainter.Cells cells, double y, double height, ImmutableArray<ImmutableArray<string>> values, FaceWeight weight, Rgb colour)
    {
        cells.Add(new PathItem(Outline.Line(cells.Box.X, y, cells.Box.Right, y)) { Stroke = new(Ink.Black, 0.18) });
        for (var i = 0; i < values.Length; i++)
        {
            var textY = y + 4.3;
            foreach (var text in values[i].Where(t => t.Length > 0))
            {
                cells.Add(new TextItem(text, new(cells.Box.X + cells.Scaled(Columns[i].X) + 2, textY), 2.5) { Role = ItemRole.Lettering, Weight = weight, Colour = colour });
                textY += LineMm;
            }
        }
    }

    private static void Frame(TitleBlockPainter.Cells cells, Box table)
    {
        cells.Add(new PathItem(Outline.Polyline([new(table.X, table.Bottom), new(table.X, table.Y), new(table.Right, table.Y)])) { Stroke = new(Ink.Black, 0.5) });
        foreach (var (x, _) in Columns.Skip(1))
        {
            var at = table.X + cells.Scaled(x);
            cells.Add(new PathItem(Outline.Line(at, table.Y, at, table.Bottom)) { Stroke = new(Ink.Black, 0.18) });
        }
    }
}
