using HarnessDraw.Model;

namespace HarnessDraw.Layout;

/// <summary>The layout of the wall chart: shape and lane order are settled once, then it can be packed at any stretch.</summary>
public sealed class ChartLayout
{
    private readonly ChartProblem problem;
    private readonly ChartMetrics metrics;
    private readonly List<Spine> spines;
    private readonly ChartLanes lanes;
    private readonly Lazy<int> crossed;
    private readonly Lazy<LaneCrossings> crossings;
    private readonly ChartOrder order;
    private ChartPacking? last;

    private ChartLayout(ChartProblem problem, ChartMetrics metrics, List<Spine> spines, ChartLanes lanes)
    {
        this.problem = problem;
        this.metrics = metrics;
        this.spines = spines;
        this.lanes = lanes;
        crossed = new(() => CrossingCount.Of(problem, spines, lanes));
        crossings = new(Bounded);
        order = new(problem, lanes, spines);
    }

    /// <summary>Counted when first asked for: of the charts that are tried only the last is.</summary>
    public LaneCrossings Crossings => crossings.Value;

    private LaneCrossings Bounded()
    {
        var (straight, lower, reason) = CrossingBounds.Of(problem, lanes, lanes.CardOrder, crossed.Value);
        return new(crossed.Value, straight, lower, reason);
    }

    /// <summary>The cards as they follow each other round the tree.</summary>
    public IReadOnlyList<int> CardOrder => lanes.CardOrder;

    /// <summary>Area of all cards, mm2.</summary>
    public double CardsMm2
    {
        get
        {
            var mm2 = 0.0;
            for (var c = 0; c < problem.Cards.Length; c++)
            {
                mm2 += problem.Cards[c].WidthMm * metrics.HeightMm(problem.Cards[c], lanes.CardRows[c].Count);
            }

            return mm2;
        }
    }

    /// <summary>Shape and lane order.</summary>
    /// <param name="problem">What is drawn.</param>
    /// <param name="metrics">Its distances.</param>
    /// <param name="known">Lane orders of the same lanes found before: a tree of the same shape has the same.</param>
    public static ChartLayout Start(ChartProblem problem, ChartMetrics metrics, LaneOrders? known = null)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var spines = ChartShape.Build(problem, metrics);
        var lanes = ChartLanes.Order(problem, spines, known);
        foreach (var spine in spines)
        {
            (spine.PitchMm, spine.IsBand) = (metrics.PitchOn(spine.SlotCount), metrics.IsBand(spine.SlotCount));
        }

        ChartCuts.Choose(spines);
        return new(problem, metrics, spines, lanes);
    }

    /// <summary>
    /// Lengthens the stems of the trunk's ribs where cards of neighbouring ribs then interlock, as long as the chart stays no higher than given (0: no stem
    /// is lengthened), until it is narrow enough.
    /// </summary>
    public void Lift(double mostHeightMm, double enoughMm, ChartStance stance) => new ChartPacking(problem, metrics, lanes, stance).PackLifted(spines, mostHeightMm, enoughMm);

    public ChartPlan Pack() => Pack(ChartStance.Plain);

    /// <summary>Packs everything with the stems as they are.</summary>
    public ChartPlan Pack(ChartStance stance)
    {
        Room(stance);
        return Read();
    }

    /// <summary>Packed as it is, for a chart that is only tried.</summary>
    public ChartOutline Outline()
    {
        Room(ChartStance.Plain);
        return ChartGeometry.Outline(problem, metrics, spines, lanes, last!) with { HasCrossings = crossed.Value > 0 };
    }

    /// <summary>Packs everything with the stems as they are, and tells the room that it takes.</summary>
    public ChartRoom Room(ChartStance stance)
    {
        last = new ChartPacking(problem, metrics, lanes, stance);
        last.PackAll(spines);
        return ChartRoom.Of(spines[0]);
    }

    /// <summary>Packs everything with stems and stretches as long as they were on the chart whose places are kept, or with so much of that.</summary>
    /// <param name="stance">What the packing holds to.</param>
    /// <param name="share">How much of the lengths.</param>
    /// <param name="mostHeightMm">Where other stems are sought until the chart is narrow enough: how high it may be; 0: none are.</param>
    /// <param name="enoughMm">How wide it may be.</param>
    public ChartRoom Keep(ChartStance stance, double share, double mostHeightMm = 0, double enoughMm = 0)
    {
        ChartKeeping.Restore(problem, spines, share);
        if (mostHeightMm > 0)
        {
            new ChartPacking(problem, metrics, lanes, stance).Narrow(spines, mostHeightMm, enoughMm);
        }

        return Room(stance);
    }

    /// <summary>How the branches left and where the cards stood in what was packed last; each place's in their order.</summary>
    internal (List<(int Node, ChartTurn Turn, double StemMm, double HoldMm)> Branches, List<(int Card, FrozenCard Was, int Host)> Cards) Taken()
    {
        _ = order.Of(last!);
        return (ChartKeeping.Branches(spines), ChartKeeping.Cards(spines, order.Drawn));
    }

    /// <summary>Of the lengths that are known and drawn, how many are to the scale of what was packed last, and all.</summary>
    public (int Kept, int All) LengthsToScale => ChartPacking.LengthsToScale(problem, spines);

    /// <summary>Lengthens stems where that brings loads into their true order, as long as the room taken still suits.</summary>
    public void Settle(Predicate<ChartRoom> suits) => order.Settle(last!, suits);

    /// <summary>How far the loads of what was packed last stand in their true order: from -1 to 1 for each axis, both added.</summary>
    public double Order => order.Of(last!);

    /// <summary>What was packed last, with its lanes and cards.</summary>
    public ChartPlan Read() => ChartGeometry.Read(problem, metrics, spines, lanes, last!, crossings);
}

