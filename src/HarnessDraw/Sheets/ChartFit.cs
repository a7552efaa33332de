using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Sheets;

/// <summary>A wall chart tried on one paper with one size of names: where the chart and the panels stand, when they fit.</summary>
internal sealed partial class ChartFit
{
    // what covers more than this share of the paper was never seen to find its place
    private const double MostCovered = 0.68;
    private const double FarTooFull = 0.9;

    // boxes of the chart overlap by a fifth of their area
    private const double Overlap = 0.8;
    private const int StretchSteps = 5;
    private readonly ChartDraft draft;
    private readonly TitleBlock title;
    private double liftMm;
    private double enoughMm;
    private ChartStance stance;
    private ChartRoom room;

    // of the one frame: its room is marked anew for every try
    private PanelPacking? packing;

    private ChartFit(ChartDraft draft, Paper paper, FrameLayout frame, TitleBlock title)
    {
        this.draft = draft;
        this.title = title;
        Paper = paper;
        Frame = frame;
        room = draft.Compact;
        Panels = draft.Panels;
    }

    public WallChartProblem Problem => draft.Problem;
    public Paper Paper { get; }
    public FrameLayout Frame { get; private set; }
    /// <summary>The finished chart; only a fit that is <see cref="Stretched"/> has one.</summary>
    public ChartPlan Chart { get; private set; } = null!;
    public Box Bounds => room.Bounds;

    /// <summary>The panels that are shown: all, or without those that other sheets of the set carry.</summary>
    public IReadOnlyList<ChartPanel> Panels { get; private set; }

    /// <summary>Where each panel stands and in which of its shapes.</summary>
    public IReadOnlyList<(Box Box, int Shape)> PanelPlaces { get; private set; } = [];

    /// <summary>How far the chart is moved from its own coordinates onto the paper.</summary>
    public double MoveX { get; private set; }
    public double MoveY { get; private set; }
    public bool Fits { get; private set; }

    /// <summary>
    /// True when a few wires less than such a share of these would not make it fit: with the wires both the lanes and the bundles that hold them grow less, but nothing of a chart
    /// shrinks faster than with their square.
    /// </summary>
    public bool IsFarTooFullWith(double share) => Covered() * share * share > FarTooFull;
    public bool IsFarTooFull => IsFarTooFullWith(1);

    /// <summary>True when less than half of what a sheet bears is covered: many wires more may fit.</summary>
    public bool IsRoomy => Covered() < MostCovered / 2;

    /// <summary>False when a panel is left to another sheet.</summary>
    public bool ShowsAll { get; private set; } = true;

