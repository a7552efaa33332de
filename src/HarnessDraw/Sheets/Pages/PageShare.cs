using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.Pages;

/// <summary>How the pieces of a sheet are shared among its pages; nothing is painted before that is settled.</summary>
internal sealed class PageShare
{
    // closer rows save less than this of a page; a last page that is used less than the second gets more from those before, which give no more than the third
    private const double CloserShare = 0.1;
    private const double LeastShare = 0.18;
    private const double MostFreeShare = 0.3;
    private readonly List<(PagePiece Piece, int Page, bool Tops, double Y)> places = [];
    private readonly List<(PageCard Card, int After, double Top, double Bottom)> cards = [];
    private readonly bool closer;

    private PageShare(IReadOnlyList<PagePiece> pieces, Box area, bool closer, double freeMm)
    {
        this.closer = closer;
        Put(pieces, area, area.Bottom - freeMm + 0.01);
    }

    /// <summary>Pages, one at the least.</summary>
    public int Count { get; private set; } = 1;

    /// <summary>How much of the last page is used, 0 to 1.</summary>
    public double Used { get; private set; }

    /// <summary>As few pages as it takes; rows stand closer where that saves one, else the pages before a nearly empty last one end earlier.</summary>
    public static PageShare Of(IReadOnlyList<PagePiece> pieces, Box area)
    {
        PageShare With(bool closer, double freeMm) => new(pieces, area, closer, freeMm);
        var usual = With(closer: false, freeMm: 0);
        var close = usual.Used < CloserShare * usual.Count ? With(closer: true, freeMm: 0) : usual;
        var best = close.Count < usual.Count ? close : usual;
        if (best.Count == 1 || best.Used >= LeastShare)
        {
            return best;
        }

        for (var free = Math.Max(2, (LeastShare - best.Used) * area.Height / (best.Count - 1)); free < MostFreeShare * area.Height; free *= 1.4)
        {
            var even = With(best.closer, free);
            if (even.Count > best.Count)
            {
                break;
            }

            if (even.Used >= LeastShare)
            {
                return even;
            }
        }

        return best;
    }

    private void Put(IReadOnlyList<PagePiece> pieces, Box area, double bottom)
    {
        var (y, page, isTop) = (area.Y, 0, true);
        var (cardTop, leftTop, leftPage, leftBottom) = (y, y, 0, y);
        PagePiece? before = null;
        foreach (var piece in pieces)
        {
            if (before?.Card is { } card && card != piece.Card)
            {
                Close(card);
            }

            if (piece.Column != (before?.Column ?? PageColumn.Whole))
            {
                Turn(piece.Column);
            }

            var gap = isTop ? 0 : piece.GapMm;
            if (!isTop && y + gap + piece.HeightMm(closer) + piece.NeedMm > bottom)
            {
                if (piece.Card is { } goesOn && goesOn == before?.Card)
                {
                    Close(goesOn);
                }

                (y, gap, isTop) = (area.Y, 0, true);
                page++;
            }

            cardTop = piece.Card is null || (piece.Card == before?.Card && !isTop) ? cardTop : y + gap;
            var tops = isTop && page > 0;
            y += tops && !piece.Begins ? (piece.Section?.HeightMm(closer) ?? 0) + (piece.Head?.HeightMm(closer) ?? 0) : gap;
            places.Add((piece, page, tops, y));
            y += piece.HeightMm(closer);
            (before, isTop) = (piece, false);
        }

        if (before?.Card is { } last)
        {
            Close(last);
        }

        Turn(PageColumn.Whole);
        (Count, Used) = (page + 1, (y - area.Y) / area.Height);

        void Close(PageCard done)
        {
            y += done.FootMm;
            cards.Add((done, places.Count - 1, cardTop, y));
        }

        void Turn(PageColumn column)
        {
            if (column == PageColumn.Left)
            {
                (leftTop, leftPage) = (y, page);
            }
            else if (column == PageColumn.Right)
            {
                leftBottom = y;
                y = leftPage == page ? leftTop : area.Y;
                leftPage = page;
            }
            else if (before?.Column == PageColumn.Right)
            {
                y = leftPage == page ? Math.Max(y, leftBottom) : y;
            }
        }
    }

    public void Paint(PageMaker maker)
    {
        var pen = maker.Begin();
        var (page, done) = (0, 0);
        for (var i = 0; i < places.Count; i++)
        {
            var (piece, at, tops, y) = places[i];
            if (at > page)
            {
                pen = maker.Begin(aside: piece.Begins || piece.Section is not null ? null : "continued");
                page = at;
            }

            if (tops && !piece.Begins)
            {
                var head = piece.Head?.HeightMm(closer) ?? 0;
                piece.Section?.Paint(pen, y - head - piece.Section.HeightMm(closer), closer);
                piece.Head?.Paint(pen, y - head, closer);
            }
            else if (!tops && i > 0)
            {
                piece.PaintGap?.Invoke(pen, y);
            }

            piece.Paint(pen, y, closer);
            for (; done < cards.Count && cards[done].After == i; done++)
            {
                cards[done].Card.Paint(pen, cards[done].Top, cards[done].Bottom);
            }
        }
    }
}
