namespace HarnessDraw.Layout;

// the least that a splice can cost while every lane keeps its place and the bar stays at its station
internal sealed partial class ChartLanes
{
    private readonly Dictionary<int, (List<double> Bounds, int[] Cost)?> alone = [];
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

    private int Pairs => Math.Max(1, bundlesOfAll.Length * (bundlesOfAll.Length - 1) / 2);

    public bool Passes(int splice, int lane) => bundlesOfAll[splice].PassingLanes[lane];

    /// <summary>The fewest crossings of a splice with the unspliced lanes that pass it, by the gap between them in which its one arriving lane runs; one number where not just one arrives.</summary>
    public int[] AgainstSingles(int splice) => Alone(splice)?.Cost ?? [new SplicePlacing(this, bundlesOfAll, bundlesOfAll[splice]).LeastAgainstSingles()];

    // found once: nothing moves any more
    private (List<double> Bounds, int[] Cost)? Alone(int splice)
    {
        if (!alone.TryGetValue(splice, out var found))
        {
            alone[splice] = found = new SplicePlacing(this, bundlesOfAll, bundlesOfAll[splice]).AgainstSingles();
        }

        return found;
    }

    /// <summary>The fewest crossings of two splices by the same gaps of the first one; null where they do not depend on it.</summary>
    public int[]? WithOther(int splice, int other)
    {
        var (a, b) = (Seen(bundlesOfAll[splice], bundlesOfAll[other]), Seen(bundlesOfAll[other], bundlesOfAll[splice]));
        if (SplicePair.LeastByPlace(a, b, Pairs) is not { Places.Length: > 0 } byPlace || Alone(splice) is not { } found)
        {
            return null;
        }

        // a gap between unspliced lanes may hold several places that matter to the two
        var bounds = found.Bounds;
        var (low, high) = (Before(a.Low), Before(a.High, itself: true));
        var least = new int[bounds.Count + 1];
        for (var g = 0; g < least.Length; g++)
        {
            least[g] = int.MaxValue;
            for (var k = g == 0 ? low : Math.Max(low, Before(bounds[g - 1], itself: true)); k <= (g == bounds.Count ? high : Math.Min(high, Before(bounds[g]))); k++)
            {
                least[g] = Math.Min(least[g], byPlace.Least[k]);
            }
        }

        return least;

        // how many places lie before a key
        int Before(double key, bool itself = false) => Array.BinarySearch(byPlace.Places, key) is var at && at >= 0 ? at + (itself ? 1 : 0) : ~at;
    }

    /// <summary>The crossings of the splice's lanes with an unspliced lane that does not pass it: the same wherever they run.</summary>
    public int WithSingle(int splice, int lane)
    {
        var bundle = bundlesOfAll[splice];
        var (low, high) = RangeOf(bundle);
        var (from, to) = (PlaceOf(lane, 0), PlaceOf(lane, 1));
        if (from >= low && from <= high)
        {
            low -= 0.5;
        }

        var count = 0;
        foreach (var (own, end) in spliceEnds[splice])
        {
            var far = PlaceOf(own, 1 - end);
            count += Between(far) != Between(low) ? 1 : 0;
        }

        return count;

        bool Between(double place) => place > Math.Min(from, to) && place < Math.Max(from, to);
    }

    /// <summary>The fewest crossings of the lanes of two splices, or null where that would take too long.</summary>
    public int? LeastOfPair(int splice, int other) => SplicePair.Least(Seen(bundlesOfAll[splice], bundlesOfAll[other]), Seen(bundlesOfAll[other], bundlesOfAll[splice]), Pairs);

    private PairSplice Seen(SpliceBundle splice, SpliceBundle by)
    {
        var (low, high) = RangeOf(splice);
        var (lowBy, highBy) = RangeOf(by);
        var isBeyond = splice.IsBehind[by.Splice];
        var lanes = new PairLane[splice.Legs.Count + splice.Arriving.Count];
        for (var i = 0; i < lanes.Length; i++)
        {
            var arrives = i >= splice.Legs.Count;
            var (lane, end) = arrives ? (splice.Arriving[i - splice.Legs.Count].Lane, splice.Arriving[i - splice.Legs.Count].End) : splice.Legs[i];
            var far = PlaceOf(lane, 1 - end);
            lanes[i] = new(arrives, far, by.PassingLanes[lane], isBeyond && far >= lowBy && far <= highBy);
        }

        return new(low, high, lanes, isBeyond);
    }

    private (double Low, double High) RangeOf(SpliceBundle bundle)
    {
        var (low, high) = KeysBeyond(bundle);
        return low <= high ? (low, high) : (spliceKey[bundle.Splice], spliceKey[bundle.Splice]);
    }

    // round the tree; the pins follow beyond the last key, from the last to the first
    private double PlaceOf(int lane, int end)
    {
        var at = EndOf(lane, end);
        return at.Kind == ChartEndKind.Pin ? keys.Length + spliceKey.Length + cardLow.Length + problem.Table!.RowsMm.Length - at.Index : keys[lane, end];
    }
}