    public ChartFigures Figures => new()
    {
        Crossings = draft.Crossings.Count,
        CrossingsStraightLaneBound = draft.Crossings.StraightLaneBound,
        CrossingsLowerBound = draft.Crossings.LowerBound,
        BoundReason = draft.Crossings.Reason,
        Paper = Paper.Name,
        ToScale = ToScaleWords,
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
            var tried = new HashSet<ChartDraft>();
            foreach (var rule in CardColumnRule.All)
            {
                if (!tried.Add(drafts.Get(nameMm, rule)))
                {
                    continue;
                }

                var fit = new ChartFit(drafts.Get(nameMm, rule), paper, frame, title);
                if (leaveOut)
                {
                    fit.ShowsAll = false;
                    fit.Panels = ChartPanel.Fewer(fit.Panels);
                }

                var covered = fit.Covered();
                if (covered < MostCovered && fit.PlaceSomehow())
                {
                    return fit;
                }

                mayFit |= covered >= MostCovered || fit.Bounds.Width <= frame.Inner.Width;
                narrowest = narrowest is null || fit.Bounds.Width < narrowest.Bounds.Width ? fit : narrowest;
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
        const double MuchMm = 40;
        foreach (var heightMm in (ReadOnlySpan<double>)[0, most, most - strip])
        {
            if (PlaceLifted(heightMm, wide, ChartStance.Plain))
            {
                return true;
            }

            if (heightMm > 0 && room.Bounds.Width > wide + MuchMm)
            {
                // less height makes no chart much narrower
                break;
            }
        }

        // room kept free makes no chart much narrower
        foreach (var share in Problem.Problem.Table is null || room.Bounds.Width > wide + MuchMm ? [] : (ReadOnlySpan<double>)[0.5, 0.65, 0.8, 0.95])
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
        room = draft.Room(mostHeightMm, enoughMm, stance);
        return Fits = Place();
    }

    // share of the paper that is covered
    private double Covered()
    {
        var inner = Frame.Inner;
        return ((draft.Compact.Occupied.Sum(Area) * Overlap) + Panels.Sum(p => p.Shapes.Min(s => s.Size.WidthMm * s.Size.HeightMm)) + Area(Frame.TitleBox)) / Area(inner);
    }

    private static double Area(Box box) => box.Width * box.Height;

    /// <summary>A draft on a paper, not tried: what it covers is known.</summary>
    public static ChartFit Untried(ChartDraft draft, Paper paper, TitleBlock title) => new(draft, paper, Sheets.Frame.Compose(paper, title), title);

    /// <summary>So many charts are needed at the least: together they show all rows of cards, and none can be fuller than a sheet was ever seen to be.</summary>
    public int LeastCharts => (Area(Frame.Inner) * MostCovered) - Area(Frame.TitleBox) is > 0 and var free ? (int)Math.Ceiling(draft.CardsMm2 / free) : 1;

    /// <summary>
    /// The finished chart: loads brought into their true order, then the true distances held, both as far as the paper allows: one scale for both axes, then each alone.
    /// </summary>
    public ChartFit Stretched(double widest)
    {
        draft.Take(liftMm, enoughMm, stance);
        draft.Settle(Suits);
        var order = draft.Order;
        var both = Bisect(s => (s, s), 0, widest, order);
        var x = Bisect(s => (s, both), both, widest, order);
        var y = Bisect(s => (x, s), both, widest, order);
        stance = stance with { StretchX = x, StretchY = y };
        Suits(draft.Again(stance));
        draft.Settle(Suits);
        Chart = draft.Read();
        FillCorners();
        packed = PanelPlaces;
        Align();
        return this;
    }

    // panels that can say more do so where room is left
    private void FillCorners()
    {
        for (var i = 0; i < Panels.Count; i++)
        {
            if (Panels[i].Fuller is { } fuller)
            {
                var (before, places) = (Panels, PanelPlaces);
                Panels = [.. Panels.Select((p, k) => k == i ? fuller with { Name = p.Name } : p)];
                if (!PlacePanels(Frame.Inner.Grow(-0.5)) || Naming(Frame.Inner.Grow(-0.5)) < naming)
                {
                    (Panels, PanelPlaces) = (before, places);
                }
            }
        }
    }

    private double Bisect(Func<double, (double X, double Y)> scales, double low, double high, double leastOrder)
    {
        for (var i = 0; i < StretchSteps; i++)
        {
            var middle = (low + high) / 2;
            var (x, y) = scales(middle);
            var packed = draft.Again(stance with { StretchX = x, StretchY = y });
            if (draft.Order >= leastOrder && Suits(packed))
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

    // whether what was packed fits as well, wherever on the paper, with the vehicle's name as well placed; if not, all stays as it was
    private bool Suits(ChartRoom packed)
    {
        var (before, at, places, x, y) = (room, wanted, PanelPlaces, MoveX, MoveY);
        room = packed;
        if (Place())
        {
            return true;
        }

        wanted = null;
        var named = naming;
        if (Place() && naming >= named)
        {
            return true;
        }

        (room, wanted, PanelPlaces, MoveX, MoveY, naming) = (before, at, places, x, y, named);
        return false;
    }

    // where on the free room the chart stands
    private bool Place()
    {
        var inner = Frame.Inner.Grow(-0.5);
        if (room.Bounds.Width > inner.Width || room.Bounds.Height > inner.Height)
        {
            return false;
        }

        if (kept is { } before)
        {
            (MoveX, MoveY) = (before.X, before.Y);
            if (inner.Contains(room.Bounds.Move(MoveX, MoveY)) && PlacePanels(inner))
            {
                naming = Naming(inner);
                return true;
            }
        }

        if (wanted is { } known)
        {
            return PlaceAt(inner, known) && Naming(inner) >= naming;
        }

        (wanted, naming) = (null, 0);
        foreach (var position in Positions)
        {
            if (PlaceAt(inner, position) && (wanted is null || Naming(inner) > naming))
            {
                (wanted, naming) = (position, Naming(inner));
                if (naming == BestNaming)
                {
                    return true;
                }
            }
        }

        return wanted is { } best && PlaceAt(inner, best);
    }

    private bool PlaceAt(Box inner, (double Share, double Across) position)
    {
        MoveX = inner.X - room.Bounds.X + ((inner.Width - room.Bounds.Width) * position.Across);
        MoveY = inner.Y - room.Bounds.Y + ((inner.Height - room.Bounds.Height) * position.Share);
        return PlacePanels(inner);
    }

    // 2: the vehicle's name, the first panel, stands where a reader begins, in its largest letters; 1: in smaller ones; 0: elsewhere
    private int Naming(Box inner)
    {
        const double NearMm = 30;
        var (box, shape) = PanelPlaces[0];
        return box.X - inner.X >= NearMm || box.Y - inner.Y >= NearMm ? 0 : shape < WallChartWordPanels.LargeTitles ? BestNaming : 1;
    }

    private const int BestNaming = 2;

    private static ReadOnlySpan<(double Share, double Across)> Positions => new (double, double)[] { (0.5, 1), (0.3, 1), (0.7, 1), (0, 1), (1, 1), (0.15, 1), (0.5, 0.5), (0, 0.5), (0.25, 0.5), (1, 0.5), (0.5, 0), (0.25, 0), (0, 0), (1, 0) };

    // once it fits, it stretches in its place
    private (double Share, double Across)? wanted;
    private int naming;

    // of the panels as they are: asked for at every try
    private IReadOnlyList<ChartPanel>? sized;
    private Panel[][] sizes = [];
    private IReadOnlyList<(Box Box, int Shape)>? lastPlaced;

    private bool PlacePanels(Box inner)
    {
        foreach (var box in room.Occupied)
        {
            if (box.Move(MoveX, MoveY).Overlaps(Frame.TitleBox.Grow(2)))
            {
                return false;
            }
        }

        packing ??= new PanelPacking(inner);
        packing.Clear();
        packing.Take(Frame.TitleBox.Grow(2));
        foreach (var box in room.Occupied)
        {
            packing.Take(box.Move(MoveX, MoveY).Grow(1));
        }

        if (sized != Panels)
        {
            sized = Panels;
            sizes = [.. Panels.Select(p => Array.ConvertAll(p.Shapes.ToArray(), s => s.Size))];
        }

        var placed = packing.Place(sizes, kept is null ? default : KeptPanels(), lastPlaced);
        lastPlaced = placed ?? lastPlaced;
        PanelPlaces = placed ?? [];
        return placed is not null;
    }
}
