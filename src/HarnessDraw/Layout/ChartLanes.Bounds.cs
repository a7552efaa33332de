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

    public bool Passes(int splice, int lane) => bundlesOfAll[splice].PassingLanes[lane];

    /// <summary>The fewest crossings with the unspliced lanes that pass the splice, wherever its own lanes run.</summary>
    public int LeastAgainstSingles(int splice) => new SplicePlacing(this, bundlesOfAll, bundlesOfAll[splice]).LeastAgainstSingles();

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
    public int? LeastOfPair(int splice, int other) => SplicePair.Least(Seen(bundlesOfAll[splice], bundlesOfAll[other]), Seen(bundlesOfAll[other], bundlesOfAll[splice]));

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
