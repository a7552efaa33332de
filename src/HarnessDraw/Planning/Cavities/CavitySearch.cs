namespace HarnessDraw.Planning.Cavities;

/// <summary>
/// Deals out the cavities of a connector at least cost and, of equal costs, with the fewest crossings on the chart (<see cref="CavityOrder"/>). Wires that cost the same in every cavity stand in the order of
/// their places. Up to a dozen wires, or many of a few kinds, are dealt out exactly while the spliced ones stay, which begin at every place if they are few; more of them three kinds at a time, the others staying. A spliced
/// wire also runs elsewhere while its kind is dealt out anew, as long as anything helps.
/// </summary>
public static class CavitySearch
{
    // steps of dealing out exactly, for the wires as they run: from every beginning (twelve wires in as many cavities), or once from the best that three kinds at a time led to (eighty of three kinds)
    private const double MostStepsEach = 600_000;
    private const double MostStepsOnce = 6_000_000;
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
        var (best, bestPlaces) = (start, Array.Empty<double>());
        var least = double.PositiveInfinity;
        var kinds = KindsOf(cost, isOpen);
        var steps = kinds.Aggregate((double)kinds.Count, (n, k) => n * (k.Count + 1)) * (cost.Length == 0 ? 0 : cost[0].Length);
        foreach (var places in Beginnings(wires, steps))
        {
            Try(places, start, isExact: steps <= MostStepsEach);
        }

        if (steps is > MostStepsEach and <= MostStepsOnce)
        {
            Try(bestPlaces, best, isExact: true);
        }

        return best;

