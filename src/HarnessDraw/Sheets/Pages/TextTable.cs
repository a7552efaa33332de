using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.Pages;

/// <summary>One column of a table: words that wrap, a wire's swatch with its code, a box to write in, or a box to tick.</summary>
internal sealed record TextColumn<T>(string Head, Func<T, string> Text)
{
    public TextStyle Style { get; init; } = TextStyle.Plain;
    public bool Right { get; init; }

    /// <summary>More words below, in a style of their own.</summary>
    public Func<T, string>? Under { get; init; }
    public TextStyle UnderStyle { get; init; } = TextStyle.Plain;

    /// <summary>A wire colour whose swatch stands before the words, or null.</summary>
    public Func<T, string?>? Swatch { get; init; }
    public Func<T, Tag?>? Tag { get; init; }

    /// <summary>Width of a box to write a reading in, mm; 0: none.</summary>
    public double BoxMm { get; init; }

    /// <summary>Which rows have the box; null: all.</summary>
    public Func<T, bool>? HasBox { get; init; }

    /// <summary>Side of a box to tick, mm; 0: none.</summary>
    public double TickMm { get; init; }

    /// <summary>Width and height of a picture, mm; 0: none.</summary>
    public double DrawnMm { get; init; }
    public double DrawnHeightMm { get; init; }

    /// <summary>The picture of a row with its upper left corner at a point; empty: none.</summary>
    public Func<T, Point, ImmutableArray<Item>>? Picture { get; init; }

    /// <summary>The narrowest the column may get before words break, mm.</summary>
    public double LeastMm { get; init; } = 22;

    /// <summary>What the column keeps while wider ones give way, mm; 0: no more than its longest word.</summary>
    public double FloorMm { get; init; }

    public static TextColumn<T> Box(string head, double widthMm, Func<T, bool>? hasBox = null) => new(head, _ => "") { BoxMm = widthMm, HasBox = hasBox };

    public static TextColumn<T> Drawn(string head, double widthMm, double heightMm, Func<T, Point, ImmutableArray<Item>> picture) => new(head, _ => "") { DrawnMm = widthMm, DrawnHeightMm = heightMm, Picture = picture };

    public static TextColumn<T> Tick(string head) => new(head, _ => "") { TickMm = 3.8 };
}

/// <summary>
/// Rows of words in columns: widths come from all rows, so that every page has the same; long words wrap, nothing is cut. <see cref="SheetTable{TRow}"/> is for cells of several parts, and says why there are two.
/// </summary>
internal sealed class TextTable<T>
{
    private const double GroupLineMm = 5.2;
    private const double UsualRowMm = 5.45;
    private const double GapMm = 2.4;
    private const double SwatchMm = 7;
    private const double PictureGapMm = 0.6;
    private const double StepMm = 3;
    private const int MostJudged = 150;
    private readonly Box area;
    private readonly ImmutableArray<TextColumn<T>> columns;
    private readonly Lazy<Setting> setting;

    public TextTable(ImmutableArray<T> rows, Box area, params ImmutableArray<TextColumn<T>> columns)
    {
        (Rows, this.area, this.columns) = (rows, area, columns);
        setting = new(Set);
    }

    private TextTable(TextTable<T> like) => (Rows, area, columns, setting, GroupOf, LeastRowMm) = (like.Rows, like.area, like.columns, like.setting, like.GroupOf, like.LeastRowMm);

    /// <summary>Where the columns stand, and how each row is set, once it was asked for: they stay as they are however the rows are shared among pages.</summary>
    private sealed record Setting(ImmutableArray<TableColumn> Places, int HeadLines, RowSetting?[] Rows);

    private sealed record RowSetting(ImmutableArray<(ImmutableArray<string> Words, ImmutableArray<string> Under)> Cells, int MostLines, double PictureMm);

    /// <summary>The same table with its lines closer, as they stand in the tables of cavities; boxes to write in keep their height.</summary>
    public TextTable<T> Closer() => new(this) { LineMm = 3.9, RowMm = 5, LeastRowMm = LeastRowMm > UsualRowMm ? LeastRowMm : 5 };

    public ImmutableArray<T> Rows { get; }

    private double LineMm { get; init; } = 4.3;

    private double RowMm { get; init; } = UsualRowMm;

    /// <summary>The heading a row stands under; null: none.</summary>
    public Func<T, string>? GroupOf { get; init; }

    /// <summary>Least height of a row, mm: room for a reading.</summary>
    public double LeastRowMm { get; init; } = UsualRowMm;

    public double HeadMm => 2.8 + (setting.Value.HeadLines * LineMm);

    /// <summary>Of a row by its place in <see cref="Rows"/>.</summary>
    public double HeightOf(int row) => Math.Max(Math.Max(LeastRowMm, RowMm + ((SettingOf(row).MostLines - 1) * LineMm)), SettingOf(row).PictureMm);

    private RowSetting SettingOf(int row) => setting.Value.Rows[row] ??= Set(Rows[row]);

