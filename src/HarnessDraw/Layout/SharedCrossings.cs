namespace HarnessDraw.Layout;

/// <summary>What a splice may do: where each of its arriving lanes runs, as the number of <see cref="Places"/> round the tree that lie before it, lane by lane.</summary>
/// <param name="Places">Rising; in what lies between two of them it makes no difference to other splices where a lane runs.</param>
/// <param name="Arriving">How many lanes arrive; 0: there is no choice.</param>
/// <param name="Cost">By choice (the first lane counts ones, the next as many as there are places and one more): crossings with unspliced lanes.</param>
internal sealed record SpliceChoices(double[] Places, int Arriving, int[] Cost);

/// <summary>
/// The least that splices cost together. What each costs the unspliced lanes depends on where its lanes run, and so does what two cost each other. Costs are moved between a splice and
/// its pairs, choice by choice, so that no sum of any choice of all changes (sequential tree-reweighted message passing: V. Kolmogorov, IEEE PAMI 28 (2006)); whatever was moved, the least of every
/// splice and of every pair add up to a bound. Parts of a crossing are whole numbers, so nothing is rounded.
/// </summary>
internal sealed class SharedCrossings
{
    private const int Unit = 1 << 10;
    private const int MostPasses = 20;
    private const int PassesWithoutGain = 3;

    private sealed class Pair(int[] least, int first, int second, int[] atFirst, int[] atSecond)
    {
        private readonly int countSecond = atSecond.Max() + 1;
        private readonly int countFirst = atFirst.Max() + 1;

        public int First => first;
        public int Second => second;
        public int[] Least => least;

        public int[] ChoiceAt(int splice) => splice == first ? atFirst : atSecond;

        // the least by choice of one of the two, taken out of the pair
        public int[] Take(int splice)
        {
            var taken = new int[splice == first ? countFirst : countSecond];
            Array.Fill(taken, int.MaxValue);
            for (var (i, at) = (0, 0); i < countFirst; i++)
            {
                for (var j = 0; j < countSecond; j++, at++)
                {
                    ref var now = ref taken[splice == first ? i : j];
                    now = Math.Min(now, least[at]);
                }
            }

            Add(splice, taken, -1);
            return taken;
        }

        public void Add(int splice, int[] some, int sign)
        {
            for (var (i, at) = (0, 0); i < countFirst; i++)
            {
                for (var j = 0; j < countSecond; j++, at++)
                {
                    least[at] += sign * some[splice == first ? i : j];
                }
            }
        }
    }

    private readonly int[][] cost;
    private readonly List<Pair>[] pairsOf;
    private readonly List<Pair> pairs = [];
    private readonly int without;

    public SharedCrossings(ChartLanes lanes, List<int> splices, List<(int Splice, int Other, int Least)> some)
    {
        var at = splices.Select((s, i) => (s, i)).ToDictionary(x => x.s, x => x.i);
        var choices = splices.ConvertAll(lanes.ChoicesAt);
        cost = [.. choices.Select(c => Array.ConvertAll(c.Cost, x => x * Unit))];
        pairsOf = [.. splices.Select(_ => new List<Pair>())];
        foreach (var (splice, other, least) in some)
        {
            var (a, b) = (at[splice], at[other]);
            if (lanes.LeastOfPair(splice, other) is not { } found)
            {
                without += least;
                continue;
            }

            var table = found.Whatever(choices[a].Arriving == 0, choices[b].Arriving == 0);

            if (Array.TrueForAll(table.Least, l => l == table.Least[0]))
            {
                without += Math.Max(least, table.Least[0]);
                continue;
            }

            var pair = new Pair(Array.ConvertAll(table.Least, x => Math.Max(x, least) * Unit), a, b, table.First.Among(choices[a]), table.Second.Among(choices[b]));
            pairs.Add(pair);
            pairsOf[a].Add(pair);
            pairsOf[b].Add(pair);
        }
    }

    /// <summary>The bound; it is not made better than enough.</summary>
    public int Least(int enough)
    {
        var (best, idle) = (Bound(), 0);
        for (var pass = 0; pass < MostPasses && best < enough && idle < PassesWithoutGain && pairs.Count > 0; pass++)
        {
            for (var k = 0; k < cost.Length; k++)
            {
                Share(pass % 2 == 0 ? k : cost.Length - 1 - k, isForward: pass % 2 == 0);
            }

            idle = Bound() > best ? 0 : idle + 1;
            best = Math.Max(best, Bound());
        }

        return best;
    }

    private int Bound()
    {
        var sum = 0L;
        foreach (var c in cost)
        {
            sum += c.Min();
        }

        foreach (var pair in pairs)
        {
            sum += pair.Least.Min();
        }

        return without + (int)((sum + Unit - 1) / Unit);
    }

    // a splice takes all that it can from its pairs and gives it, in equal parts, to those with splices that come later
    private void Share(int splice, bool isForward)
    {
        var own = cost[splice];
        var later = 0;
        foreach (var pair in pairsOf[splice])
        {
            var (taken, at) = (pair.Take(splice), pair.ChoiceAt(splice));
            for (var c = 0; c < own.Length; c++)
            {
                own[c] += taken[at[c]];
            }

            later += IsLater(pair) ? 1 : 0;
        }

        var parts = Math.Max(later, pairsOf[splice].Count - later);
        var all = (int[])own.Clone();
        foreach (var pair in pairsOf[splice].Where(IsLater))
        {
            var at = pair.ChoiceAt(splice);
            var given = new int[at.Max() + 1];
            Array.Fill(given, int.MaxValue);
            for (var c = 0; c < all.Length; c++)
            {
                given[at[c]] = Math.Min(given[at[c]], all[c]);
            }

            for (var i = 0; i < given.Length; i++)
            {
                given[i] = given[i] == int.MaxValue ? 0 : given[i] / parts;
            }

            pair.Add(splice, given, 1);
            for (var c = 0; c < own.Length; c++)
            {
                own[c] -= given[at[c]];
            }
        }

        bool IsLater(Pair pair) => (pair.First == splice ? pair.Second : pair.First) > splice == isForward;
    }
}