/// <summary>
/// Chooses where lettered cuts name the lanes: on every band, where wide bundles begin, and on the stretch where most lanes run that joined their bundle later (those
/// that have left are missing from the same order).
/// </summary>
internal static class ChartCuts
{
    private const int Usual = 6;
    private const int Letters = 26;

    // fewer lanes are told apart by eye, as are those of a bundle that is narrow beside the widest; so many always want a list
    private const int Least = 6;
    private const int Always = 16;
    private const double LeastOfWidest = 0.35;

    public static void Choose(List<Spine> spines)
    {
        var bands = spines.Where(s => s.IsBand).Select(WidestOf).OfType<Station>().Take(Letters).ToList();
        var bundles = new List<Stretch>();
        foreach (var spine in spines.FindAll(s => !s.IsBand))
        {
            bundles.AddRange(spine.Stations.FindAll(t => t.HasEdge).ConvertAll(t => new Stretch(spine, t, Met(spine, t))));
        }

        var least = Math.Clamp(LeastOfWidest * bundles.Select(b => b.Lanes).DefaultIfEmpty(0).Max(), Least, Always);
        var begins = bundles.Where(b => b.Lanes >= least).DistinctBy(b => b.Spine).ToList();
        var joined = begins.SelectMany(Joined).Where(j => j.Lanes >= Least).OrderByDescending(j => j.Lanes).Take(1);
        var named = joined.Select(j => j.Station).Concat(begins.OrderByDescending(b => b.Lanes).Select(b => b.Station)).Distinct().Take(Math.Max(0, Usual - bands.Count));
        foreach (var station in bands.Concat(named))
        {
            station.HasCut = true;
        }
    }

    // where most of a band is named at once
    private static Station? WidestOf(Spine spine) => spine.Stations.Where(s => s.HasEdge && Met(spine, s) > 0).MaxBy(s => Met(spine, s));

    private static int Met(Spine spine, Station station)
    {
        var (met, cut) = (0, CutOf(station));
        foreach (var run in spine.Runs)
        {
            met += Meets(run, cut) ? 1 : 0;
        }

        return met;
    }

    // by stretch of a bundle: lanes that are not among those where it begins to be wide
    private static IEnumerable<(Station Station, int Lanes)> Joined(Stretch begin)
    {
        var first = CutOf(begin.Station);
        var known = begin.Spine.Runs.FindAll(r => Meets(r, first)).ConvertAll(r => r.Lane).ToHashSet();
        return begin.Spine.Stations.FindAll(t => t.HasEdge).ConvertAll(t => (t, begin.Spine.Runs.FindAll(r => Meets(r, CutOf(t)) && !known.Contains(r.Lane)).Count));
    }

    // on the stretch before a place, behind its splices
    private static double CutOf(Station station) => station.FirstEvent + station.Splices.Count - 0.5;

    private static bool Meets(LaneRun run, double cut) => run.StartEvent < cut && run.EndEvent > cut;

    private sealed record Stretch(Spine Spine, Station Station, int Lanes);
}
