using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>A line of a connector's table: one wire in its cavity, or neighbouring spare cavities with the same plug.</summary>
internal sealed record ConnectorLine(ImmutableArray<ConnectorRow> Rows)
{
    public bool IsSpare => Rows[0].Wire is null;

    public string? Half => Rows[0].Half;

    public string SpareWords => Rows[0].Plug is { } plug ? $"spare, {plug}" : "spare, no plug";

    /// <summary>The rows in order, spare neighbours taken together.</summary>
    public static ImmutableArray<ConnectorLine> Of(IEnumerable<ConnectorRow> rows)
    {
        var lines = new List<List<ConnectorRow>>();
        foreach (var row in rows)
        {
            if (lines.Count > 0 && lines[^1][0] is { Wire: null } last && row.Wire is null && last.Plug == row.Plug && last.Half == row.Half)
            {
                lines[^1].Add(row);
            }
            else
            {
                lines.Add([row]);
            }
        }

        return [.. lines.Select(l => new ConnectorLine([.. l]))];
    }
}

/// <summary>The cavities of connectors as a table in cavity order.</summary>
internal sealed class ConnectorTable
{
    public const double HeadMm = 10.6;
    private const double NameGapMm = 2;
    private readonly SheetTable<ConnectorRow> table;
    private readonly int wordsColumn;
    private readonly double namesMm;
    private readonly double wordsLeft;

    public ConnectorTable(ImmutableArray<SheetColumn<ConnectorRow>> columns, IReadOnlyList<ConnectorRow> rows, double left, double width, double rowMm)
        : this(
            new SheetTable<ConnectorRow>(columns, [.. rows.Where(r => r.Wire is not null)], left, width, gapMm: 1.15) { RowMm = rowMm, LineMm = 3.85 },
            columns.TakeWhile(c => c.Head != ConnectorColumns.WordsHead).Count())
    {
    }

    private ConnectorTable(SheetTable<ConnectorRow> table, int wordsColumn)
    {
        (this.table, this.wordsColumn) = (table, wordsColumn);
        wordsLeft = table[wordsColumn].Left;
        namesMm = wordsLeft - table.Left - NameGapMm;
    }

    /// <summary>The same table at another place, in another width or with other rows, mm.</summary>
    public ConnectorTable At(double left, double width, double? rowMm = null) => new(table.At(left, width, rowMm ?? table.RowMm), wordsColumn);

    public double LeftMm => table.Left;

    public double WidthMm => table.Width;

    /// <summary>The height of a line of one row, mm.</summary>
    public double RowMm => table.RowMm;

    public double LeastWidthMm => table.LeastWidthMm;

    public double WantedWidthMm => table.WantedWidthMm;

    public double HeightOf(ConnectorLine line) => line.IsSpare ? table.RowMm + ((SpareNames(line).Count - 1) * table.LineMm) : table.HeightOf(line.Rows[0]);

    public double HeightOf(IEnumerable<ConnectorLine> lines) => lines.Sum(HeightOf);

    /// <summary>The heads in <see cref="HeadMm"/> below <paramref name="top"/>.</summary>
    public void PaintHead(Pen pen, double top, bool ruled = true)
    {
        if (table.Group(ConnectorColumns.VoltsHead) is { } volts)
        {
            pen.Tint(Box.FromEdges(volts.Left - 1, top, volts.Right + 1, top + HeadMm - 0.25));
        }

        table.PaintHeads(pen, top + 9);
        if (ruled)
        {
            pen.Rule(table.Left, top + HeadMm, table.Left + table.Width, 0.5);
        }
    }

    /// <summary>The lines from <paramref name="top"/>, a rule under each; gives the y below the last.</summary>
    public double PaintLines(Pen pen, IReadOnlyList<ConnectorLine> lines, double top)
    {
        var y = top;
        for (var i = 0; i < lines.Count; i++)
        {
            y = lines[i].IsSpare ? PaintSpare(pen, lines[i], y) : table.PaintRow(pen, lines[i].Rows[0], y);
            var ends = i == lines.Count - 1 || lines[i].Half != lines[i + 1].Half;
            pen.Rule(table.Left, y, table.Left + table.Width, ends ? 0.35 : 0.18, ends ? Ink.Black : Ink.Hairline);
        }

        return y;
    }

    private double PaintSpare(Pen pen, ConnectorLine line, double top)
    {
        var y = top + (table.RowMm / 2) + 1.25;
        pen.Text(line.SpareWords, wordsLeft, y, table.Left + table.Width - wordsLeft, TextStyle.Plain.Quiet);
        foreach (var names in SpareNames(line))
        {
            var x = table.Left;
            foreach (var row in names)
            {
                pen.Text(row.Cavity, x, y, namesMm + 0.01, TextStyle.Bold, new Tag { Cavity = $"{row.Connector}:{row.Cavity}" });
                x += Pen.Width(row.Cavity, TextStyle.Bold) + NameGapMm;
            }

            y += table.LineMm;
        }

        return top + HeightOf(line);
    }

    private List<List<ConnectorRow>> SpareNames(ConnectorLine line)
    {
        List<List<ConnectorRow>> lines = [[]];
        var x = 0.0;
        foreach (var row in line.Rows)
        {
            var width = Pen.Width(row.Cavity, TextStyle.Bold);
            if (x > 0 && x + width > namesMm)
            {
                lines.Add([]);
                x = 0;
            }

            lines[^1].Add(row);
            x += width + NameGapMm;
        }

        return lines;
    }
}
