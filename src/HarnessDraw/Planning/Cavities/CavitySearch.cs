namespace HarnessDraw.Planning.Cavities;

/// <summary>
/// Deals out the cavities of a connector at least cost and, of equal costs, with the fewest crossings on the chart (<see cref="CavityOrder"/>). Up to twelve wires are dealt out exactly while the
/// spliced ones stay, which begin at every place if they are few; more of them by exchanging and moving while that helps.
/// </summary>
public static class CavitySearch
{
    /// <summary>As many open wires are dealt out exactly: by which of them have a cavity already (2^12 cases a cavity).</summary>
    public const int MostExact = 12;
    private const int MostPasses = 40;

    // beyond it spliced wires begin at a few places only
    private const int MostSteps = 2_000_000;

    // a crossing weighs less than any cost
    private const double Crossing = 1e-4;

    /// <summary>The cavity of each wire.</summary>
    /// <param name="cost">By wire and cavity; what may not be is infinite. Whole numbers.</param>
    /// <param name="wires">What each wire leads to.</param>
    /// <param name="start">The cavity of each wire to begin with.</param>
    /// <param name="isOpen">Which wires may get another one.</param>
    public static int[] Best(double[][] cost, CavityWire[] wires, int[] start, bool[] isOpen)
    {
        ArgumentNullException.ThrowIfNull(cost);
        ArgumentNullException.ThrowIfNull(wires);
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(isOpen);
        var best = start;
        var least = double.PositiveInfinity;
        foreach (var places in Beginnings(wires, isOpen.Count(o => o), cost.Length == 0 ? 0 : cost[0].Length))
        {
            var order = new CavityOrder(wires);
            places.CopyTo(order.Places, 0);
            var cavities = Settled(cost, order, start, isOpen);
            if (Score(cost, order, cavities) is var score && score < least - (Crossing / 2))
            {
                (best, least) = (cavities, score);
            }
        }

        return best;
    }

    // where spliced wires run at first: everywhere, if there are few enough of them; else beside the middle, the first and the last end
    private static List<double[]> Beginnings(CavityWire[] wires, int open, int cavities)
    {
        var spliced = Enumerable.Range(0, wires.Length).Where(i => wires[i].IsSpliced).ToArray();
        List<double[]> some = [.. (spliced.Length > 0 ? (double[])[0.5, 0, 1] : [0.5]).Select(share => Array.ConvertAll(wires, w => w.Low + (share * (w.High - w.Low))))];
        var gaps = new CavityOrder(wires).Gaps.ToArray();
        if (open > MostExact || (spliced.Length * Math.Log(gaps.Length)) + Math.Log(Math.Pow(2, open) * open * cavities) > Math.Log(MostSteps))
        {
            return some;
        }

        List<double[]> all = [some[0]];
        foreach (var wire in spliced)
        {
            all = [.. all.SelectMany(p => gaps.Select(g => p.Select((x, i) => i == wire ? g : x).ToArray()))];
        }

        return all;
    }

    /// <summary>Cost, and crossings as fractions of it.</summary>
    public static double Score(double[][] cost, CavityOrder order, int[] cavities)
    {
        ArgumentNullException.ThrowIfNull(cost);
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(cavities);
        return cavities.Select((c, i) => cost[i][c]).Sum() + (Crossing * order.Crossings(cavities));
    }

    // cavities and the places of spliced wires in turn
    private static int[] Settled(double[][] cost, CavityOrder order, int[] start, bool[] isOpen)
    {
        var cavities = (int[])start.Clone();
        var open = Enumerable.Range(0, isOpen.Length).Where(i => isOpen[i]).ToArray();
        var least = double.PositiveInfinity;
        for (var pass = 0; pass < MostPasses; pass++)
        {
            if (open.Length <= MostExact)
            {
                Deal(cost, order, cavities, open);
            }
            else
            {
                Exchange(cost, order, cavities, open);
            }

            order.Settle(cavities);
            var score = Score(cost, order, cavities);
            if (score >= least - (Crossing / 2))
            {
                break;
            }

            least = score;
        }

        return cavities;
    }

