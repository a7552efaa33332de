namespace HarnessDraw.Layout;

/// <summary>A lane of a splice as the other splice of a pair sees it.</summary>
/// <param name="Arrives">True when it comes to the splice from the side of the root; false: a leg beyond the splice.</param>
/// <param name="Far">Place round the tree of its other end.</param>
/// <param name="Passes">True when it passes the other splice.</param>
/// <param name="IsBeyond">True when it lies beyond the other splice with both ends.</param>
internal readonly record struct PairLane(bool Arrives, double Far, bool Passes, bool IsBeyond);

/// <summary>One splice of a pair: the range of places round the tree beyond it, its lanes, and whether it lies beyond the other one.</summary>
internal sealed record PairSplice(double Low, double High, PairLane[] Lanes, bool IsBeyond);

/// <summary>
/// The fewest crossings of the lanes of two splices with each other, wherever the lanes that arrive at them run: every order of those lanes among all ends of both is
/// tried. A crossing is forced where the ends of two lanes alternate round the tree; a lane that passes the other splice crosses its bar where it runs between the bar's ends.
/// </summary>
internal sealed class SplicePair
{
    private const double MostTried = 300_000;
    private const double MostTriedOfAll = 3_000_000;
    private readonly PairSplice a;
    private readonly PairSplice b;
    private readonly double[] at;
    private readonly double mostTried;
    private int[] byGap = [];

    // by lane of either: where it lies at its splice, and its far end
    private readonly double[] placeA;
    private readonly double[] placeB;
    private readonly double[] farA;
    private readonly double[] farB;

    private SplicePair(PairSplice a, PairSplice b, int pairs)
    {
        mostTried = Math.Min(MostTriedOfAll / pairs, MostTried);
        (this.a, this.b) = (a, b);
        // where nothing has to be tried places stay as they are
        at = !HasChoice(a, b) ? [] : [.. new SortedSet<double>([a.Low, a.High, b.Low, b.High, .. a.Lanes.Select(l => l.Far), .. b.Lanes.Select(l => l.Far)])];
        (placeA, farA) = (Array.ConvertAll(a.Lanes, _ => Rank(a.Low)), Array.ConvertAll(a.Lanes, l => Rank(l.Far)));
        (placeB, farB) = (Array.ConvertAll(b.Lanes, _ => Rank(b.Low)), Array.ConvertAll(b.Lanes, l => Rank(l.Far)));
    }

    /// <summary>Null where there are too many orders to try; the more pairs there are, the fewer may be tried for each.</summary>
    public static int? Least(PairSplice a, PairSplice b, int pairs)
    {
        if (!HasChoice(a, b))
        {
            return new SplicePair(a, b, pairs).Crossings();
        }

        // those of the splice with more of them lie between those of the other one
        return a.Lanes.Count(l => l.Arrives) < b.Lanes.Count(l => l.Arrives) ? new SplicePair(b, a, pairs).LeastOfAll() : new SplicePair(a, b, pairs).LeastOfAll();
    }

    /// <summary>
    /// The same by where the one lane that arrives at <paramref name="a"/> runs: between which two of the places that matter (by how many of them lie before it). Null as above, and
    /// where not just one arrives.
    /// </summary>
    public static (double[] Places, int[] Least)? LeastByPlace(PairSplice a, PairSplice b, int pairs)
    {
        if (a.Lanes.Count(l => l.Arrives) != 1)
        {
            return null;
        }

        var pair = new SplicePair(a, b, pairs);
        if (pair.at.Length == 0)
        {
            return ([], [pair.Crossings()]);
        }

        pair.byGap = new int[pair.at.Length + 1];
        Array.Fill(pair.byGap, int.MaxValue);
        return pair.LeastOfAll() is null ? null : (pair.at, pair.byGap);
    }

    private static bool HasChoice(PairSplice a, PairSplice b) => Array.Exists(a.Lanes, l => l.Passes) || Array.Exists(b.Lanes, l => l.Passes);

    private double Rank(double place) => at.Length == 0 ? place : Array.BinarySearch(at, place);

    // every order of the lanes that arrive at b; those at a then find their best places by themselves
    private int? LeastOfAll()
    {
        var few = b.Lanes.Count(l => l.Arrives);
        var (placesA, placesB) = (Places(a, -1, few + 1), Places(b, 0, few));
        var (arrivingA, arrivingB) = (Arriving(a), Arriving(b));
        if (Math.Pow(placesB.Length, arrivingB.Length) * Math.Pow(placesA.Length, Math.Min(2, arrivingA.Length)) > mostTried)
        {
            return null;
        }

        var best = int.MaxValue;
        Try(0);
        return best;

        void Try(int n)
        {
            if (n == arrivingB.Length)
            {
                best = Math.Min(best, LeastOfA(arrivingA, placesA, best));
                return;
            }

            foreach (var place in placesB)
            {
                placeB[arrivingB[n]] = place;
                Try(n + 1);
            }
        }
    }

