using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Sheets;

/// <summary>A wall chart tried on one paper with one size of names: where the chart and the panels stand, when they fit.</summary>
internal sealed class ChartFit
{
    // what covers more than this share of the paper was never seen to find its place
    private const double MostCovered = 0.68;
    private const double FarTooFull = 0.9;
    private readonly ChartDraft draft;
    private double liftMm;
    private double enoughMm;
    private ChartStance stance;

    // of the one frame: its room is marked anew for every try
    private PanelPacking? packing;

    private ChartFit(ChartDraft draft, Paper paper, FrameLayout frame)
    {
        this.draft = draft;
        Paper = paper;
        Frame = frame;
        Chart = draft.Compact;
        Panels = draft.Panels;
    }

    public WallChartProblem Problem => draft.Problem;
    public Paper Paper { get; }
    public FrameLayout Frame { get; }
    public ChartPlan Chart { get; private set; }

    /// <summary>The panels that are shown: all, or without those that other sheets of the set carry.</summary>
    public IReadOnlyList<ChartPanel> Panels { get; private set; }

    /// <summary>Where each panel stands and in which of its shapes.</summary>
    public IReadOnlyList<(Box Box, int Shape)> PanelPlaces { get; private set; } = [];

    /// <summary>How far the chart is moved from its own coordinates onto the paper.</summary>
    public double MoveX { get; private set; }
    public double MoveY { get; private set; }
    public bool Fits { get; private set; }

    /// <summary>False when a panel is left to another sheet.</summary>
    public bool ShowsAll { get; private set; } = true;

    public ChartFigures Figures => new()
    {
        Crossings = draft.Crossings.Count,
        CrossingsStraightLaneBound = draft.Crossings.StraightLaneBound,
        CrossingsLowerBound = draft.Crossings.LowerBound,
        BoundReason = draft.Crossings.Reason,
        Paper = Paper.Name,
    };

    /// <summary>
    /// Tries columns of cards of several heights, as they are and with lifted ribs, with all panels and then without those that have a sheet of their own;
    /// the first that fits, else the narrowest.
    /// </summary>
    public static ChartFit Try(ChartDrafts drafts, Paper paper, TitleBlock title, double nameMm, bool mayLeaveOut = true)
    {
        var frame = Sheets.Frame.Compose(paper, title);
        ChartFit? narrowest = null;
        var mayFit = true;
        foreach (var leaveOut in mayLeaveOut ? (ReadOnlySpan<bool>)[false, true] : [false])
        {
            if (!mayFit)
            {
                // not the panels were too many: the chart itself is too large
                break;
            }

            mayFit = false;
            foreach (var rule in CardColumnRule.All)
            {
                var fit = new ChartFit(drafts.Get(nameMm, rule), paper, frame);
                if (leaveOut)
                {
                    fit.ShowsAll = false;
                    fit.Panels = [.. fit.Panels.Select(p => p.OrElsewhere())];
                }

                var covered = fit.Covered();
                if (covered < MostCovered && fit.PlaceSomehow())
                {
                    return fit;
                }

                mayFit |= covered >= MostCovered || fit.Chart.Bounds.Width <= frame.Inner.Width;
                narrowest = narrowest is null || fit.Chart.Bounds.Width < narrowest.Chart.Bounds.Width ? fit : narrowest;
                if (covered > FarTooFull)
                {
                    // the same cards in other columns cover about as much
                    break;
                }
            }
        }

        return narrowest!;
    }

    // as it is and with lifted ribs, the pin table about the trunk or raised above the title block
    private bool PlaceSomehow()
    {
        var strip = Frame.TitleBox.Height + 4;
        var (most, wide) = (Frame.Inner.Height - 2, Frame.Inner.Width - 2);
        foreach (var heightMm in (ReadOnlySpan<double>)[0, most, most - strip])
        {
            if (PlaceLifted(heightMm, wide, ChartStance.Plain))
            {
                return true;
            }
        }

        // room kept free makes no chart much narrower
        const double MuchMm = 40;
        foreach (var share in Problem.Problem.Table is null || Chart.Bounds.Width > wide + MuchMm ? [] : (ReadOnlySpan<double>)[0.5, 0.65, 0.8, 0.95])
        {
            if (PlaceLifted(most, wide, new(share, Frame.TitleBox.Width + 4, strip)))
            {
                return true;
            }
        }

        return false;
    }

