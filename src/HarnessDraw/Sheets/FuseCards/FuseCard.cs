using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.FuseCards;

/// <summary>Paints the card of one panel: a head, positions in three columns, and what must never be forgotten at its foot.</summary>
internal static class FuseCard
{
    private const int Columns = 3;
    private const double HeadMm = 10.5;
    private const double FootMm = 7;
    private const double LineMm = 4.3;
    private const double SymbolMm = 14.5;
    private const int LongFrom = 9;

    // what a row can give to save a page
    private const double SpareMm = 1;

    public static void Put(PageFlow flow, FusePanelSeats panel, string imprint)
    {
        var area = flow.Area;
        var card = new PageCard(FootMm, (pen, top, bottom) => Round(pen, area with { Y = top, Height = bottom - top }, imprint));
        var rows = Rows(panel.Seats, area.Width / Columns, area.Width);
        for (var i = 0; i < rows.Count; i++)
        {
            var (row, first) = (rows[i], i == 0 ? HeadMm : 0);
            flow.Piece(new PagePiece(new PagePart(first + row.HeightMm, first + row.HeightMm - SpareMm, (pen, y, closer) =>
            {
                if (first > 0)
                {
                    Head(pen, area with { Y = y }, panel, continued: false);
                }

                Row(pen, area with { Y = y + first, Height = row.HeightMm - (closer ? SpareMm : 0) }, panel, row);
            }))
            {
                NeedMm = FootMm + 3,
                Begins = i == 0,
                Head = new(HeadMm, (pen, y) => Head(pen, area with { Y = y }, panel, continued: true)),
                Card = card,
            });
        }

        flow.Gap(4);
    }

    private static void Row(Pen pen, Box line, FusePanelSeats panel, SeatRow row)
    {
        pen.Rule(line.X + 0.25, line.Y, line.Right - 0.25, 0.35);
        var x = line.X;
        for (var i = 0; i < (row.Wide ? 1 : Columns); i++)
        {
            var cell = line with { X = x, Width = row.Wide ? line.Width : line.Width / Columns };
            if (i < row.Seats.Length)
            {
                Seat(pen, cell, row.Seats[i]);
            }
            else if (row.Last && panel.Blanks is { } kind)
            {
                Blank(pen, cell, kind);
            }

            x = cell.Right;
            if (i < Columns - 1 && !row.Wide)
            {
                pen.Upright(x, line.Y, line.Bottom, 0.25);
            }
        }
    }

    private static void Round(Pen pen, Box card, string imprint)
    {
        pen.Frame(card, 0.5, 2);
        var y = card.Bottom - FootMm;
        pen.Rule(card.X + 0.25, y, card.Right - 0.25, 0.35);
        pen.Letters("NEVER A LARGER FUSE", card.X + 3, y + 4.8, TextStyle.Bold with { Colour = Ink.Caution });
        var room = card.Width - 9 - Pen.Width("NEVER A LARGER FUSE", TextStyle.Bold);
        pen.Letters(LineBreaker.Lines(imprint, room)[0], card.Right - 3, y + 4.8, TextStyle.Plain.Right);
    }

    private static void Head(Pen pen, Box card, FusePanelSeats panel, bool continued)
    {
        var title = panel.Title + (continued ? ", continued" : "");
        var cap = ((ImmutableArray<double>)[5, 3.5, 2.5]).FirstOrDefault(c => Pen.Width(title, TextStyle.Bold.At(c)) <= card.Width - 50, 2.5);
        var style = TextStyle.Bold.At(cap);
        pen.Letters(LineBreaker.Lines(title, card.Width - 6, style)[0], card.X + 3, card.Y + 7.6, style);
        var used = Pen.Width(title, style) + 6;
        if (Pen.Width(panel.Where) < card.Width - used - 6)
        {
            pen.Letters(panel.Where, card.Right - 3, card.Y + 7.2, TextStyle.Plain.Right);
        }
    }

    private static void Blank(Pen pen, Box cell, ProtectionKind kind)
    {
        Body(pen, cell, kind, 0.25);
        var (left, right) = (cell.X + SymbolMm + 1.5, cell.Right - 2.5);
        pen.Rule(left, cell.Y + 7, right, 0.18, Ink.Hairline);
        pen.Rule(left, cell.Y + 12, right, 0.18, Ink.Hairline);
    }

