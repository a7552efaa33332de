using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Sheets;

/// <summary>A wall chart tried on one paper with one size of names: where the chart and the panels stand, when they fit.</summary>
internal sealed class ChartFit
{
    private readonly ChartLayout layout;
    private readonly bool blackInk;

    private ChartFit(WallChartProblem problem, ChartLayout layout, Paper paper, FrameLayout frame, bool blackInk)
    {
        Problem = problem;
        this.layout = layout;
        Paper = paper;
        Frame = frame;
        this.blackInk = blackInk;
        Chart = layout.Pack();
        // what the panels say does not depend on how the chart is packed
        Panels = new WallChartPanels(problem, Chart, blackInk).All();
    }

    public WallChartProblem Problem { get; }
    public Paper Paper { get; }
    public FrameLayout Frame { get; }
    public ChartPlan Chart { get; private set; }
    public List<ChartPanel> Panels { get; }
    public Box[] PanelBoxes { get; private set; } = [];

    /// <summary>How far the chart is moved from its own coordinates onto the paper.</summary>
    public double MoveX { get; private set; }
    public double MoveY { get; private set; }
    public bool Fits { get; private set; }

    public ChartFigures Figures => new()
    {
        Crossings = layout.Crossings.Count,
        CrossingsStraightLaneBound = layout.Crossings.StraightLaneBound,
        CrossingsLowerBound = layout.Crossings.LowerBound,
        BoundReason = layout.Crossings.Reason,
        Paper = Paper.Name,
    };

    /// <summary>Tries columns of cards of several heights, as they are and with lifted ribs; the first that fits, else the last.</summary>
    public static ChartFit Try(WallChartSubject subject, Paper paper, TitleBlock title, double nameMm, bool blackInk)
    {
        ChartFit? fit = null;
        var frame = Sheets.Frame.Compose(paper, title);
        foreach (var columnMm in (ReadOnlySpan<double>)[170, 110, 260])
        {
            var problem = new WallChartProblem(subject, new WallChartStyle(subject, nameMm, blackInk, columnMm));
            fit = new ChartFit(problem, ChartLayout.Start(problem.Problem, problem.Style.Metrics), paper, frame, blackInk);
            fit.Fits = fit.Place() || fit.PlaceLifted();
            if (fit.Fits)
            {
                break;
            }
        }

        return fit!;
    }

    private bool PlaceLifted()
    {
        var inner = Frame.Inner;
        if (Chart.Bounds.Height > inner.Height * 0.95 || Chart.Bounds.Width < inner.Width * 0.6)
        {
            return false;
        }

        layout.Lift(inner.Height * 0.95);
        Chart = layout.Pack();
        return Place();
    }

    /// <summary>The same with the true distances held as far as the paper allows: one scale for both axes, then each alone.</summary>
    public ChartFit Stretched(double widest)
    {
        var both = Bisect(s => (s, s), widest);
        var x = Bisect(s => (Math.Max(both, s), both), widest);
        x = Math.Max(both, x);
        var y = Bisect(s => (x, Math.Max(both, s)), widest);
        y = Math.Max(both, y);
        Chart = layout.Pack(x, y);
        if (!Place())
        {
            Chart = layout.Pack(both, both);
            if (!Place())
            {
                Chart = layout.Pack();
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
            Chart = layout.Pack(x, y);
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

    private bool Place()
    {
        var inner = Frame.Inner.Grow(-0.5);
        if (Chart.Bounds.Width > inner.Width || Chart.Bounds.Height > inner.Height)
        {
            return false;
        }

        foreach (var (share, across) in wanted is { } known ? (ReadOnlySpan<(double, double)>)[known] : Positions)
        {
            MoveX = inner.X - Chart.Bounds.X + ((inner.Width - Chart.Bounds.Width) * across);
            MoveY = inner.Y - Chart.Bounds.Y + ((inner.Height - Chart.Bounds.Height) * share);
            if (PlacePanels(inner))
            {
                wanted = (share, across);
                return true;
            }
        }

        return false;
    }

    private static ReadOnlySpan<(double Share, double Across)> Positions => new (double, double)[] { (0.5, 1), (0.3, 1), (0.7, 1), (0, 1), (1, 1), (0.5, 0.5), (0, 0.5), (1, 0.5), (0.5, 0), (0, 0), (1, 0) };

    // once it fits, it stretches in its place
    private (double Share, double Across)? wanted;

    private bool PlacePanels(Box inner)
    {
        foreach (var box in Chart.Occupied)
        {
            if (box.Move(MoveX, MoveY).Overlaps(Frame.TitleBox.Grow(2)))
            {
                return false;
            }
        }

        var packing = new PanelPacking(inner);
        packing.Take(Frame.TitleBox.Grow(2));
        foreach (var box in Chart.Occupied)
        {
            packing.Take(box.Move(MoveX, MoveY).Grow(1));
        }

        var placed = packing.Place([.. Panels.Select(p => p.Size)]);
        PanelBoxes = placed ?? [];
        return placed is not null;
    }
}
