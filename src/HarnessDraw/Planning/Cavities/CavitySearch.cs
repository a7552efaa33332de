namespace HarnessDraw.Planning.Cavities;

/// <summary>
/// Deals out the cavities of a connector at least cost and, of equal costs, with the fewest crossings on the chart (<see cref="CavityOrder"/>). Wires that cost the same in every cavity stand in the order of
/// their places. Up to a dozen wires, or many of a few kinds, are dealt out exactly while the spliced ones stay, which begin at every place if they are few; more of them two kinds at a time, the others staying, and
/// the best of these three kinds at a time. A spliced wire also runs elsewhere while its kind is dealt out anew, as long as anything helps.
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
        var kinds = KindsOf(cost, isOpen);
        var steps = kinds.Aggregate((double)kinds.Count, (n, k) => n * (k.Count + 1)) * (cost.Length == 0 ? 0 : cost[0].Length);
        var isSmall = steps <= MostStepsEach;

        // from every beginning by itself, side by side
        var beginnings = Beginnings(wires, steps);
        var tried = new (int[] Cavities, double[] Places, double Score)[beginnings.Count];
        SideBySide.For(tried.Length, () =>
        {
            var dealer = new CavityDealer(cost, Crossing);
            return b => tried[b] = Settled(dealer, beginnings[b], start, isSmall ? kinds.Count : 2);
        });
        (int[] Cavities, double[] Places, double Score) best = (start, [], double.PositiveInfinity);
        Array.ForEach(tried, Keep);
        if (!isSmall)
        {
            Keep(Settled(new(cost, Crossing), best.Places, best.Cavities, 3));
        }

        if (steps is > MostStepsEach and <= MostStepsOnce)
        {
            Keep(Settled(new(cost, Crossing), best.Places, best.Cavities, kinds.Count));
        }

        return best.Cavities;

        void Keep((int[] Cavities, double[] Places, double Score) one) => best = one.Score < best.Score - (Crossing / 2) ? one : best;

        (int[] Cavities, double[] Places, double Score) Settled(CavityDealer dealer, double[] places, int[] from, int together)
        {
            var order = new CavityOrder(wires);
            places.CopyTo(order.Places, 0);
            var cavities = CavitySearch.Settled(cost, dealer, order, from, kinds, together);
            return (cavities, order.Places, Score(cost, order, cavities));
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

    // cavities and the places of spliced wires in turn, so many kinds at a time
    private static int[] Settled(double[][] cost, CavityDealer dealer, CavityOrder order, int[] start, List<List<int>> kinds, int together)
    {
        var cavities = (int[])start.Clone();
        var least = double.PositiveInfinity;
        var choices = Choices(kinds, together).ToList();

        // by choice: the change after which it was dealt out last; while none follows it would be dealt out alike
        var dealtAfter = Enumerable.Repeat(-1, choices.Count).ToArray();
        var changes = 0;
        for (var pass = 0; pass < MostPasses; pass++)
        {
            for (var c = 0; c < choices.Count; c++)
            {
                if (dealtAfter[c] != changes)
                {
                    changes += dealer.Deal(order, cavities, choices[c]).IsChanged ? 1 : 0;
                    dealtAfter[c] = changes;
                }
            }

            changes += order.Settle(cavities) ? 1 : 0;
            if (Score(cost, order, cavities) >= least - (Crossing / 2))
            {
                Rerun(cost, dealer, order, cavities, kinds);
                changes++;
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

    // every choice of so many of the kinds, each in front of what it was made of
    private static IEnumerable<List<List<int>>> Choices(List<List<int>> kinds, int together)
    {
        if (kinds.Count <= together)
        {
            return [kinds];
        }

        IEnumerable<int[]> choices = Enumerable.Range(0, kinds.Count).Select(i => (int[])[i]);
        for (var n = 1; n < together; n++)
        {
            choices = choices.SelectMany(c => Enumerable.Range(0, c[^1]).Select(i => (int[])[.. c, i]));
        }

        return choices.Select(c => c.Select(i => kinds[i]).ToList());
    }

    // a spliced wire runs elsewhere, and its kind is dealt out anew: where both together help
    private static void Rerun(double[][] cost, CavityDealer dealer, CavityOrder order, int[] cavities, List<List<int>> kinds)
    {
        foreach (var kind in kinds)
        {
            foreach (var wire in kind.Where(order.IsSpliced).ToArray())
            {
                // all else costs the same at every gap
                var (place, best, bestGap, least) = (order.Places[wire], cavities, 0.0, double.PositiveInfinity);
                foreach (var gap in order.Gaps)
                {
                    order.Places[wire] = gap;
                    var tried = (int[])cavities.Clone();
                    var dealt = dealer.Deal(order, tried, [kind]).Cost + (Crossing * order.Bar(wire, gap));
                    if (dealt < least - (Crossing / 2))
                    {
                        (best, bestGap, least) = (tried, gap, dealt);
                    }
                }

                order.Places[wire] = place;
                var before = Score(cost, order, cavities);
                order.Places[wire] = bestGap;
                if (Score(cost, order, best) >= before - (Crossing / 2))
                {
                    order.Places[wire] = place;
                    continue;
                }

                best.CopyTo(cavities, 0);
            }
        }
    }
}