    private bool PlaceLifted(double mostHeightMm, double enough, ChartStance how)
    {
        if (mostHeightMm > 0 && draft.Compact.Bounds.Height > mostHeightMm)
        {
            return false;
        }

        (liftMm, enoughMm, stance) = (mostHeightMm, enough, how);
        Chart = draft.Pack(mostHeightMm, enoughMm, stance);
        return Fits = Place();
    }

    // share of the paper that is covered (boxes of the chart overlap by a fifth of their area)
    private double Covered()
    {
        const double Overlap = 0.8;
        var inner = Frame.Inner;
        return ((draft.Compact.Occupied.Sum(Area) * Overlap) + Panels.Sum(p => p.Shapes.Min(s => s.Size.WidthMm * s.Size.HeightMm)) + Area(Frame.TitleBox)) / (inner.Width * inner.Height);

        static double Area(Box box) => box.Width * box.Height;
    }

    /// <summary>The same with the true distances held as far as the paper allows: one scale for both axes, then each alone.</summary>
    public ChartFit Stretched(double widest)
    {
        var both = Bisect(s => (s, s), widest);
        var x = Bisect(s => (Math.Max(both, s), both), widest);
        x = Math.Max(both, x);
        var y = Bisect(s => (x, Math.Max(both, s)), widest);
        y = Math.Max(both, y);
        Chart = draft.Pack(liftMm, enoughMm, stance with { StretchX = x, StretchY = y });
        if (!Place())
        {
            Chart = draft.Pack(liftMm, enoughMm, stance with { StretchX = both, StretchY = both });
            if (!Place())
            {
                Chart = draft.Pack(liftMm, enoughMm, stance);
                Place();
            }
        }

        return this;
    }

    private double Bisect(Func<double, (double X, double Y)> scales, double widest)
    {
        var (low, high) = (0.0, widest);
        for (var i = 0; i < 6; i++)
        {
            var middle = (low + high) / 2;
            var (x, y) = scales(middle);
            Chart = draft.Pack(liftMm, enoughMm, stance with { StretchX = x, StretchY = y });
            if (Place())
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    // where on the free room the chart stands
    private bool Place()
    {
        var inner = Frame.Inner.Grow(-0.5);
        if (Chart.Bounds.Width > inner.Width || Chart.Bounds.Height > inner.Height)
        {
            return false;
        }

        if (wanted is { } known)
        {
            return PlaceAt(inner, known) && (!isNamedInCorner || IsNamedInCorner(inner));
        }

        (double Share, double Across)? any = null;
        foreach (var position in Positions)
        {
            if (PlaceAt(inner, position))
            {
                any ??= position;
                if (IsNamedInCorner(inner))
                {
                    (wanted, isNamedInCorner) = (position, true);
                    return true;
                }
            }
        }

        wanted = any;
        return any is { } first && PlaceAt(inner, first);
    }

    private bool PlaceAt(Box inner, (double Share, double Across) position)
    {
        MoveX = inner.X - Chart.Bounds.X + ((inner.Width - Chart.Bounds.Width) * position.Across);
        MoveY = inner.Y - Chart.Bounds.Y + ((inner.Height - Chart.Bounds.Height) * position.Share);
        return PlacePanels(inner);
    }

    // the vehicle's name, the first panel, stands where a reader begins
    private bool IsNamedInCorner(Box inner)
    {
        const double NearMm = 30;
        var name = PanelPlaces[0].Box;
        return name.X - inner.X < NearMm && name.Y - inner.Y < NearMm;
    }

    private static ReadOnlySpan<(double Share, double Across)> Positions => new (double, double)[] { (0.5, 1), (0.3, 1), (0.7, 1), (0, 1), (1, 1), (0.15, 1), (0.5, 0.5), (0, 0.5), (0.25, 0.5), (1, 0.5), (0.5, 0), (0.25, 0), (0, 0), (1, 0) };

    // once it fits, it stretches in its place
    private (double Share, double Across)? wanted;
    private bool isNamedInCorner;

    private bool PlacePanels(Box inner)
    {
        foreach (var box in Chart.Occupied)
        {
            if (box.Move(MoveX, MoveY).Overlaps(Frame.TitleBox.Grow(2)))
            {
                return false;
            }
        }

        packing ??= new PanelPacking(inner);
        packing.Clear();
        packing.Take(Frame.TitleBox.Grow(2));
        foreach (var box in Chart.Occupied)
        {
            packing.Take(box.Move(MoveX, MoveY).Grow(1));
        }

        var placed = packing.Place([.. Panels.Select(p => p.Shapes.Select(s => s.Size).ToList())]);
        PanelPlaces = placed ?? [];
        return placed is not null;
    }
}
