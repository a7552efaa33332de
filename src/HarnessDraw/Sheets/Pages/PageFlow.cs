using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.Pages;

/// <summary>
/// Gathers what a sheet says from top to bottom: headings, paragraphs, tables, pieces of its own. Once all is told it is shared among pages (<see cref="PageShare"/>); what goes on over a page
/// stands under its heading again, a table under its head.
/// </summary>
internal sealed class PageFlow
{
    private const double GutterMm = 8;
    private const double BetweenMm = 5;
    private const double ParagraphMm = 4.4;
    private const int WholeLines = 6;
    private readonly PageMaker maker;
    private readonly List<PagePiece> pieces = [];
    private readonly Lazy<PageShare> share;

    // where pieces are put now: their column, the heading above them, what is free above the next
    private PageColumn column;
    private PagePart? section;
    private double gap;

    public PageFlow(PageMaker maker)
    {
        this.maker = maker;
        Area = maker.Area;
        share = new(() => PageShare.Of(pieces, maker.Area));
    }

    /// <summary>The column that is being filled; usually the whole area of the page. Heights are settled when all is told.</summary>
    public Box Area { get; private set; }

    /// <summary>The pages that all takes, once it is told.</summary>
    public int Count => share.Value.Count;

    /// <summary>Paints everything on pages of the maker.</summary>
    public SheetResult ToResult()
    {
        share.Value.Paint(maker);
        return maker.ToResult();
    }

    /// <summary>Free above what comes next, unless that begins a page.</summary>
    public void Gap(double mm) => gap += mm;

    /// <summary>Something that stands whole on a page, under the heading that was before it.</summary>
    public void Piece(PagePiece piece)
    {
        pieces.Add(piece with { GapMm = piece.GapMm + gap, Column = column, Section = section });
        gap = 0;
    }

    public void Piece(double heightMm, Action<Pen, double> paint) => Piece(new PagePiece(heightMm, paint));

    /// <summary>Two columns beside each other; where the left one goes on over a page, the right one stands beside its end.</summary>
    public void Beside(Action left, Action right)
    {
        var (whole, above) = (Area, gap);
        var half = (whole.Width - GutterMm) / 2;
        (Area, column) = (whole with { Width = half }, PageColumn.Left);
        left();
        gap = above;
        (Area, column) = (whole with { X = whole.X + half + GutterMm, Width = half }, PageColumn.Right);
        right();
        (Area, column) = (whole, PageColumn.Whole);
    }

    /// <summary>A panel head with a rule above it; keeps <paramref name="withMm"/> below it on the same page.</summary>
    public void Heading(string words, double withMm = 12)
    {
        var area = Area;
        var lines = LineBreaker.Lines(words, area.Width, HeadStyle).Length;
        section = null;
        Piece(new PagePiece(HeadMm(words, area), (pen, y) => Head(pen, words, area, y))
        {
            GapMm = 3.3,
            PaintGap = (pen, y) => pen.Rule(area.X, y - 0.8, area.Right, 0.7),
            NeedMm = 1.3 + (0.6 * lines) + withMm,
            Begins = true,
        });
        var again = $"{words}, continued";
        section = new(HeadMm(again, area), (pen, y) => Head(pen, again, area, y));
    }

    private static TextStyle HeadStyle => TextStyle.Bold.At(3.5);

    private static double HeadMm(string words, Box area) => (LineBreaker.Lines(words, area.Width, HeadStyle).Length * 4.8) + 2.4;

    private static void Head(Pen pen, string words, Box area, double y)
    {
        foreach (var line in LineBreaker.Lines(words, area.Width, HeadStyle))
        {
            y += 4.8;
            pen.Letters(line, area.X, y, HeadStyle);
        }
    }

    public void Paragraph(string text, TextStyle? style = null)
    {
        var area = Area;
        var lines = LineBreaker.Lines(text, area.Width, style);

        // a short one is not parted
        foreach (var whole in lines.Length <= WholeLines ? [lines] : lines.Select(l => ImmutableArray.Create(l)))
        {
            Piece(whole.Length * ParagraphMm, (pen, y) =>
            {
                foreach (var line in whole)
                {
                    y += ParagraphMm;
                    pen.Letters(line, area.X, y - 1, style ?? TextStyle.Plain);
                }
            });
        }
    }

    /// <summary>A last line with blanks to fill in: it takes little room, so that it seldom begins a page of its own.</summary>
    public void SignOff(params ImmutableArray<string> words)
    {
        var area = Area;
        Gap(3);
        Piece(6, (pen, y) => Blanks.Paint(pen, words, area.X, y + 4, area.Width));
    }

    /// <summary>Short words in as many columns as the widest allows, read along the lines.</summary>
    public void Columns(ImmutableArray<string> words)
    {
        var area = Area;
        var columns = Math.Max(1, (int)((area.Width + BetweenMm) / (words.Max(w => Pen.Width(w)) + BetweenMm)));
        foreach (var row in words.Chunk(columns))
        {
            Piece(ParagraphMm, (pen, y) =>
            {
                for (var i = 0; i < row.Length; i++)
                {
                    pen.Text(row[i], area.X + (i * ((area.Width + BetweenMm) / columns)), y + ParagraphMm - 1, area.Width);
                }
            });
        }
    }

    public void Table<T>(TextTable<T> usual)
    {
        var closer = usual.Closer();
        TextTable<T> As(bool close) => close ? closer : usual;
        var head = new PagePart(usual.HeadMm, closer.HeadMm, (pen, y, close) => As(close).PaintHead(pen, y));
        string? group = null;
        for (var i = 0; i < usual.Rows.Length; i++)
        {
            var row = i;
            var next = usual.GroupOf?.Invoke(usual.Rows[i]);
            var opens = next is not null && next != group;
            var last = i == usual.Rows.Length - 1 || (usual.GroupOf is { } of && of(usual.Rows[i + 1]) != next);
            PagePart line = new(usual.HeightOf(row), closer.HeightOf(row), (pen, y, close) => As(close).PaintRow(pen, row, y, last));
            line = opens ? Both(Group(next!), line) : line;
            line = i == 0 ? Both(head, line) : line;
            Piece(new PagePiece(line) { Head = i == 0 ? null : next is null || opens ? head : Both(head, Group($"{next}, continued")) });
            group = next;
        }

        PagePart Group(string words) => new(usual.GroupMm(words), (pen, y) => usual.PaintGroup(pen, words, y));
    }

    private static PagePart Both(PagePart first, PagePart second) => new(first.UsualMm + second.UsualMm, first.CloserMm + second.CloserMm, (pen, y, closer) =>
    {
        first.Paint(pen, y, closer);
        second.Paint(pen, y + first.HeightMm(closer), closer);
    });
}
