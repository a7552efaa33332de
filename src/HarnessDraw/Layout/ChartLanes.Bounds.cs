namespace HarnessDraw.Layout;

// the least that a splice can cost while every lane keeps its place and the bar stays at its station
internal sealed partial class ChartLanes
{
    private SpliceBundle[] bundlesOfAll = [];

    /// <summary>The splices that are alone in their group of joined lanes, by group.</summary>
    public Dictionary<int, int> LoneSplices()
    {
        var lone = new Dictionary<int, int>();
        foreach (var of in bundlesOfAll.Where(b => spliceEnds[b.Splice].Count > 0).GroupBy(b => group[spliceEnds[b.Splice][0].Lane]))
        {
            if (of.Count() == 1)
            {
                lone[of.Key] = of.First().Splice;
            }
        }

        return lone;
    }

    public bool Passes(int splice, int lane) => bundlesOfAll[splice].PassingLanes.Contains(lane);

    /// <summary>The fewest crossings with the unspliced lanes that pass the splice, wherever its own lanes run.</summary>
    public int LeastAgainstSingles(int splice) => new SplicePlacing(this, bundlesOfAll, bundlesOfAll[splice]).LeastAgainstSingles();

    /// <summary>
    /// The fewest crossings of two splices with one feed from the root each, the second passed by nothing of the first but legs: every order of the feeds among all legs is
    /// tried. Null where another shape makes this no bound.
    /// </summary>
    public int? LeastOfPair(int nearer, int farther)
    {
        var (a, b) = (bundlesOfAll[nearer], bundlesOfAll[farther]);
        if (a.Arriving.Count != 1 || b.Arriving.Count != 1 || !a.PassingLanes.Contains(b.Arriving[0].Lane)
            || EndOf(a.Arriving[0].Lane, 1 - a.Arriving[0].End) is not { Kind: ChartEndKind.Pin } pinA || EndOf(b.Arriving[0].Lane, 1 - b.Arriving[0].End) is not { Kind: ChartEndKind.Pin } pinB)
        {
            return null;
        }

        var legsA = a.Legs.ConvertAll(l => keys[l.Lane, 1 - l.End]);
        var legsB = b.Legs.ConvertAll(l => keys[l.Lane, 1 - l.End]);
        var passB = a.Legs.Where(l => b.PassingLanes.Contains(l.Lane)).Select(l => keys[l.Lane, 1 - l.End]).ToList();
        var all = legsA.Concat(legsB).Distinct().Order().ToList();
        var places = all.Zip(all.Skip(1), (x, y) => (x + y) / 2).Prepend(all[0] - 1).Append(all[^1] + 1).ToList();
        var best = int.MaxValue;
        foreach (var feedB in places)
        {
            foreach (var feedA in places.SelectMany(p => (double[])[p - 0.01, p + 0.01]))
            {
                var crossings = IsInside(feedB, legsA, feedA) ? 1 : 0;
                crossings += passB.Count(k => IsInside(k, legsB, feedB));
                crossings += feedA < feedB != pinA.Index < pinB.Index ? 1 : 0;
                best = Math.Min(best, crossings);
            }
        }

        return best;

        static bool IsInside(double key, List<double> legs, double feed) => key > Math.Min(legs.Min(), feed) && key < Math.Max(legs.Max(), feed);
    }
}
