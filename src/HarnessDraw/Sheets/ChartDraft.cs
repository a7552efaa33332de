using HarnessDraw.Layout;

namespace HarnessDraw.Sheets;

/// <summary>A wall chart before it has a paper: one size of names, one height of card columns; laid out once, packed as often as asked.</summary>
internal sealed class ChartDraft
{
    private readonly ChartLayout layout;
    private (double MostHeightMm, double EnoughMm) lifted;

    public ChartDraft(WallChartSubject subject, WallChartWordPanels words, ChartPart? part, double nameMm, bool blackInk, double columnMm, double tableShare)
    {
        Problem = new(subject, new WallChartStyle(subject, nameMm, blackInk, columnMm, tableShare));
        layout = ChartLayout.Start(Problem.Problem, Problem.Style.Metrics);
        Compact = layout.Pack();
        // what the panels say does not depend on how the chart is packed
        Panels = new WallChartPanels(Problem, Compact, blackInk).All(words, part);
    }

    public WallChartProblem Problem { get; }
    public LaneCrossings Crossings => layout.Crossings;
    public IReadOnlyList<int> CardOrder => layout.CardOrder;
    public List<ChartPanel> Panels { get; }

    /// <summary>Packed as narrow as the shape allows, nothing lifted.</summary>
    public ChartPlan Compact { get; }

    /// <summary>
    /// Packed with stems lengthened up to the height given (0: as they are) until it is as narrow as asked, and true distances held at the scales given.
    /// </summary>
    public ChartPlan Pack(double mostHeightMm, double enoughMm, double stretchX = 0, double stretchY = 0)
    {
        if ((mostHeightMm, enoughMm) != lifted)
        {
            layout.Lift(mostHeightMm, enoughMm);
            lifted = (mostHeightMm, enoughMm);
        }

        return layout.Pack(stretchX, stretchY);
    }
}

/// <summary>The drafts of one subject, each made when it is first asked for.</summary>
internal sealed class ChartDrafts(WallChartSubject subject, bool blackInk, ChartPart? part = null)
{
    private readonly WallChartWordPanels words = new(subject.Plan, part, subject.Whole.Changes);

    public WallChartSubject Subject => subject;
    public bool BlackInk => blackInk;

    /// <summary>Which of several charts this is; null when one shows all.</summary>
    public ChartPart? Part => part;

    private readonly Dictionary<(double NameMm, double ColumnMm, double TableShare), ChartDraft> made = [];

    public ChartDraft Get(double nameMm, double columnMm, double tableShare = 0.5)
    {
        if (!made.TryGetValue((nameMm, columnMm, tableShare), out var draft))
        {
            made[(nameMm, columnMm, tableShare)] = draft = new(subject, words, part, nameMm, blackInk, columnMm, tableShare);
        }

        return draft;
    }
}