    // cavity after cavity: the least for every set of wires that have one by then
    private static void Deal(double[][] cost, CavityOrder order, int[] cavities, int[] open)
    {
        var sets = 1 << open.Length;
        var count = cost.Length == 0 ? 0 : cost[0].Length;
        var isTaken = new bool[count];
        for (var i = 0; i < cavities.Length; i++)
        {
            isTaken[cavities[i]] |= Array.IndexOf(open, i) < 0;
        }

        // of one wire in a cavity: its cost and its crossings with wires that stay; of two: whether they cross with the first before the second
        var alone = new double[open.Length, count];
        var after = new int[open.Length];
        for (var n = 0; n < open.Length; n++)
        {
            for (var c = 0; c < count; c++)
            {
                alone[n, c] = isTaken[c] ? double.PositiveInfinity : cost[open[n]][c] + (Crossing * Staying(open[n], c));
            }

            for (var m = 0; m < open.Length; m++)
            {
                after[n] |= order.Places[open[m]] > order.Places[open[n]] ? 1 << m : 0;
            }
        }

        var least = new double[sets];
        Array.Fill(least, double.PositiveInfinity);
        least[0] = 0;
        var chosen = new sbyte[count][];
        for (var c = 0; c < count; c++)
        {
            chosen[c] = new sbyte[sets];
            Array.Fill(chosen[c], (sbyte)-1);
            // larger sets first: a set is reached from the one without the wire, as it was before this cavity
            for (var set = sets - 1; set > 0 && !isTaken[c]; set--)
            {
                for (var n = 0; n < open.Length; n++)
                {
                    var without = set & ~(1 << n);
                    if (without != set && least[without] + alone[n, c] + (Crossing * System.Numerics.BitOperations.PopCount((uint)(without & after[n]))) is var now && now < least[set] - (Crossing / 2))
                    {
                        (least[set], chosen[c][set]) = (now, (sbyte)n);
                    }
                }
            }
        }

        if (double.IsPositiveInfinity(least[sets - 1]))
        {
            return;
        }

        for (var (c, set) = (count - 1, sets - 1); c >= 0; c--)
        {
            if (chosen[c][set] is >= 0 and var n)
            {
                cavities[open[n]] = c;
                set &= ~(1 << n);
            }
        }

        int Staying(int wire, int cavity)
        {
            var crossings = 0;
            for (var j = 0; j < cavities.Length; j++)
            {
                crossings += Array.IndexOf(open, j) < 0 && cavities[j] != cavity && order.Places[j] != order.Places[wire]
                    && cavities[j] < cavity != order.Places[j] < order.Places[wire] ? 1 : 0;
            }

            return crossings;
        }
    }

    // a wire takes another cavity, free or another's, while that helps
    private static void Exchange(double[][] cost, CavityOrder order, int[] cavities, int[] open)
    {
        var count = cost[0].Length;
        var inCavity = new int[count];
        Array.Fill(inCavity, -1);
        var isShut = new bool[count];
        for (var i = 0; i < cavities.Length; i++)
        {
            inCavity[cavities[i]] = i;
            isShut[cavities[i]] |= Array.IndexOf(open, i) < 0;
        }

        for (var (pass, again) = (0, true); again && pass < MostPasses; pass++)
        {
            again = false;
            foreach (var i in open)
            {
                for (var c = 0; c < count; c++)
                {
                    var (old, j) = (cavities[i], inCavity[c]);
                    if (c == old || isShut[c] || double.IsPositiveInfinity(cost[i][c]) || (j >= 0 && double.IsPositiveInfinity(cost[j][old])) || Gain(i, c, j, old) <= Crossing / 2)
                    {
                        continue;
                    }

                    (cavities[i], inCavity[c], inCavity[old]) = (c, i, j);
                    if (j >= 0)
                    {
                        cavities[j] = old;
                    }

                    again = true;
                }
            }
        }

        double Gain(int i, int to, int j, int old)
        {
            var gain = cost[i][old] - cost[i][to] + (Crossing * (order.CrossingsOf(i, old, cavities, j) - order.CrossingsOf(i, to, cavities, j)));
            if (j >= 0)
            {
                var mutual = order.Places[i] == order.Places[j] ? 0 : old < to == order.Places[i] < order.Places[j] ? -1 : 1;
                gain += cost[j][to] - cost[j][old] + (Crossing * (order.CrossingsOf(j, to, cavities, i) - order.CrossingsOf(j, old, cavities, i) + mutual));
            }

            return gain;
        }
    }
}
