namespace HarnessDraw.Sheets.Pages;

/// <summary>Something with a height that is painted from a y downwards; lower where all of the sheet stands closer to save a page.</summary>
internal record PagePart(double UsualMm, double CloserMm, Action<Pen, double, bool> Paint)
{
    public PagePart(double heightMm, Action<Pen, double> paint)
        : this(heightMm, heightMm, (pen, y, _) => paint(pen, y))
    {
    }

    public double HeightMm(bool closer) => closer ? CloserMm : UsualMm;
}

/// <summary>What of a sheet stands whole on one page.</summary>
internal sealed record PagePiece : PagePart
{
    public PagePiece(PagePart part)
        : base(part)
    {
    }

    public PagePiece(double heightMm, Action<Pen, double> paint)
        : base(heightMm, paint)
    {
    }

    /// <summary>Free above it where it does not begin a page, and what is painted there: the pen, and the y below it.</summary>
    public double GapMm { get; init; }
    public Action<Pen, double>? PaintGap { get; init; }

    /// <summary>Room that must be left below it on its page, mm.</summary>
    public double NeedMm { get; init; }

    /// <summary>True for what is new: a page that begins with it does not say that something goes on.</summary>
    public bool Begins { get; init; }

    /// <summary>The heading that it stands under; where it begins a page it stands there again.</summary>
    public PagePart? Section { get; init; }

    /// <summary>What else stands again above it where it begins a page: the head of its table.</summary>
    public PagePart? Head { get; init; }

    /// <summary>The card that it is a part of.</summary>
    public PageCard? Card { get; init; }

    /// <summary>Where the page has two columns, the one it stands in; the right one begins beside the left.</summary>
    public PageColumn Column { get; init; }
}

internal enum PageColumn
{
    Whole,
    Left,
    Right,
}

/// <summary>What is put round pieces that follow each other, page by page: its foot, and a painter that is told where its first piece begins and its foot ends.</summary>
internal sealed record PageCard(double FootMm, Action<Pen, double, double> Paint);
