using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The rows of the cut list: columns take their widths from all rows, so that every page has the same.</summary>
internal sealed class CutListTable
{
    public const double RowMm = 5.45;
    public const double HeadMm = 7;
    private const double GapMm = 2.0;
    private const double TickMm = 3.8;
    private static readonly TextStyle Plain = TextStyle.Plain;
    private static readonly TextStyle Length = TextStyle.Bold.At(3.5);
    private readonly Box frame;
    private readonly ImmutableArray<Column> columns;
    private readonly ImmutableArray<TableColumn> places;

    public CutListTable(ImmutableArray<CutRow> rows, TerminalKeys terminals, SheetOptions options, Box frame)
    {
        (Rows, Terminals, this.frame) = (rows, terminals, frame);
        Keys = new OptionKeys(rows.Select(r => r.Wire.Builds));
        columns = [.. ColumnsFor(options.Units)];
        places = TableColumns.Place(frame.X + 4, frame.Width - 8, [.. columns.Select(Need)], [.. columns.Select(c => Math.Min(c.LeastMm ?? double.MaxValue, Need(c)))], GapMm);
    }

    public ImmutableArray<CutRow> Rows { get; }

    public OptionKeys Keys { get; }

    public TerminalKeys Terminals { get; }

    /// <summary>Paints head and rows; gives the y below the last row.</summary>
    public double Paint(Pen pen, ImmutableArray<CutRow> rows, double top)
    {
        pen.Tint(new Box(frame.X, top, frame.Width, HeadMm));
        pen.Rule(frame.X, top, frame.Right, 0.35);
        foreach (var (column, place) in columns.Zip(places))
        {
            var style = column.Right ? TextStyle.Bold.Right : column.Ticks ? TextStyle.Bold.Middle : TextStyle.Bold;
            pen.Text(column.Head, column.Right ? place.Right - column.MarkMm : column.Ticks ? place.Middle : place.Left, top + 4.8, place.Width + GapMm, style);
        }

        var y = top + HeadMm;
        pen.Rule(frame.X, y, frame.Right, 0.35);
        for (var i = 0; i < rows.Length; i++)
        {
            foreach (var (column, place) in columns.Zip(places))
            {
                column.Paint(pen, rows[i], place, y + 4);
            }

            y += RowMm;
            var changes = i == rows.Length - 1 || rows[i].Reel != rows[i + 1].Reel;
            pen.Rule(frame.X, y, frame.Right, changes ? 0.35 : 0.18, changes ? Ink.Black : Ink.Hairline);
        }

        return y;
    }

    private double Need(Column column) => Math.Max(Pen.Width(column.Head, TextStyle.Bold) + column.MarkMm, Rows.Max(column.Need));

    private IEnumerable<Column> ColumnsFor(UnitsShown units)
    {
        var inchFirst = units == UnitsShown.Inch;
        yield return Text("No.", r => Figure(r.Number, 0), Plain, right: true);
        yield return Text("wire", r => r.Wire.Id, TextStyle.Bold, tag: true) with { LeastMm = 12 };
        yield return new("colour", r => 7 + Pen.Width(r.Wire.Colour), (pen, r, at, y) =>
        {
            pen.Swatch(r.Wire.Colour, at.Left, y);
            pen.Text(r.Wire.Colour, at.Left + 7, y, at.Width - 7, Plain, new Tag { For = r.Wire.Id });
        });
        yield return Text("size", r => r.Wire.Awg is null ? $"{r.Wire.SizeLabel}" : r.Wire.SizeLabel, Plain, right: true, tag: true) with { Head = Rows.Any(r => r.Wire.Awg is not null) ? "size" : "mm²" };
        yield return inchFirst ? LengthColumn("cut in", r => Inches(r.CutIn)) : LengthColumn("cut mm", r => Figure(r.Wire.CutLengthMm, 0));
        yield return inchFirst ? Text("mm", r => Figure(r.Wire.CutLengthMm, 0), Plain, right: true) : Text("in", r => Inches(r.CutIn), Plain, right: true);
        yield return Text("route", r => Figure(r.Wire.PathLengthMm, 0), Plain, right: true);
        yield return Text("allow", r => Figure(r.AllowanceMm, 0), Plain, right: true);
        foreach (var (name, end) in new (string, Func<Wire, WireEnd>)[] { ("end A", w => w.From), ("end B", w => w.To) })
        {
            yield return new(name, r => EndText.Width(end(r.Wire)), (pen, r, at, y) => EndText.Paint(pen, end(r.Wire), at, y)) { LeastMm = 18 };
            yield return Text("part", r => Terminals.KeyOf(end(r.Wire)), Plain);
            yield return Text("strip", r => Figure(end(r.Wire).StripMm, 1), Plain, right: true);
        }

        if (!Keys.IsEmpty)
        {
            yield return Text("opt", r => Keys.KeyOf(r.Wire.Builds), TextStyle.Bold);
        }

        foreach (var tick in new[] { "cut", "A", "B", "test" })
        {
            yield return new(tick, _ => TickMm + 1.5, (pen, _, at, y) => pen.Frame(new Box(at.Middle - (TickMm / 2), y - 3.15, TickMm, TickMm), 0.25)) { Ticks = true };
        }
    }

    private static Column Text(string head, Func<CutRow, string> text, TextStyle style, bool right = false, bool tag = false) =>
        new(head, r => Pen.Width(text(r), style), (pen, r, at, y) =>
            pen.Text(text(r), right ? at.Right : at.Left, y, at.Width + 0.01, right ? style.Right : style, tag ? new Tag { For = r.Wire.Id } : null))
        { Right = right };

    // the first thing seen; an unknown length leaves a box to write in, E marks an estimate
    private Column LengthColumn(string head, Func<CutRow, string> text)
    {
        var mark = Rows.Any(r => r.Wire.Estimated) ? 2.8 : 0;
        return new(head, r => r.Wire.CutLengthMm is null ? 14 : Pen.Width(text(r), Length) + mark, (pen, r, at, y) =>
        {
            if (r.Wire.CutLengthMm is null)
            {
                pen.Frame(new Box(at.Right - 14, y - 3.3, 14, 4.1), 0.25);
                return;
            }

            pen.Text(text(r), at.Right - mark, y + 0.4, at.Width + 0.01, Length.Right);
            if (r.Wire.Estimated)
            {
                pen.Text("E", at.Right, y, 3, TextStyle.Bold.Right);
            }
        })
        { Right = true, MarkMm = mark };
    }

    private static string Figure(double? value, int decimals) =>
        value is { } known ? Math.Round(known, decimals, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture) : "–";

    private static string Inches(double? value) => value is { } known ? known.ToString("0.##", CultureInfo.InvariantCulture) : "–";

    private sealed record Column(string Head, Func<CutRow, double> Need, Action<Pen, CutRow, TableColumn, double> Paint)
    {
        public bool Right { get; init; }

        public bool Ticks { get; init; }

        /// <summary>What the column keeps when the table is too wide; null: all it needs.</summary>
        public double? LeastMm { get; init; }

        /// <summary>Room right of right-aligned figures, mm.</summary>
        public double MarkMm { get; init; }
    }
}
