namespace HarnessDraw.Layout;

/// <summary>
/// Bounds below the crossings of any drawing of the same tree with the same order round it. Two joined groups of wires are connected
/// sets in a disc: where their ends alternate k times round its rim, they cross at least k - 1 times.
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

        var total = 0;
        for (var a = 0; a < ends.Length; a++)
        {
            for (var b = a + 1; b < ends.Length && ends[a] is not null; b++)
            {
                if (ends[b] is not null && problem.Lanes[a].Net != problem.Lanes[b].Net)
                {
                    total += Math.Max(0, Blocks(ends[a], ends[b]) - 1);
                }
            }
        }

        return problem.Splices.IsEmpty ? (total, total, null) : (null, total, "the straight-lane bound is not worked out for splices");
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
