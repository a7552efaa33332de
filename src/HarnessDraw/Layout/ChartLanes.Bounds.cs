namespace HarnessDraw.Layout;

// the least that a splice can cost while every lane keeps its place and the bar stays at its station
internal sealed partial class ChartLanes
{
    // with more choices only the least of all counts
    private const double MostChoices = 100_000;
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

    /// <summary>What places there are for the lanes that arrive at a splice, and the fewest crossings with the unspliced lanes that pass it.</summary>
    public SpliceChoices ChoicesAt(int splice)
    {
        var bundle = bundlesOfAll[splice];
        var single = new SplicePlacing(this, bundlesOfAll, bundle).AgainstSingles();
        if (single is not { } alone || Math.Pow(alone.Bounds.Count + 1, bundle.Arriving.Count) > MostChoices)
        {
            return OnlyOne();
        }

        var (low, high) = RangeOf(bundle);
        var places = PlacesOfSplices().Where(p => p >= low && p <= high).Distinct().Order().ToArray();
        return Math.Pow(places.Length + 1, bundle.Arriving.Count) > MostChoices ? OnlyOne() : new(places, bundle.Arriving.Count, alone.LeastBetween(places));

        SpliceChoices OnlyOne() => new([], 0, [new SplicePlacing(this, bundlesOfAll, bundle).LeastAgainstSingles()]);
    }

    // where lanes that do not move end, and where what lies beyond a splice ends
    private IEnumerable<double> PlacesOfSplices()
    {
        foreach (var bundle in bundlesOfAll)
        {
            var (low, high) = RangeOf(bundle);
            yield return low;
            yield return high;
            foreach (var (lane, end) in spliceEnds[bundle.Splice])
            {
                yield return PlaceOf(lane, 1 - end);
            }
        }
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
    public PairCrossings? LeastOfPair(int splice, int other) => SplicePair.Least(Seen(bundlesOfAll[splice], bundlesOfAll[other]), Seen(bundlesOfAll[other], bundlesOfAll[splice]), Pairs);

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
