using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>
/// A column of a table. <paramref name="Cell"/> gives what stands in a row's cell when the column has that width in mm; an endless width asks for it in one line.
/// </summary>
internal sealed record SheetColumn<TRow>(string Head, Func<TRow, double, TableCell> Cell)
{
    public TextAnchor Align { get; init; }

    /// <summary>What a row's cell must have at the least, mm; null: all it wants.</summary>
    public Func<TRow, double>? LeastMm { get; init; }

    /// <summary>A head that stands above several neighbouring columns.</summary>
    public string? Group { get; init; }

    /// <summary>A second head for what stands in the lower lines of a cell; the first then stands 5 mm above it.</summary>
    public string? Under { get; init; }

    /// <summary>Room kept right of right-aligned figures, mm.</summary>
    public double MarkMm { get; init; }

    /// <summary>What stands in that room, or nothing.</summary>
    public Func<TRow, CellPart?>? Mark { get; init; }

    /// <summary>How far below the base line of the row a first line of larger letters stands, mm.</summary>
    public double DropMm { get; init; }
}

/// <summary>
/// Rows in columns that take their widths from all the rows given, so that every page has the same. A cell too long for its column goes on in a line below.
/// For sheets whose cells mix parts (swatch and code, mark and id, two facts above each other) and that paint heads, rules and rows themselves, in several places of one width:
/// connectors and cut list. <see cref="Pages.TextTable{T}"/> is for pages of words: it paints itself whole, breaks heads and balances widths by the lines they save, and knows one kind of words a column.
/// </summary>
internal sealed class SheetTable<TRow>
    where TRow : class
{
    private readonly ImmutableArray<SheetColumn<TRow>> columns;
    private readonly ImmutableArray<double> needs;
    private readonly ImmutableArray<double> leasts;
    private readonly ImmutableArray<TableColumn> places;

    // by row: its cells in the columns as wide as they are
    private readonly Dictionary<TRow, TableCell[]> cells = new(ReferenceEqualityComparer.Instance);

    public SheetTable(ImmutableArray<SheetColumn<TRow>> columns, IReadOnlyList<TRow> rows, double left, double width, double gapMm = 1.3)
    {
        (this.columns, Left, Width, GapMm) = (columns, left, width, gapMm);
        needs = [.. columns.Select(c => Math.Max(HeadMm(c), rows.Count == 0 ? 0 : rows.Max(r => c.Cell(r, double.PositiveInfinity).WidthMm + c.MarkMm)))];
        leasts = [.. columns.Select((c, i) => c.LeastMm is { } least ? Math.Min(needs[i], Math.Max(HeadMm(c), rows.Count == 0 ? 0 : rows.Max(least))) : needs[i])];
        places = TableColumns.Place(left, width, needs, leasts, gapMm);
    }

    private SheetTable(SheetTable<TRow> like, double left, double width, double rowMm)
    {
        (columns, Left, Width, GapMm, needs, leasts, RowMm, LineMm) = (like.columns, left, width, like.GapMm, like.needs, like.leasts, rowMm, like.LineMm);
        places = TableColumns.Place(left, width, needs, leasts, GapMm);
    }

    /// <summary>The same columns for the same rows at another place, in another width or with rows of another height, mm.</summary>
    public SheetTable<TRow> At(double left, double width, double? rowMm = null) => new(this, left, width, rowMm ?? RowMm);

    public double Left { get; }

    public double Width { get; }

    public double GapMm { get; }

    /// <summary>The height of a row with one line, mm.</summary>
    public double RowMm { get; init; } = 5.5;

    /// <summary>From line to line within a row, mm.</summary>
    public double LineMm { get; init; } = 3.8;

    /// <summary>The least width that holds every word, mm.</summary>
    public double LeastWidthMm => leasts.Sum() + (GapMm * (columns.Length - 1)) + 0.1;

    /// <summary>The width in which nothing is wrapped, mm.</summary>
    public double WantedWidthMm => needs.Sum() + (GapMm * (columns.Length - 1)) + 0.1;

    public TableColumn this[int column] => places[column];

    public double HeightOf(TRow row)
    {
        var lines = 1;
        foreach (var cell in CellsOf(row))
        {
            lines = Math.Max(lines, cell.Lines.Length);
        }

        return RowMm + ((lines - 1) * LineMm);
    }

    /// <summary>The heads on one base line, group heads on another 5 mm above.</summary>
    public void PaintHeads(Pen pen, double baseY)
    {
        for (var i = 0; i < columns.Length; i++)
        {
            var (column, place) = (columns[i], places[i]);
            var (x, style) = column.Align switch
            {
                TextAnchor.End => (place.Right - column.MarkMm, TextStyle.Bold.Right),
                TextAnchor.Middle => (place.Middle, TextStyle.Bold.Middle),
                _ => (place.Left, TextStyle.Bold),
            };
            pen.Text(column.Head, x, column.Under is null ? baseY : baseY - 5, place.Width + 0.01, style);
            pen.Text(column.Under ?? "", x, baseY, place.Width + 0.01, style);
        }

        foreach (var group in columns.Zip(places).Where(c => c.First.Group is not null).GroupBy(c => c.First.Group!, StringComparer.Ordinal))
        {
            pen.Text(group.Key, (group.First().Second.Left + group.Last().Second.Right) / 2, baseY - 5, group.Last().Second.Right - group.First().Second.Left + 4, TextStyle.Bold.Middle);
        }
    }

    /// <summary>The left and right edge of the columns under a group head, or null.</summary>
    public (double Left, double Right)? Group(string name)
    {
        var own = columns.Zip(places).Where(c => c.First.Group == name).Select(c => c.Second).ToList();
        return own.Count == 0 ? null : (own[0].Left, own[^1].Right);
    }

    /// <summary>Paints a row whose upper edge is <paramref name="top"/>; gives its lower edge.</summary>
    public double PaintRow(Pen pen, TRow row, double top)
    {
        for (var i = 0; i < columns.Length; i++)
        {
            var (column, place) = (columns[i], places[i]);
            var y = top + (RowMm / 2) + 1.25 + column.DropMm;
            if (column.Mark?.Invoke(row) is { } mark)
            {
                mark.Paint(pen, place.Right - mark.WidthMm, y - column.DropMm);
            }

            foreach (var line in CellsOf(row)[i].Lines)
            {
                Paint(pen, line, column, place, y);
                y += LineMm;
            }
        }

        return top + HeightOf(row);
    }

    // a lone text hangs from its anchor, so that figures keep to the edge also where they are narrower than planned
    private static void Paint(Pen pen, CellLine line, SheetColumn<TRow> column, TableColumn place, double y)
    {
        var edge = column.Align switch { TextAnchor.End => place.Right - column.MarkMm, TextAnchor.Middle => place.Middle, _ => place.Left };
        if (line.Parts is [CellText text])
        {
            pen.Text(text.Text, edge, y, text.WidthMm + 0.01, text.Style with { Anchor = column.Align }, text.Tag);
            return;
        }

        line.Paint(pen, column.Align switch { TextAnchor.End => edge - line.WidthMm, TextAnchor.Middle => edge - (line.WidthMm / 2), _ => edge }, y);
    }

    private TableCell[] CellsOf(TRow row)
    {
        if (!cells.TryGetValue(row, out var known))
        {
            cells.Add(row, known = new TableCell[columns.Length]);
            for (var i = 0; i < known.Length; i++)
            {
                known[i] = columns[i].Cell(row, places[i].Width + 0.005);
            }
        }

        return known;
    }

    // where a viewer's own bold face is wider, a head may take half of the gap that parts it from the next
    private double HeadMm(SheetColumn<TRow> column)
    {
        var plannedMm = Math.Max(Pen.Width(column.Head, TextStyle.Bold), Pen.Width(column.Under ?? "", TextStyle.Bold));
        return Math.Max(plannedMm, (plannedMm * PlanWidths.OwnBoldOverPlanned) - (GapMm / 2)) + column.MarkMm;
    }
}
