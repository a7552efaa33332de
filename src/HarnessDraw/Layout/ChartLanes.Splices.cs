namespace HarnessDraw.Layout;

// where the lanes that arrive at a splice run on the way to it: each splice in turn takes the best place while the others stay
internal sealed partial class ChartLanes
{
    private const int MostRounds = 12;

    private void PlaceSplices()
    {
        var bundles = new SpliceBundle[problem.Splices.Length];
        for (var s = 0; s < bundles.Length; s++)
        {
            bundles[s] = BundleAt(s);
        }

        foreach (var bundle in bundles)
        {
            Depend(bundles, bundle);
        }

        bundlesOfAll = bundles;
        // the far ones first: legs may end in another splice
        var order = bundles.ToArray();
        Array.Sort(order, (a, b) =>
        {
            var byDepth = b.Spine.Depth.CompareTo(a.Spine.Depth);
            return byDepth != 0 ? byDepth : a.At != b.At ? b.At.CompareTo(a.At) : a.Splice.CompareTo(b.Splice);
        });
        Search(bundles, order);
        if (!problem.Likeness.IsEmpty)
        {
            // from there on nothing moves that would cross more
            Improve(bundles, order, withColours: true);
        }

        DrawBars(bundles, order);
    }

    // the fewest crossings of several starts, as a splice alone does not move where two would have to; of equal ones the first
    private void Search(SpliceBundle[] bundles, SpliceBundle[] farFirst)
    {
        var nearFirst = farFirst.Reverse().ToArray();
        var (least, best) = (int.MaxValue, (Keys: keys, Splices: spliceKey, Low: cardLow, High: cardHigh));
        var starts = StartsOf(bundles.Length);
        for (var start = 0; start < starts; start++)
        {
            var order = start % 2 == 0 ? farFirst : nearFirst;
            foreach (var bundle in order)
            {
                Begin(bundle, start);
            }

            Improve(bundles, order, withColours: false);
            if (starts == 1)
            {
                return;
            }

            if (Count() is var count && count < least)
            {
                (least, best) = (count, ((double[,])keys.Clone(), (double[])spliceKey.Clone(), (double[])cardLow.Clone(), (double[])cardHigh.Clone()));
            }
        }

        (keys, spliceKey, cardLow, cardHigh) = best;
    }

    private static int StartsOf(int splices) => splices switch { < 2 or > 60 => 1, > 4 => 3, _ => 12 };

    private int Count()
    {
        Run();
        var count = CrossingCount.Of(problem, spines, this);
        foreach (var spine in spines)
        {
            spine.Runs.Clear();
        }

        return count;
    }

    private void Improve(SpliceBundle[] bundles, SpliceBundle[] order, bool withColours)
    {
        // when each splice was looked at and when its lanes were moved last
        var (looked, moved, now) = (new int[bundles.Length], new int[bundles.Length], 0);
        var again = true;
        for (var round = 0; round < MostRounds && again; round++)
        {
            again = false;
            foreach (var bundle in order)
            {
                if (round > 0 && !bundle.DependsOn.Exists(t => moved[t] > looked[bundle.Splice]))
                {
                    continue;
                }

                looked[bundle.Splice] = ++now;
                if (new SplicePlacing(this, bundles, bundle, withColours).Improve(isFirst: round == 0 && !withColours))
                {
                    moved[bundle.Splice] = now;
                    again = true;
                }
            }

            if (again || !withColours)
            {
                Renumber();
            }
        }
    }

    // at first beside the middle leg; then scattered, no two splices alike (multiples of the golden section)
    private void Begin(SpliceBundle bundle, int start)
    {
        var legs = bundle.Legs.ConvertAll(l => keys[l.Lane, 1 - l.End]);
        legs.Sort();
        var (low, high) = KeysBeyond(bundle);
        for (var i = 0; i < bundle.Arriving.Count; i++)
        {
            var (lane, end, _, _) = bundle.Arriving[i];
            keys[lane, end] = start > 0 && low <= high ? low - 0.5 + (start * (bundle.Splice + 1 + i) * 0.618034 % 1 * (high - low + 1))
                : (legs.Count > 0 ? legs[legs.Count / 2] : spliceKey[bundle.Splice]) + (i * 0.001);
        }
    }

    // whole numbers again, in the same order: places between keys never run out
    private void Renumber()
    {
        var all = new List<double>(keys.Length + spliceKey.Length + (2 * cardLow.Length));
        all.AddRange(spliceKey);
        foreach (var key in keys)
        {
            all.Add(key);
        }

        all.AddRange(cardLow);
        all.AddRange(cardHigh);
        all.Sort();
        var sorted = all.Distinct().ToArray();
        for (var lane = 0; lane < problem.Lanes.Length; lane++)
        {
            (keys[lane, 0], keys[lane, 1]) = (Place(keys[lane, 0]), Place(keys[lane, 1]));
        }

        for (var s = 0; s < spliceKey.Length; s++)
        {
            spliceKey[s] = Place(spliceKey[s]);
        }

        for (var c = 0; c < cardLow.Length; c++)
        {
            (cardLow[c], cardHigh[c]) = (Place(cardLow[c]), Place(cardHigh[c]));
        }

        double Place(double key) => Array.BinarySearch(sorted, key);
    }

    /// <summary>From the lowest to the highest key of the lanes that a splice joins.</summary>
    private (double Low, double High) BarOf(SpliceBundle bundle, int without = -1)
    {
        double low = double.MaxValue, high = double.MinValue;
        foreach (var (lane, end) in bundle.Legs)
        {
            if (lane != without)
            {
                (low, high) = (Math.Min(low, keys[lane, 1 - end]), Math.Max(high, keys[lane, 1 - end]));
            }
        }

        foreach (var (lane, end, _, _) in bundle.Arriving)
        {
            (low, high) = (Math.Min(low, keys[lane, end]), Math.Max(high, keys[lane, end]));
        }

        return (low, high);
    }
}