    // the bar of a from every place to every other: within it each lane that arrives takes its best one
    private int LeastOfA(int[] arriving, double[] places, int below)
    {
        var (fix, cost) = (0, new int[arriving.Length, places.Length]);
        for (var i = 0; i < farA.Length; i++)
        {
            var n = Array.IndexOf(arriving, i);
            for (var k = 0; k < (n < 0 ? 1 : places.Length); k++)
            {
                placeA[i] = places[k];
                var crossings = AtOther(i);
                fix += n < 0 ? crossings : 0;
                if (n >= 0)
                {
                    cost[n, k] = crossings;
                }
            }
        }

        double legsLow = double.MaxValue, legsHigh = double.MinValue;
        for (var i = 0; i < farA.Length; i++)
        {
            (legsLow, legsHigh) = a.Lanes[i].Arrives ? (legsLow, legsHigh) : (Math.Min(legsLow, farA[i]), Math.Max(legsHigh, farA[i]));
        }

        if (arriving.Length == 1)
        {
            for (var k = 0; k < places.Length; k++)
            {
                var crossings = fix + cost[0, k] + InBar(Math.Min(places[k], legsLow), Math.Max(places[k], legsHigh));
                below = Math.Min(below, crossings);
                if (byGap.Length > 0)
                {
                    ref var least = ref byGap[(int)Math.Round(places[k] + 0.5)];
                    least = Math.Min(least, crossings);
                }
            }

            return below;
        }

        var inside = new int[arriving.Length];
        for (var from = 0; from < places.Length && (from == 0 || places[from - 1] < legsLow); from++)
        {
            Array.Fill(inside, int.MaxValue);
            for (var to = from; to < places.Length; to++)
            {
                var sum = fix;
                for (var n = 0; n < inside.Length; n++)
                {
                    sum += inside[n] = Math.Min(inside[n], cost[n, to]);
                }

                var bar = InBar(Math.Min(places[from], legsLow), Math.Max(places[to], legsHigh));
                if (fix + bar >= below)
                {
                    break;
                }

                below = Math.Min(below, sum + bar);
            }
        }

        return below;
    }

    // crossings of one lane of a with those of b, wherever the others of a run
    private int AtOther(int i)
    {
        var count = a.Lanes[i].Passes && IsInside(a.IsBeyond ? placeA[i] : farA[i], b, placeB, farB) ? 1 : 0;
        for (var j = 0; j < farB.Length; j++)
        {
            count += Cross(i, j) ? 1 : 0;
        }

        return count;
    }

    private int InBar(double low, double high)
    {
        var count = 0;
        for (var j = 0; j < farB.Length; j++)
        {
            var key = b.IsBeyond ? placeB[j] : farB[j];
            count += b.Lanes[j].Passes && key > low && key < high ? 1 : 0;
        }

        return count;
    }

    private static bool IsInside(double key, PairSplice of, double[] place, double[] far)
    {
        double low = double.MaxValue, high = double.MinValue;
        for (var i = 0; i < far.Length; i++)
        {
            var end = of.Lanes[i].Arrives ? place[i] : far[i];
            (low, high) = (Math.Min(low, end), Math.Max(high, end));
        }

        return key > low && key < high;
    }

    private static int[] Arriving(PairSplice splice) => [.. Enumerable.Range(0, splice.Lanes.Length).Where(i => splice.Lanes[i].Arrives)];

    // every gap from before the first place beyond the splice to behind the last, each a few times; where neither lies beyond the other their places lie apart
    private double[] Places(PairSplice splice, int first, int count)
    {
        var apart = a.IsBeyond || b.IsBeyond ? 0 : 0.2;
        var (low, high) = ((int)Rank(splice.Low), (int)Rank(splice.High) + 1);
        return [.. Enumerable.Range(low, high - low + 1).SelectMany(gap => Enumerable.Range(0, count).Select(i => gap - 0.5 + (0.02 * (first + (2 * i))) + (gap == low ? apart : gap == high ? -apart : 0)))];
    }

    private int Crossings()
    {
        var count = 0;
        for (var i = 0; i < farA.Length; i++)
        {
            count += AtOther(i);
        }

        return count;
    }

    // a leg lies within what is beyond its splice, a lane that arrives outside it; what passes a leg's splice crosses its bar, if anything
    private bool Cross(int i, int j)
    {
        var (x, y) = (a.Lanes[i], b.Lanes[j]);
        return x.Arrives != y.IsBeyond && y.Arrives != x.IsBeyond
            && Alternate(x.Arrives ? placeA[i] : Outside(a), farA[i], y.Arrives ? placeB[j] : Outside(b), farB[j]);
    }

    private double Outside(PairSplice splice) => Rank(splice.Low) - 0.75;

    private static bool Alternate(double from, double to, double other, double otherTo)
    {
        var (low, high) = (Math.Min(from, to), Math.Max(from, to));
        return (other > low && other < high) != (otherTo > low && otherTo < high);
    }
}
