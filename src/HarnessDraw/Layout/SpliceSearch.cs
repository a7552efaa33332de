namespace HarnessDraw.Layout;

/// <summary>
/// Finds where the lanes that arrive at a splice should run among the lanes that pass it. Between the passing lanes there are gaps, numbered from 0; every arriving lane costs
/// something in each gap, and the splice's bar, from its outermost lane to the other, costs each passing lane that it crosses. The result is the best of all choices.
/// </summary>
public static class SpliceSearch
{
    /// <summary>
    /// The gap for each arriving lane.
    /// </summary>
    /// <param name="cost">By lane and gap: crossings on the way to the splice.</param>
    /// <param name="tie">By lane and gap: what decides between choices of equal crossings.</param>
    /// <param name="passing">By boundary (between gap i and i + 1): lanes there that the bar crosses.</param>
    /// <param name="legs">The least and the greatest gap that legs beyond the splice lie in; null: there are none.</param>
    public static int[] Best(int[][] cost, int[][] tie, int[] passing, (int Low, int High)? legs)
    {
        ArgumentNullException.ThrowIfNull(cost);
        ArgumentNullException.ThrowIfNull(tie);
        ArgumentNullException.ThrowIfNull(passing);
        var gaps = passing.Length + 1;
        var before = new int[gaps];
        for (var i = 0; i < passing.Length; i++)
        {
            before[i + 1] = before[i] + passing[i];
        }

        if (cost.Length == 1)
        {
            return [BestOfOne(cost[0], tie[0], before, legs)];
        }

        var least = 0;
        foreach (var lane in cost)
        {
            least += lane.Min();
        }

        var best = (Crossings: int.MaxValue, Tie: int.MaxValue, Length: int.MaxValue);
        var choice = new int[cost.Length];
        var now = new int[cost.Length];
        // the best gap of each lane inside the bar, as it grows to the left and then to the right
        var inside = new int[cost.Length];
        for (var a = 0; a < inside.Length && legs is { } between; a++)
        {
            inside[a] = between.High;
            for (var g = between.High - 1; g > between.Low; g--)
            {
                inside[a] = Better(a, inside[a], g);
            }
        }

        for (var low = legs?.Low ?? gaps - 1; low >= 0; low--)
        {
            var first = legs?.High ?? low;
            if (before[first] - before[low] + least > best.Crossings)
            {
                break;
            }

            for (var a = 0; a < now.Length; a++)
            {
                now[a] = inside[a] = legs is null ? low : Better(a, inside[a], low);
            }

            for (var high = first; high < gaps && before[high] - before[low] + least <= best.Crossings; high++)
            {
                var (crossings, ties) = (before[high] - before[low], 0);
                for (var a = 0; a < now.Length; a++)
                {
                    now[a] = high > first ? Better(a, high, now[a]) : now[a];
                    crossings += cost[a][now[a]];
                    ties += tie[a][now[a]];
                }

                if ((crossings, ties, high - low).CompareTo(best) < 0)
                {
                    best = (crossings, ties, high - low);
                    now.CopyTo(choice, 0);
                }
            }
        }

        return choice;

        int Better(int a, int gap, int than) => (cost[a][gap], tie[a][gap]).CompareTo((cost[a][than], tie[a][than])) < 0 ? gap : than;
    }

    // a single lane lies at an end of the bar or between the legs
    private static int BestOfOne(int[] cost, int[] tie, int[] before, (int Low, int High)? legs)
    {
        var (best, gap) = ((Crossings: int.MaxValue, Tie: int.MaxValue, Length: int.MaxValue), 0);
        var (from, to) = legs ?? (cost.Length, cost.Length - 1);
        for (var g = from; g < cost.Length; g++)
        {
            Try(g);
        }

        for (var g = from - 1; g >= 0; g--)
        {
            Try(g);
        }

        return gap;

        void Try(int g)
        {
            var (low, high) = legs is null ? (g, g) : (Math.Min(from, g), Math.Max(to, g));
            var now = (cost[g] + before[high] - before[low], tie[g], high - low);
            if (now.CompareTo(best) < 0)
            {
                (best, gap) = (now, g);
            }
        }
    }

    /// <summary>Crossings and ties of a choice.</summary>
    public static (int Crossings, int Tie) Score(int[][] cost, int[][] tie, int[] passing, (int Low, int High)? legs, int[] choice)
    {
        ArgumentNullException.ThrowIfNull(cost);
        ArgumentNullException.ThrowIfNull(tie);
        ArgumentNullException.ThrowIfNull(passing);
        ArgumentNullException.ThrowIfNull(choice);
        var (low, high) = (Math.Min(legs?.Low ?? int.MaxValue, choice.Min()), Math.Max(legs?.High ?? 0, choice.Max()));
        var (crossings, ties) = (0, 0);
        for (var i = low; i < high; i++)
        {
            crossings += passing[i];
        }

        for (var a = 0; a < choice.Length; a++)
        {
            crossings += cost[a][choice[a]];
            ties += tie[a][choice[a]];
        }

        return (crossings, ties);
    }
}
