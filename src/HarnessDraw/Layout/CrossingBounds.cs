namespace HarnessDraw.Layout;

/// <summary>
/// Bounds below the crossings of any drawing of the same tree with the same order round it. Two joined groups of wires are connected
/// sets in a disc: where their ends alternate k times round its rim, they cross at least k - 1 times. With lanes that keep their places and bars at their stations
/// a splice costs more: the least that each costs the unspliced lanes, and the least of each two splices, add up to a bound as each is the least by itself.
/// </summary>
internal static class CrossingBounds
{
    public static (int? StraightLane, int? Lower, string? Reason) Of(ChartProblem problem, ChartLanes lanes, IReadOnlyList<int> cardOrder)
    {
        if (problem.Table is null)
        {
            return (null, null, "not proven without a firewall connector at the root");
        }

        foreach (var lane in problem.Lanes)
        {
            if (lane.From.Kind == ChartEndKind.Card && lane.To.Kind == ChartEndKind.Card)
            {
                return (null, null, "not proven with wires between two loads");
            }
        }

        var rim = Rim(problem, lanes, cardOrder);
        var ends = new List<int>[problem.Lanes.Length];
        for (var i = 0; i < rim.Count; i++)
        {
            (ends[rim[i]] ??= []).Add(i);
        }

        var lone = problem.Splices.IsEmpty ? [] : lanes.LoneSplices();
        var (total, straight) = (0, lone.Values.Sum(lanes.LeastAgainstSingles));
        for (var a = 0; a < ends.Length; a++)
        {
            for (var b = a + 1; b < ends.Length && ends[a] is not null; b++)
            {
                if (ends[b] is not null && problem.Lanes[a].Net != problem.Lanes[b].Net)
                {
                    var least = Math.Max(0, Blocks(ends[a], ends[b]) - 1);
                    total += least;
                    straight += OfPair(problem, lanes, lone, a, b, least);
                }
            }
        }

        return (straight, total, null);
    }

    // with lanes that keep their places: what a splice costs the unspliced lanes that pass it is counted for all of them at once
    private static int OfPair(ChartProblem problem, ChartLanes lanes, Dictionary<int, int> lone, int a, int b, int least)
    {
        var (isA, isB) = (lone.TryGetValue(a, out var spliceA), lone.TryGetValue(b, out var spliceB));
        if (isA && isB)
        {
            return Math.Max(least, lanes.LeastOfPair(spliceA, spliceB) ?? least);
        }

        if ((isA && IsSingle(b)) || (isB && IsSingle(a)))
        {
            var (splice, single) = isA ? (spliceA, b) : (spliceB, a);
            return lanes.Passes(splice, single) ? 0 : lanes.WithSingle(splice, single);
        }

        return least;

        bool IsSingle(int lane) => problem.Lanes[lane].From.Kind != ChartEndKind.Splice && problem.Lanes[lane].To.Kind != ChartEndKind.Splice;
    }

    // round the tree: cards in leaf order with their rows, then the pins from the last to the first; each end by its group
    private static List<int> Rim(ChartProblem problem, ChartLanes lanes, IReadOnlyList<int> cardOrder)
    {
        var rim = new List<int>();
        foreach (var card in cardOrder)
        {
            foreach (var (lane, _) in lanes.CardRows[card])
            {
                rim.Add(lanes.GroupOf(lane));
            }
        }

        var pins = new SortedDictionary<int, int>();
        for (var i = 0; i < problem.Lanes.Length; i++)
        {
            for (var end = 0; end < 2; end++)
            {
                if (lanes.EndOf(i, end) is { Kind: ChartEndKind.Pin } pin)
                {
                    pins[-pin.Index] = lanes.GroupOf(i);
                }
            }
        }

        rim.AddRange(pins.Values);
        return rim;
    }

    // how many runs of a's ends there are between b's, going once round
    private static int Blocks(List<int> a, List<int> b)
    {
        int i = 0, j = 0, blocks = 0, last = -1, first = -1;
        while (i < a.Count || j < b.Count)
        {
            var isA = j >= b.Count || (i < a.Count && a[i] < b[j]);
            var now = isA ? 0 : 1;
            first = first < 0 ? now : first;
            blocks += isA && last != 0 ? 1 : 0;
            last = now;
            if (isA)
            {
                i++;
            }
            else
            {
                j++;
            }
        }

        // the first and the last run are one when both are a's
        return blocks > 1 && first == 0 && last == 0 ? blocks - 1 : blocks;
    }
}