        void Try(double[] places, int[] from, bool isExact)
        {
            var order = new CavityOrder(wires);
            places.CopyTo(order.Places, 0);
            var cavities = Settled(cost, order, from, kinds, isExact);
            if (Score(cost, order, cavities) is var score && score < least - (Crossing / 2))
            {
                (best, bestPlaces, least) = (cavities, order.Places, score);
            }
        }
    }

    // where spliced wires run at first: everywhere, if there are few enough of them; else beside the middle, the first and the last end
    private static List<double[]> Beginnings(CavityWire[] wires, double steps)
    {
        var spliced = Enumerable.Range(0, wires.Length).Where(i => wires[i].IsSpliced).ToArray();
        List<double[]> some = [.. (spliced.Length > 0 ? (double[])[0.5, 0, 1] : [0.5]).Select(share => Array.ConvertAll(wires, w => w.Low + (share * (w.High - w.Low))))];
        var gaps = new CavityOrder(wires).Gaps.ToArray();
        if ((spliced.Length * Math.Log(gaps.Length)) + Math.Log(Math.Max(1, steps)) > Math.Log(MostSteps))
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

    // open wires that cost the same in every cavity
    private static List<List<int>> KindsOf(double[][] cost, bool[] isOpen)
    {
        var kinds = new List<List<int>>();
        for (var i = 0; i < isOpen.Length; i++)
        {
            if (!isOpen[i])
            {
                continue;
            }

            var at = 0;
            while (at < kinds.Count && !cost[kinds[at][0]].AsSpan().SequenceEqual(cost[i]))
            {
                at++;
            }

            if (at == kinds.Count)
            {
                kinds.Add([]);
            }

            kinds[at].Add(i);
        }

        return kinds;
    }

    // cavities and the places of spliced wires in turn, all kinds at once or three at a time
    private static int[] Settled(double[][] cost, CavityOrder order, int[] start, List<List<int>> kinds, bool isExact)
    {
        var cavities = (int[])start.Clone();
        var least = double.PositiveInfinity;
        for (var pass = 0; pass < MostPasses; pass++)
        {
            if (isExact)
            {
                Deal(cost, order, cavities, kinds);
            }
            else
            {
                DealByThrees(cost, order, cavities, kinds);
            }

            order.Settle(cavities);
            if (Score(cost, order, cavities) >= least - (Crossing / 2))
            {
                Rerun(cost, order, cavities, kinds);
            }

            var score = Score(cost, order, cavities);
            if (score >= least - (Crossing / 2))
            {
                break;
            }

            least = score;
        }

        return cavities;
    }

    private static void DealByThrees(double[][] cost, CavityOrder order, int[] cavities, List<List<int>> kinds)
    {
        for (var i = 0; i < kinds.Count; i++)
        {
            for (var j = 0; j < Math.Max(1, i); j++)
            {
                for (var k = 0; k < Math.Max(1, j); k++)
                {
                    Deal(cost, order, cavities, [.. new[] { kinds[i], kinds[j], kinds[k] }.Distinct()]);
                }
            }
        }
    }

    // a spliced wire runs elsewhere, and its kind is dealt out anew: where both together help
    private static void Rerun(double[][] cost, CavityOrder order, int[] cavities, List<List<int>> kinds)
    {
        foreach (var kind in kinds)
        {
            foreach (var wire in kind.Where(order.IsSpliced).ToArray())
            {
                var (best, bestPlace, least) = ((int[])cavities.Clone(), order.Places[wire], Score(cost, order, cavities));
                foreach (var gap in order.Gaps)
                {
                    order.Places[wire] = gap;
                    var tried = (int[])cavities.Clone();
                    Deal(cost, order, tried, [kind]);
                    if (Score(cost, order, tried) is var score && score < least - (Crossing / 2))
                    {
                        (best, bestPlace, least) = (tried, gap, score);
                    }
                }

                order.Places[wire] = bestPlace;
                best.CopyTo(cavities, 0);
            }
        }
    }

    // cavity after cavity: the least by how many wires of each kind have one by then, those of a kind in the order of their places
    private static void Deal(double[][] cost, CavityOrder order, int[] cavities, List<List<int>> kinds)
    {
        var count = cost.Length == 0 ? 0 : cost[0].Length;
        var sorted = kinds.ConvertAll(k => k.OrderBy(w => order.Places[w]).ToArray());
        var shut = Enumerable.Range(0, cavities.Length).Except(kinds.SelectMany(k => k)).ToArray();
        var isTaken = new bool[count];
        foreach (var i in shut)
        {
            isTaken[cavities[i]] = true;
        }

        // a step of each kind in the number of a state, and what the next wire of each kind crosses of those that have a cavity
        var (steps, states) = (new int[kinds.Count], 1);
        for (var k = 0; k < steps.Length; k++)
        {
            (steps[k], states) = (states, states * (kinds[k].Count + 1));
        }

        var crossed = Crossed(order, sorted, steps, states);
        var alone = sorted.ConvertAll(k => Array.ConvertAll(k, Alone));
        var least = new double[states];
        Array.Fill(least, double.PositiveInfinity);
        least[0] = 0;
        var chosen = new sbyte[count][];
        for (var c = 0; c < count; c++)
        {
            chosen[c] = new sbyte[states];
            Array.Fill(chosen[c], (sbyte)-1);
            // larger ones first: a state is reached from the one without the wire, as it was before this cavity
            for (var state = states - 1; state > 0 && !isTaken[c]; state--)
            {
                for (var k = 0; k < steps.Length; k++)
                {
                    var n = state / steps[k] % (sorted[k].Length + 1);
                    if (n > 0 && least[state - steps[k]] + alone[k][n - 1][c] + (Crossing * crossed[k][state - steps[k]]) is var now && now < least[state] - (Crossing / 2))
                    {
                        (least[state], chosen[c][state]) = (now, (sbyte)k);
                    }
                }
            }
        }

        if (double.IsPositiveInfinity(least[states - 1]))
        {
            return;
        }

        for (var (c, state) = (count - 1, states - 1); c >= 0; c--)
        {
            if (chosen[c][state] is >= 0 and var k)
            {
                cavities[sorted[k][(state / steps[k] % (sorted[k].Length + 1)) - 1]] = c;
                state -= steps[k];
            }
        }

        // what a wire costs in each cavity, with its crossings with those that stay
        double[] Alone(int wire)
        {
            var (of, change, place) = (new double[count], new int[count], order.Places[wire]);
            var crossings = 0;
            foreach (var j in shut)
            {
                crossings += order.Places[j] < place ? 1 : 0;
                change[cavities[j]] += order.Places[j].CompareTo(place);
            }

            for (var c = 0; c < count; c++)
            {
                of[c] = isTaken[c] ? double.PositiveInfinity : cost[wire][c] + (Crossing * crossings);
                crossings += change[c];
            }

            return of;
        }
    }

    // by kind and state: how many wires that have a cavity by then have a place behind that of the next wire of the kind
    private static List<int[]> Crossed(CavityOrder order, List<int[]> sorted, int[] steps, int states)
    {
        var crossed = new List<int[]>();
        for (var k = 0; k < sorted.Count; k++)
        {
            var upTo = Array.ConvertAll(sorted[k], w => sorted.ConvertAll(o => o.Count(x => order.Places[x] <= order.Places[w])));
            var of = new int[states];
            for (var state = 0; state < states; state++)
            {
                var next = state / steps[k] % (sorted[k].Length + 1);
                for (var o = 0; o < sorted.Count && next < sorted[k].Length; o++)
                {
                    of[state] += Math.Max(0, (state / steps[o] % (sorted[o].Length + 1)) - upTo[next][o]);
                }
            }

            crossed.Add(of);
        }

        return crossed;
    }
}
