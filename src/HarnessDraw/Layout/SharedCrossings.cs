namespace HarnessDraw.Layout;

/// <summary>
/// The least that splices cost together. What each costs the unspliced lanes depends on where its lane runs, and so does what two cost each other: each pair is counted with the one, with
/// the other, or half with each, and the least of each splice is taken over all that is counted with it. Whatever the shares are, the sum is a bound; they are changed while that raises it.
/// </summary>
internal sealed class SharedCrossings
{
    // with more splices each pair is counted by itself: that takes a hundredth of the time
    private const int MostShared = 100;
    private const int MostPasses = 4;

    /// <summary>By gap of either splice; null: does not depend on it. <see cref="Halves"/> of it are counted with the first.</summary>
    private sealed record Pair(int First, int Second, int[]? AtFirst, int[]? AtSecond)
    {
        public int Halves { get; set; }
    }

    // twice the crossings by splice and gap
    private readonly Dictionary<int, int[]> sums = [];
    private readonly List<Pair> pairs = [];
    private readonly int fixedHalves;

    public SharedCrossings(ChartLanes lanes, List<int> splices, List<(int Splice, int Other, int Least)> some)
    {
        foreach (var splice in splices)
        {
            sums[splice] = Array.ConvertAll(lanes.AgainstSingles(splice), c => 2 * c);
        }

        var isFew = splices.Count <= MostShared;
        foreach (var (splice, other, least) in some)
        {
            var (first, second) = isFew ? (lanes.WithOther(splice, other), lanes.WithOther(other, splice)) : (null, null);
            if (first is null && second is null)
            {
                fixedHalves += 2 * Math.Max(least, lanes.LeastOfPair(splice, other) ?? 0);
                continue;
            }

            var pair = new Pair(splice, other, AtLeast(first, least), AtLeast(second, least)) { Halves = first is null ? 0 : 2 };
            pairs.Add(pair);
            Count(pair, 1);
        }
    }

    /// <summary>The bound, with the best shares found.</summary>
    public int Least()
    {
        for (var (pass, again) = (0, true); again && pass < MostPasses; pass++)
        {
            again = false;
            foreach (var pair in pairs)
            {
                again |= pair.AtFirst is not null && pair.AtSecond is not null && Improve(pair);
            }
        }

        return (fixedHalves + sums.Values.Sum(s => s.Min()) + 1) / 2;
    }

    private bool Improve(Pair pair)
    {
        var (before, best) = (pair.Halves, pair.Halves);
        var most = LeastOf(pair);
        for (var halves = 0; halves <= 2; halves++)
        {
            Set(pair, halves);
            if (LeastOf(pair) is var now && now > most)
            {
                (most, best) = (now, halves);
            }
        }

        Set(pair, best);
        return best != before;
    }

    private int LeastOf(Pair pair) => sums[pair.First].Min() + sums[pair.Second].Min();

    private void Set(Pair pair, int halves)
    {
        Count(pair, -1);
        pair.Halves = halves;
        Count(pair, 1);
    }

    private void Count(Pair pair, int sign)
    {
        Add(sums[pair.First], pair.AtFirst, sign * pair.Halves);
        Add(sums[pair.Second], pair.AtSecond, sign * (2 - pair.Halves));
    }

    private static void Add(int[] sum, int[]? some, int times)
    {
        for (var g = 0; g < sum.Length && some is not null && times != 0; g++)
        {
            sum[g] += times * some[g];
        }
    }

    private static int[]? AtLeast(int[]? some, int least) => some is null ? null : Array.ConvertAll(some, c => Math.Max(c, least));
}