    private static void Seat(Pen pen, Box cell, FuseSeat seat)
    {
        Rating(pen, Body(pen, cell, seat.Fuse.Kind, 0.5), seat.Fuse.RatingA);
        var (x, width) = (cell.X + SymbolMm + 1.5, cell.Width - SymbolMm - 4);
        pen.Letters(Fitting(seat.Fuse.Id, width, TextStyle.Bold.At(3.5)), x, cell.Y + 6, TextStyle.Bold.At(3.5));
        if (seat.AlwaysLive && Pen.Width(seat.Fuse.Id, TextStyle.Bold.At(3.5)) + Pen.Width("always live") + 3 < width)
        {
            pen.Letters("always live", cell.Right - 2.5, cell.Y + 6, TextStyle.Plain.Right);
        }

        var y = cell.Y + 10.8;
        foreach (var line in LineBreaker.Lines(seat.Feeds, width))
        {
            pen.Letters(line, x, y, TextStyle.Plain);
            y += LineMm;
        }

        foreach (var line in LineBreaker.Lines(Limit(seat), width, TextStyle.Bold))
        {
            pen.Letters(line, x, y, seat.TooLarge ? TextStyle.Bold with { Colour = Ink.Caution } : TextStyle.Bold);
            y += LineMm;
        }

        if (Under(seat) is { Length: > 0 } under && Pen.Width(under) <= 15)
        {
            pen.Letters(under, cell.X + 8.1, cell.Y + 16.4, TextStyle.Plain.Middle);
        }
    }

    // a blade or a bar
    private static Box Body(Pen pen, Box cell, ProtectionKind kind, double edge)
    {
        var box = new Box(cell.X + 1.6, cell.Y + 2.5, 13, 10.4);
        var bolt = kind is ProtectionKind.BoltIn or ProtectionKind.FusibleLink;
        var body = bolt ? new Box(box.X, box.Y + 1.5, box.Width, 7) : new Box(box.X, box.Y, box.Width, 7.4);
        foreach (var leg in bolt ? [] : new[] { box.X + 2.2, box.Right - 5 })
        {
            pen.Frame(new Box(leg, body.Bottom, 2.8, 2.8), edge);
        }

        pen.Frame(body, edge, 1, fill: Ink.Paper);
        return body;
    }

    // in 4 mm figures; an unknown rating leaves the body white to write in
    private static void Rating(Pen pen, Box body, double? ratingA)
    {
        if (ratingA is { } rating)
        {
            var figure = Shown.Number(rating, 1);
            var cap = Pen.Width(figure, TextStyle.Bold.At(4)) <= body.Width - 2 ? 4 : 3.5;
            pen.Letters(figure, body.Centre.X, body.Centre.Y + (cap / 2), TextStyle.Bold.Middle.At(cap));
        }
    }

    private static string Limit(FuseSeat seat)
    {
        var words = seat.Fuse.LargestA is { } largest ? $"never above {Shown.Number(largest, 1)} A" : "same rating only";
        return seat.TooLarge ? $"TOO LARGE: {words}" : words;
    }

    private static string Under(FuseSeat seat) => seat.BodyColour ?? FuseCardSheets.Kind(seat.Fuse.Kind);

    private static string Fitting(string text, double width, TextStyle style) => LineBreaker.Lines(text, width, style)[0];

    private static double HeightOf(FuseSeat seat, double width) =>
        Math.Max(18.4, 10.8 + ((LineBreaker.Lines(seat.Feeds, width - SymbolMm - 4).Length + LineBreaker.Lines(Limit(seat), width - SymbolMm - 4, TextStyle.Bold).Length - 1) * LineMm) + 2.4);

    // three to a row; a position that feeds a great many circuits takes a row of its own
    private static List<SeatRow> Rows(ImmutableArray<FuseSeat> seats, double narrow, double wide)
    {
        var rows = new List<SeatRow>();
        var open = new List<FuseSeat>();
        foreach (var seat in seats)
        {
            if (LineBreaker.Lines(seat.Feeds, narrow - SymbolMm - 4).Length >= LongFrom)
            {
                Close();
                rows.Add(new([seat], HeightOf(seat, wide), true));
                continue;
            }

            open.Add(seat);
            if (open.Count == Columns)
            {
                Close();
            }
        }

        Close();
        // blanks for what is added by hand stand at the end of the panel only
        rows[^1] = rows[^1] with { Last = true };
        return rows;

        void Close()
        {
            if (open.Count > 0)
            {
                rows.Add(new([.. open], open.Max(s => HeightOf(s, narrow)), false));
                open.Clear();
            }
        }
    }

    private sealed record SeatRow(ImmutableArray<FuseSeat> Seats, double HeightMm, bool Wide)
    {
        public bool Last { get; init; }
    }
}
