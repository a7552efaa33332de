using HarnessDraw.Layout;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>A wall chart before it has a paper: one size of names, one height of card columns; laid out once, packed as often as asked.</summary>
internal sealed class ChartDraft
{
    private readonly ChartLayout layout;
    private readonly Dictionary<(double MostHeightMm, double EnoughMm, ChartStance Stance), ChartRoom> rooms = [];
    private (double MostHeightMm, double EnoughMm, ChartStance Stance)? lifted = (0, 0, ChartStance.Plain);

    /// <summary>How cards are put in columns.</summary>
    public CardColumnRule Rule { get; }

    public ChartDraft(WallChartProblem problem, CardColumnRule rule, LaneOrders known, WallChartWordPanels words, ChartPart? part)
    {
        Problem = problem;
        Rule = rule;
        layout = ChartLayout.Start(problem.Problem, problem.Style.MetricsBy(rule), known);
        var outline = layout.Outline();
        Compact = outline.Room;
        // what the panels say does not depend on how the chart is packed
        panels = new(() => new WallChartPanels(problem, outline, problem.Style.BlackInk).All(words, part));
    }

    /// <summary>True when everything stands where it stands on another draft.</summary>
    public bool IsLike(ChartDraft other) => Compact.Occupied.AsSpan().SequenceEqual(other.Compact.Occupied.AsSpan());

    public WallChartProblem Problem { get; }
    public LaneCrossings Crossings => layout.Crossings;
    public IReadOnlyList<int> CardOrder => layout.CardOrder;
    public List<ChartPanel> Panels => panels.Value;
    private readonly Lazy<List<ChartPanel>> panels;

    /// <summary>Packed as narrow as the shape allows, nothing lifted.</summary>
    public ChartRoom Compact { get; }

    /// <summary>Area of all cards, mm2.</summary>
    public double CardsMm2 => layout.CardsMm2;

    /// <summary>
    /// The room it takes with stems lengthened up to the height given (0: as they are) until it is as narrow as asked, and true distances held at the scales given.
    /// </summary>
    public ChartRoom Room(double mostHeightMm, double enoughMm, ChartStance stance)
    {
        if (mostHeightMm <= 0 && stance == ChartStance.Plain)
        {
            return Compact;
        }

        // what is tried with all panels is tried again without some
        if (rooms.TryGetValue((mostHeightMm, enoughMm, stance), out var known))
        {
            return known;
        }

        return rooms[(mostHeightMm, enoughMm, stance)] = Take(mostHeightMm, enoughMm, stance);
    }

    /// <summary>Brings the loads of what was packed last into their true order, as long as the room then taken still suits.</summary>
    public void Settle(Predicate<ChartRoom> suits)
    {
        layout.Settle(suits);
        lifted = null;
    }

    /// <summary>The room it takes with stems and stretches as long as they were on the chart whose places are kept, or with so much of that.</summary>
    public ChartRoom Keep(ChartStance stance, double share, double mostHeightMm = 0, double enoughMm = 0)
    {
        lifted = null;
        return layout.Keep(stance, share, mostHeightMm, enoughMm);
    }

    /// <summary>How branches left and cards stood in what was packed last.</summary>
    public (List<(int Node, ChartTurn Turn, double StemMm, double HoldMm)> Branches, List<(int Card, FrozenCard Was, int Host)> Cards) Taken() => layout.Taken();

    /// <summary>The room it takes with the stems as they were settled.</summary>
    public ChartRoom Again(ChartStance stance) => layout.Room(stance);

    /// <summary>The room it takes with its lengths to the scale that the stance names.</summary>
    public ChartRoom ToScale(double mostHeightMm, double enoughMm, ChartStance stance)
    {
        lifted = null;
        layout.Lift(mostHeightMm, enoughMm, stance);
        return layout.Room(stance);
    }

    /// <summary>Of the lengths of what was packed last, how many are to scale, and all that are known.</summary>
    public (int Kept, int All) LengthsToScale => layout.LengthsToScale;

    /// <summary>How far the loads stand in their true order, from -1 to 1 for each axis, both added.</summary>
    public double Order => layout.Order;

    /// <summary>The chart as it was packed last.</summary>
    public ChartPlan Read() => layout.Read();

    /// <summary>Packs it so, with no stem longer than this asks for.</summary>
    public ChartRoom Take(double mostHeightMm, double enoughMm, ChartStance stance)
    {
        var unstretched = stance with { StretchX = 0, StretchY = 0 };
        if ((mostHeightMm, enoughMm, unstretched) != lifted)
        {
            layout.Lift(mostHeightMm, enoughMm, unstretched);
            lifted = (mostHeightMm, enoughMm, unstretched);
        }

        return layout.Room(stance);
    }
}

/// <summary>The drafts of one subject, each made when it is first asked for.</summary>
internal sealed class ChartDrafts(WallChartSubject subject, bool blackInk, ChartPart? part = null, FrozenChartSheet? kept = null)
{
    /// <summary>The chart whose places are kept, or null.</summary>
    public FrozenChartSheet? Kept => kept;

    private readonly WallChartWordPanels words = new(subject.Plan, part, subject.Whole.Changes);

    public WallChartSubject Subject => subject;
    public bool BlackInk => blackInk;

    /// <summary>Which of several charts this is; null when one shows all.</summary>
    public ChartPart? Part => part;

    private readonly Dictionary<double, WallChartProblem> problems = [];
    private readonly LaneOrders known = new();
    private readonly Dictionary<(double NameMm, CardColumnRule Rule), ChartDraft> made = [];

    public ChartDraft Get(double nameMm, CardColumnRule rule)
    {
        if (!made.TryGetValue((nameMm, rule), out var draft))
        {
            if (!problems.TryGetValue(nameMm, out var problem))
            {
                problems[nameMm] = problem = new(subject, new(subject, nameMm, blackInk), kept);
            }

            // what does not fit by one rule is tried by the next: both are laid out side by side, unless charts are
            var next = CardColumnRule.All.IndexOf(rule) + 1;
            CardColumnRule[] due = part is null && next < CardColumnRule.All.Length && !made.ContainsKey((nameMm, CardColumnRule.All[next])) ? [rule, CardColumnRule.All[next]] : [rule];
            var drafts = new ChartDraft[due.Length];
            SideBySide.For(due.Length, i => drafts[i] = new(problem, due[i], known, words, part));
            foreach (var (r, d) in due.Zip(drafts))
            {
                // where no place has cards enough for columns, one rule gives what another does: it is not tried again
                made[(nameMm, r)] = made.FirstOrDefault(m => m.Key.NameMm == nameMm && m.Value.IsLike(d)).Value ?? d;
            }

            draft = made[(nameMm, rule)];
        }

        return draft;
    }
}
