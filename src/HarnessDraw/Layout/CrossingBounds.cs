namespace HarnessDraw.Layout;

/// <summary>
/// Bounds below the crossings of any drawing of the same tree with the same order round it. Two joined groups of wires are connected
/// sets in a disc: where their ends alternate k times round its rim, they cross at least k - 1 times. With lanes that keep their places and bars at their stations
/// a splice costs more: the least that each costs the unspliced lanes, and the least of each two splices, add up to a bound as each is the least by itself.
/// </summary>
internal static class CrossingBounds
{
    public static (int? StraightLane, int? Lower, string? Reason) Of(ChartProblem problem, ChartLanes lanes, IReadOnlyList<int> cardOrder, int found)
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
        var (singles, spliced) = (new List<int>(), new List<int>());
        for (var i = 0; i < ends.Length; i++)
        {
            if (ends[i] is not null)
            {
                (IsSingle(problem, i) ? singles : spliced).Add(i);
            }
        }

        var total = OfSingles(problem, singles, ends, rim.Count);
        var straight = total;
        var pairs = new List<(int Splice, int Other, int Least)>();
        for (var i = 0; i < spliced.Count; i++)
        {
            foreach (var b in singles.Concat(spliced[(i + 1)..]))
            {
                var a = spliced[i];
                if (problem.Lanes[a].Net != problem.Lanes[b].Net)
                {
                    var least = Math.Max(0, Blocks(ends[a], ends[b]) - 1);
                    total += least;
                    if (lone.TryGetValue(a, out var splice) && lone.TryGetValue(b, out var other))
                    {
                        pairs.Add((splice, other, least));
                    }
                    else
                    {
                        straight += OfPair(problem, lanes, lone, a, b, least);
                    }
                }
            }
        }

        return (straight + new SharedCrossings(lanes, [.. lone.Values], pairs).Least(found - straight), total, null);
    }

    private static bool IsSingle(ChartProblem problem, int lane) => problem.Lanes[lane].From.Kind != ChartEndKind.Splice && problem.Lanes[lane].To.Kind != ChartEndKind.Splice;

    // unspliced lanes of different nets whose ends alternate: as each ends, those that began since and have not ended
    private static int OfSingles(ChartProblem problem, List<int> singles, List<int>[] ends, int places)
    {
        var laneAt = new int[places];
        Array.Fill(laneAt, -1);
        foreach (var lane in singles)
        {
            (laneAt[ends[lane][0]], laneAt[ends[lane][^1]]) = (lane, lane);
        }

        var begun = new PlaceCounts(places);
        var count = 0;
        for (var place = 0; place < places; place++)
        {
            if (laneAt[place] is >= 0 and var lane)
            {
                if (ends[lane][0] == place)
                {
                    begun.Add(place, 1);
                }
                else
                {
                    begun.Add(ends[lane][0], -1);
                    count += begun.UpTo(place) - begun.UpTo(ends[lane][0]);
                }
            }
        }

        // lanes of one net are not told apart
        foreach (var net in singles.GroupBy(l => problem.Lanes[l].Net).Where(g => g.Count() > 1))
        {
            var own = net.ToList();
            for (var i = 0; i < own.Count; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    count -= Math.Max(0, Blocks(ends[own[i]], ends[own[j]]) - 1);
                }
            }
        }

        return count;
    }

    // with lanes that keep their places: what a splice costs the unspliced lanes that pass it is counted for all of them at once
    private static int OfPair(ChartProblem problem, ChartLanes lanes, Dictionary<int, int> lone, int a, int b, int least)
    {
        if (lone.TryGetValue(a, out var splice) && IsSingle(problem, b))
        {
            return lanes.Passes(splice, b) ? 0 : lanes.WithSingle(splice, b);
        }

        return least;
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