    private RowSetting Set(T row)
    {
        var cells = columns.Zip(setting.Value.Places, (c, p) => (Words: WordsOf(c, p, row), Under: UnderOf(c, p, row))).ToImmutableArray();
        return new(cells, cells.Max(c => Math.Max(1, c.Words.Length + c.Under.Length)), columns.Max(c => c.Picture?.Invoke(row, new(0, 0)) is not { IsEmpty: false } ? 0 : c.DrawnHeightMm + (2 * PictureGapMm)));
    }

    private Setting Set()
    {
        var room = area.Width - (GapMm * (columns.Length - 1));
        var places = TableColumns.Place(area.X, area.Width, Widths(room), [.. columns.Select(c => Least(c with { FloorMm = 0, LeastMm = 14 }))], GapMm);
        return new(places, columns.Zip(places).Select(c => HeadOf(c.First, c.Second).Length).DefaultIfEmpty(1).Max(), new RowSetting?[Rows.Length]);
    }

    public double PaintHead(Pen pen, double top)
    {
        pen.Tint(new Box(area.X, top, area.Width, HeadMm));
        pen.Rule(area.X, top, area.Right, 0.35);
        foreach (var (column, place) in columns.Zip(setting.Value.Places))
        {
            var lines = HeadOf(column, place);
            var y = top + HeadMm - 2.3 - ((lines.Length - 1) * LineMm);
            foreach (var line in lines)
            {
                Put(pen, line, column, place, y, TextStyle.Bold, null);
                y += LineMm;
            }
        }

        pen.Rule(area.X, top + HeadMm, area.Right, 0.35);
        return top + HeadMm;
    }

    public double GroupMm(string words) => 2.8 + (LineBreaker.Lines(words, area.Width, GroupStyle(words)).Length * GroupLineMm);

    public double PaintGroup(Pen pen, string words, double top)
    {
        var style = GroupStyle(words);
        var y = top + 0.6;
        foreach (var line in LineBreaker.Lines(words, area.Width, style))
        {
            y += GroupLineMm;
            pen.Letters(line, area.X, y, style);
        }

        pen.Rule(area.X, y + 2.2, area.Right, 0.18);
        return y + 2.2;
    }

    public double PaintRow(Pen pen, int row, double top, bool last)
    {
        var height = HeightOf(row);
        for (var i = 0; i < columns.Length; i++)
        {
            PaintCell(pen, i, row, top, height);
        }

        pen.Rule(area.X, top + height, area.Right, last ? 0.35 : 0.18, last ? Ink.Black : Ink.Hairline);
        return top + height;
    }

    private void PaintCell(Pen pen, int index, int number, double top, double height)
    {
        var (column, place, row) = (columns[index], setting.Value.Places[index], Rows[number]);
        if (column.TickMm > 0)
        {
            pen.Frame(new Box(place.Middle - (column.TickMm / 2), top + 0.85, column.TickMm, column.TickMm), 0.25);
            return;
        }

        if (column.BoxMm > 0)
        {
            if (column.HasBox?.Invoke(row) != false)
            {
                pen.Frame(new Box(place.Left, top + 0.7, place.Width, Math.Min(height - 1.4, 7)), 0.25, 0.6);
            }

            return;
        }

        if (column.Picture is not null)
        {
            foreach (var item in column.Picture(row, new(place.Left, top + PictureGapMm)))
            {
                pen.Add(item);
            }

            return;
        }

        var y = top + (RowMm / 2) + 1.275;
        var colour = column.Swatch?.Invoke(row);
        if (colour is not null)
        {
            pen.Swatch(colour, place.Left, y);
        }

        var at = colour is null ? place : new TableColumn(place.Left + SwatchMm, place.Width - SwatchMm);
        var (words, under) = SettingOf(number).Cells[index];
        foreach (var line in words)
        {
            Put(pen, line, column, at, y, column.Style, column.Tag?.Invoke(row));
            y += LineMm;
        }

        foreach (var line in under)
        {
            Put(pen, line, column, at, y, column.UnderStyle, null);
            y += LineMm;
        }
    }

    private static void Put(Pen pen, string line, TextColumn<T> column, TableColumn place, double y, TextStyle style, Tag? tag)
    {
        if (line.Length > 0)
        {
            var (x, set) = column.TickMm > 0 ? (place.Middle, style.Middle) : column.Right ? (place.Right, style.Right) : (place.Left, style);
            pen.Letters(line, x, y, set, tag);
        }
    }

    // heads in one line where there is room; else what is missing is shared by what most rows want, so that they grow alike; words that break are better than a table
    // beyond the frame
    private ImmutableArray<double> Widths(double room)
    {
        var needs = columns.Select(Need).ToImmutableArray();
        var wide = columns.Zip(needs, (c, need) => Math.Max(need, Pen.Width(c.Head, TextStyle.Bold) + 0.01)).ToImmutableArray();
        if (wide.Sum() <= room)
        {
            return wide;
        }

        var least = columns.Select(c => Least(c)).ToImmutableArray();
        if (needs.Sum() <= room || least.Sum() > room)
        {
            return needs;
        }

        var usual = columns.Select((c, i) => Math.Clamp(Usual(c), least[i], needs[i])).ToImmutableArray();
        return Balanced(usual.Sum() > room ? TableColumns.Between(least, usual, room) : TableColumns.Between(usual, needs, room), least, needs);
    }

