using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.Pages;

/// <summary>Fills page after page from the top: headings, paragraphs, tables. What goes on over a page stands under its heading again, a table under its head.</summary>
internal sealed class PageFlow
{
    private const double GutterMm = 8;
    private const int WholeLines = 6;
    private readonly PageMaker maker;
    private readonly List<object> tables;
    private int tablesSoFar;

    // where the page begins to be filled, below the heading of what goes on
    private double top;

    // the heading of what is being filled; null: the headline of the sheet
    private string? section;

    /// <param name="maker">Gives the pages.</param>
    /// <param name="closer">Rows of tables stand closer.</param>
    /// <param name="freeMm">Kept free at the foot of every page.</param>
    /// <param name="tables">The tables of earlier tries at the same sheet, in their order: their lines need not be broken again. Tables that are new are put there.</param>
    public PageFlow(PageMaker maker, bool closer = false, double freeMm = 0, List<object>? tables = null)
    {
        (this.maker, IsCloser, this.tables) = (maker, closer, tables ?? []);
        Pen = maker.Begin();
        Area = maker.Area with { Height = maker.Area.Height - freeMm };
        Y = top = Area.Y;
    }

    public Pen Pen { get; private set; }

    /// <summary>The top of what is still free.</summary>
    public double Y { get; set; }

    /// <summary>The column that is being filled; usually the whole area of the page.</summary>
    public Box Area { get; private set; }

    public bool IsAtTop => Y <= top + 0.01;

    /// <summary>Rows stand closer than usual, which saves a page.</summary>
    public bool IsCloser { get; }

    /// <summary>Pages so far.</summary>
    public int Count => maker.Count;

    /// <summary>How much of the page that is being filled is used, 0 to 1.</summary>
    public double Used => (Y - Area.Y) / maker.Area.Height;

    public bool Fits(double heightMm) => Y + heightMm <= Area.Bottom + 0.01;

    public SheetResult ToResult() => maker.ToResult();

    /// <summary>The next page, for something new.</summary>
    public void NextPage()
    {
        section = null;
        Pen = maker.Begin();
        Y = top = Area.Y;
    }

    /// <summary>Goes to the next page when what follows does not fit here; it goes on there under its heading.</summary>
    public void Need(double heightMm)
    {
        if (!Fits(heightMm) && !IsAtTop)
        {
            GoOn();
        }
    }

    private void GoOn()
    {
        Pen = maker.Begin(aside: section is null ? "continued" : null);
        Y = Area.Y;
        if (section is not null)
        {
            Head($"{section}, continued");
        }

        top = Y;
    }

    /// <summary>Two columns beside each other; where the left one goes on over a page, the right one follows below.</summary>
    public void Beside(Action left, Action right)
    {
        var (whole, top, page) = (Area, Y, maker.Count);
        var half = (whole.Width - GutterMm) / 2;
        Area = whole with { Width = half };
        left();
        var bottom = Y;
        if (maker.Count == page)
        {
            Y = top;
            Area = whole with { X = whole.X + half + GutterMm, Width = half };
        }

        right();
        Y = maker.Count == page ? Math.Max(Y, bottom) : Y;
        Area = whole;
    }

    /// <summary>A panel head with a rule above it; keeps <paramref name="withMm"/> below it on the same page.</summary>
    public void Heading(string words, double withMm = 12)
    {
        if (!Fits(7 + (LineBreaker.Lines(words, Area.Width, HeadStyle).Length * 5.4) + withMm) && !IsAtTop)
        {
            NextPage();
        }

        if (Y > Area.Y + 0.01)
        {
            Y += 2.5;
            Pen.Rule(Area.X, Y, Area.Right, 0.7);
            Y += 0.8;
        }

        section = words;
        Head(words);
    }

    private static TextStyle HeadStyle => TextStyle.Bold.At(3.5);

    private void Head(string words)
    {
        foreach (var line in LineBreaker.Lines(words, Area.Width, HeadStyle))
        {
            Y += 4.8;
            Pen.Letters(line, Area.X, Y, HeadStyle);
        }

        Y += 2.4;
    }

    public void Paragraph(string text, TextStyle? style = null, double indentMm = 0, double lineMm = 4.4)
    {
        var lines = LineBreaker.Lines(text, Area.Width - indentMm, style);
        // a short one is not parted
        Need(lineMm * (lines.Length <= WholeLines ? lines.Length : 1));
        foreach (var line in lines)
        {
            Need(lineMm);
            Y += lineMm;
            Pen.Letters(line, Area.X + indentMm, Y - 1, style ?? TextStyle.Plain);
        }
    }

    /// <summary>A last line with blanks to fill in: it takes little room, so that it seldom begins a page of its own.</summary>
    public void SignOff(params ImmutableArray<string> words)
    {
        Y += 3;
        Need(6);
        Blanks.Paint(Pen, words, Area.X, Y + 4, Area.Width);
        Y += 6;
    }

    /// <summary>Short words in as many columns as the widest allows, read down each column; a page that ends goes on at the top of the next.</summary>
    public void Columns(ImmutableArray<string> words, double lineMm = 4.4)
    {
        var columns = Math.Max(1, (int)((Area.Width + GutterMm) / (words.Max(w => Pen.Width(w)) + GutterMm)));
        while (!words.IsEmpty)
        {
            Need(lineMm);
            var rows = Math.Min((words.Length + columns - 1) / columns, Math.Max(1, (int)((Area.Bottom + 0.01 - Y) / lineMm)));
            for (var i = 0; i < Math.Min(words.Length, rows * columns); i++)
            {
                Pen.Text(words[i], Area.X + (i / rows * ((Area.Width + GutterMm) / columns)), Y + (((i % rows) + 1) * lineMm) - 1, Area.Width);
            }

            Y += rows * lineMm;
            words = words[Math.Min(words.Length, rows * columns)..];
        }
    }

    public void Table<T>(TextTable<T> table)
    {
        table = Known(table);
        table = IsCloser ? table.Closer() : table;
        string? group = null;
        for (var i = 0; i < table.Rows.Length; i++)
        {
            var row = table.Rows[i];
            var next = table.GroupOf?.Invoke(row);
            var opens = next is not null && next != group;
            var height = table.HeightOf(i);
            if (i == 0)
            {
                Need(table.HeadMm + (next is null ? 0 : table.GroupMm(next)) + height);
                Y = table.PaintHead(Pen, Y);
            }
            else if (!Fits(height + (opens ? table.GroupMm(next!) : 0)))
            {
                GoOn();
                Y = table.PaintHead(Pen, Y);
                if (next is not null && !opens)
                {
                    Y = table.PaintGroup(Pen, $"{next}, continued", Y);
                }
            }

            if (opens)
            {
                Y = table.PaintGroup(Pen, next!, Y);
                group = next;
            }

            var last = i == table.Rows.Length - 1 || (table.GroupOf is { } of && of(table.Rows[i + 1]) != next);
            Y = table.PaintRow(Pen, i, Y, last);
        }
    }

    // every try fills the sheet with the same tables in the same order
    private TextTable<T> Known<T>(TextTable<T> table)
    {
        var at = tablesSoFar++;
        if (at == tables.Count)
        {
            tables.Add(table);
        }

        return tables[at] is TextTable<T> known && known.IsLike(table) ? known : table;
    }
}
