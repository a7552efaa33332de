using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.Pages;

/// <summary>Fills page after page from the top: headings, paragraphs, tables whose head comes again on each page.</summary>
internal sealed class PageFlow
{
    private const double GutterMm = 8;
    private readonly PageMaker maker;

    public PageFlow(PageMaker maker)
    {
        this.maker = maker;
        Pen = maker.Begin();
        Area = maker.Area;
        Y = Area.Y;
    }

    public Pen Pen { get; private set; }

    /// <summary>The top of what is still free.</summary>
    public double Y { get; set; }

    /// <summary>The column that is being filled; usually the whole area of the page.</summary>
    public Box Area { get; private set; }

    public bool IsAtTop => Y <= Area.Y + 0.01;

    public bool Fits(double heightMm) => Y + heightMm <= Area.Bottom + 0.01;

    public SheetResult ToResult() => maker.ToResult();

    public void NextPage()
    {
        Pen = maker.Begin();
        Y = Area.Y;
    }

    /// <summary>Goes to the next page when what follows does not fit here.</summary>
    public void Need(double heightMm)
    {
        if (!Fits(heightMm) && !IsAtTop)
        {
            NextPage();
        }
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
        var lines = LineBreaker.Lines(words, Area.Width, TextStyle.Bold.At(3.5));
        Need(7 + (lines.Length * 5.4) + withMm);
        if (!IsAtTop)
        {
            Y += 2.5;
            Pen.Rule(Area.X, Y, Area.Right, 0.7);
        }

        foreach (var line in lines)
        {
            Y += 5.6;
            Pen.Letters(line, Area.X, Y, TextStyle.Bold.At(3.5));
        }

        Y += 2.4;
    }

    public void Paragraph(string text, TextStyle? style = null, double indentMm = 0, double lineMm = 4.4)
    {
        foreach (var line in LineBreaker.Lines(text, Area.Width - indentMm, style))
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
        string? group = null;
        for (var i = 0; i < table.Rows.Length; i++)
        {
            var row = table.Rows[i];
            var next = table.GroupOf?.Invoke(row);
            var opens = next is not null && next != group;
            var height = table.HeightOf(row);
            if (i == 0)
            {
                Need(table.HeadMm + (next is null ? 0 : table.GroupMm(next)) + height);
                Y = table.PaintHead(Pen, Y);
            }
            else if (!Fits(height + (opens ? table.GroupMm(next!) : 0)))
            {
                NextPage();
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
            Y = table.PaintRow(Pen, row, Y, last);
        }
    }
}