    // as long as it saves lines, a column gives some of its width to another: judged on rows from all over the table
    private ImmutableArray<double> Balanced(ImmutableArray<double> widths, ImmutableArray<double> least, ImmutableArray<double> needs)
    {
        var sample = Rows.Where((_, i) => i % ((Rows.Length / MostJudged) + 1) == 0).ToArray();
        var lines = widths.Select((w, i) => LinesAt(i, w)).ToArray();
        while (true)
        {
            var best = (Saves: 0, Gives: -1, Takes: -1);
            var all = Total(lines);
            var (narrower, wider) = (widths.Select((w, i) => w - StepMm < least[i] ? null : LinesAt(i, w - StepMm)).ToArray(), widths.Select((w, i) => w >= needs[i] ? null : LinesAt(i, w + StepMm)).ToArray());
            for (var gives = 0; gives < widths.Length; gives++)
            {
                for (var takes = 0; takes < widths.Length; takes++)
                {
                    if (gives != takes && narrower[gives] is { } less && wider[takes] is { } more)
                    {
                        var saves = all - Total([.. lines.Select((own, i) => i == gives ? less : i == takes ? more : own)]);
                        best = saves > best.Saves ? (saves, gives, takes) : best;
                    }
                }
            }

            if (best.Saves == 0)
            {
                return widths;
            }

            (lines[best.Gives], lines[best.Takes]) = (narrower[best.Gives]!, wider[best.Takes]!);
            widths = widths.SetItem(best.Gives, widths[best.Gives] - StepMm).SetItem(best.Takes, widths[best.Takes] + StepMm);
        }

        int[] LinesAt(int column, double width) => [.. sample.Select(r => LinesOf(columns[column], new(0, width), r))];

        int Total(int[][] ofColumns) => Enumerable.Range(0, sample.Length).Sum(r => ofColumns.Max(c => c[r]));
    }

    // what four rows of five hold in one line
    private double Usual(TextColumn<T> column)
    {
        var own = Rows.Select(r => Own(column, r) + (column.Swatch?.Invoke(r) is null ? 0 : SwatchMm)).Order().ToList();
        return own.Count == 0 ? 0 : own[(own.Count - 1) * 4 / 5];
    }

    // a long heading steps down before it is broken
    private TextStyle GroupStyle(string words) => TextStyle.Bold.At(Pen.Width(words, TextStyle.Bold.At(3.5)) <= area.Width ? 3.5 : 2.5);

    private double Need(TextColumn<T> column) =>
        Math.Max(HeadWord(column), Rows.Select(r => Own(column, r) + (column.Swatch?.Invoke(r) is null ? 0 : SwatchMm)).DefaultIfEmpty(0).Max());

    private double Least(TextColumn<T> column) =>
        Math.Min(Need(column), Math.Max(Math.Max(column.FloorMm, HeadWord(column)), Rows.Select(r => column.BoxMm + column.TickMm + column.DrawnMm + LongestWord(column, r) + (column.Swatch?.Invoke(r) is null ? 0 : SwatchMm)).DefaultIfEmpty(0).Max()));

    private static double LongestWord(TextColumn<T> column, T row) =>
        Math.Max(LineBreaker.LongestWord(column.Text(row), column.LeastMm, column.Style), LineBreaker.LongestWord(column.Under?.Invoke(row) ?? "", column.LeastMm, column.UnderStyle));

    private static double Own(TextColumn<T> column, T row) =>
        column.DrawnMm > 0 ? column.DrawnMm : column.BoxMm > 0 ? column.BoxMm : column.TickMm > 0 ? column.TickMm : Math.Max(LineBreaker.Width(column.Text(row), column.Style), LineBreaker.Width(column.Under?.Invoke(row) ?? "", column.UnderStyle)) + 0.01;

    private static double HeadWord(TextColumn<T> column) => LineBreaker.LongestWord(column.Head, 40, TextStyle.Bold) + 0.01;

    private static ImmutableArray<string> HeadOf(TextColumn<T> column, TableColumn place) => LineBreaker.Lines(column.Head, place.Width + 0.02, TextStyle.Bold);

    private static int LinesOf(TextColumn<T> column, TableColumn place, T row) => Math.Max(1, WordsOf(column, place, row).Length + UnderOf(column, place, row).Length);

    private static ImmutableArray<string> WordsOf(TextColumn<T> column, TableColumn place, T row) =>
        column.BoxMm > 0 || column.TickMm > 0 || (column.Under is not null && column.Text(row).Length == 0)
            ? []
            : LineBreaker.Lines(column.Text(row), place.Width - (column.Swatch?.Invoke(row) is null ? 0 : SwatchMm) + 0.02, column.Style);

    private static ImmutableArray<string> UnderOf(TextColumn<T> column, TableColumn place, T row) =>
        column.Under?.Invoke(row) is { Length: > 0 } words ? LineBreaker.Lines(words, place.Width + 0.02, column.UnderStyle) : [];
}
