namespace HarnessDraw.Layout;

/// <summary>
/// Lane order: every lane end at a card has a key, its place in leaf order; every bundle is ordered by key, so lanes never change their places and a
/// branch leaves at the edge. A lane between two loads has the key of its nearer end on that end's branches, and the key of the
/// farther end from the spine where the two meet.
/// </summary>
internal sealed partial class ChartLanes
{
    private readonly ChartProblem problem;
    private readonly List<Spine> spines;
    private readonly (Spine Spine, int Event)[] cardAt;
    private readonly (Spine Spine, int Event)[] spliceAt;
    private double[,] keys;
    private double[] spliceKey;
    private readonly int[] cardPosition;
    private readonly List<(int Lane, int End)>[] spliceEnds;
    private readonly int[] group;
    private readonly Dictionary<int, List<int>> groupCards = [];
    private readonly Dictionary<int, int> groupPin = [];
    private double[] cardLow;
    private double[] cardHigh;
    private readonly (Spine Meet, int First, int FirstEvent, int LastEvent)[] meets;
    private readonly int[] rank;
    private int around;

    private ChartLanes(ChartProblem problem, List<Spine> spines)
    {
        this.problem = problem;
        this.spines = spines;
        cardAt = new (Spine, int)[problem.Cards.Length];
        spliceAt = new (Spine, int)[problem.Splices.Length];
        keys = new double[problem.Lanes.Length, 2];
        spliceKey = new double[problem.Splices.Length];
        cardPosition = new int[problem.Cards.Length];
        cardLow = new double[problem.Cards.Length];
        cardHigh = new double[problem.Cards.Length];
        CardRows = new List<(int Lane, int End)>[problem.Cards.Length];
        spliceEnds = new List<(int, int)>[problem.Splices.Length];
        for (var c = 0; c < CardRows.Length; c++)
        {
            CardRows[c] = [];
        }

        for (var s = 0; s < spliceEnds.Length; s++)
        {
            spliceEnds[s] = [];
        }

        group = new int[problem.Lanes.Length];
        rank = new int[problem.Lanes.Length];
        meets = new (Spine, int, int, int)[problem.Lanes.Length];
        PathOf = new LanePath[problem.Lanes.Length];
    }

    /// <summary>Lane ends of each card by rising key.</summary>
    public List<(int Lane, int End)>[] CardRows { get; }

    /// <summary>Cards in leaf order.</summary>
    public IReadOnlyList<int> CardOrder { get; private set; } = [];

    /// <summary>The way of each lane over the spines.</summary>
    public LanePath[] PathOf { get; }

    /// <summary>Splice to the lane ends that meet there.</summary>
    public IReadOnlyList<(int Lane, int End)> EndsAt(int splice) => spliceEnds[splice];

    public (Spine Spine, int Event) Splice(int splice) => spliceAt[splice];

    public int GroupOf(int lane) => group[lane];

    public static ChartLanes Order(ChartProblem problem, List<Spine> spines, LaneOrders? known)
    {
        var lanes = new ChartLanes(problem, spines);
        lanes.NumberEvents();
        lanes.Join();
        lanes.OrderRows();
        if (problem.Splices.Length > 0)
        {
            lanes.Take(known is null ? lanes.Placed() : known.Of(spines, lanes.Placed));
        }

        lanes.Run();

        return lanes;
    }

    private ChartLanes Placed()
    {
        PlaceSplices();
        return this;
    }

    // what was found on a tree of the same shape
    private void Take(ChartLanes same)
    {
        (keys, spliceKey, cardLow, cardHigh) = (same.keys, same.spliceKey, same.cardLow, same.cardHigh);
        (barEnds, bundlesOfAll) = (same.barEnds, same.bundlesOfAll);
    }

    private void NumberEvents()
    {
        foreach (var spine in spines)
        {
            var e = 0;
            for (var k = 0; k < spine.Stations.Count; k++)
            {
                var station = spine.Stations[k];
                station.FirstEvent = e;
                foreach (var s in station.Splices)
                {
                    spliceAt[s] = (spine, e++);
                }

                foreach (var list in (List<SpineItem>[])[station.Left, station.Right])
                {
                    foreach (var item in list)
                    {
                        item.Event = e++;
                        if (item.Child is { } child)
                        {
                            child.ParentStation = k;
                        }
                        else
                        {
                            cardAt[item.Card] = (spine, item.Event);
                        }
                    }
                }
            }

            spine.EndEvent = e;
            foreach (var c in spine.EndCards)
            {
                cardAt[c] = (spine, e);
            }
        }
    }

    // lanes joined by splices are one group
    private void Join()
    {
        for (var i = 0; i < group.Length; i++)
        {
            group[i] = i;
        }

        for (var i = 0; i < group.Length; i++)
        {
            for (var end = 0; end < 2; end++)
            {
                var at = EndOf(i, end);
                if (at.Kind == ChartEndKind.Splice)
                {
                    spliceEnds[at.Index].Add((i, end));
                    Union(i, spliceEnds[at.Index][0].Lane);
                }
                else if (at.Kind == ChartEndKind.Card)
                {
                    CardRows[at.Index].Add((i, end));
                }
            }
        }

        for (var i = 0; i < group.Length; i++)
        {
            var g = group[i] = Find(i);
            for (var end = 0; end < 2; end++)
            {
                var at = EndOf(i, end);
                if (at.Kind == ChartEndKind.Pin)
                {
                    groupPin.TryAdd(g, at.Index);
                }
                else if (at.Kind == ChartEndKind.Card)
                {
                    if (!groupCards.TryGetValue(g, out var list))
                    {
                        groupCards[g] = list = [];
                    }

                    list.Add(at.Index);
                }
            }
        }
    }

    private int Find(int i)
    {
        while (group[i] != i)
        {
            i = group[i] = group[group[i]];
        }

        return i;
    }

    private void Union(int a, int b) => group[Math.Max(Find(a), Find(b))] = Math.Min(Find(a), Find(b));

    public ChartEnd EndOf(int lane, int end) => end == 0 ? problem.Lanes[lane].From : problem.Lanes[lane].To;

    private void OrderRows()
    {
        var order = new List<int>(problem.Cards.Length);
        var marks = new List<(int Splice, int Before)>();
        Walk(spines[0], order, marks);
        for (var i = 0; i < order.Count; i++)
        {
            cardPosition[order[i]] = i;
        }

        CardOrder = order;
        RankParallel();
        around = order.Count + (problem.Table?.RowsMm.Length ?? 0);
        var key = 0;
        var mark = 0;
        for (var i = 0; i <= order.Count; i++)
        {
            while (mark < marks.Count && marks[mark].Before == i)
            {
                spliceKey[marks[mark++].Splice] = key++;
            }

            if (i == order.Count)
            {
                break;
            }

            var card = order[i];
            SortRows(card, i);
            cardLow[card] = key;
            foreach (var (lane, end) in CardRows[card])
            {
                keys[lane, end] = key++;
            }

            cardHigh[card] = key - 1;
        }

        for (var lane = 0; lane < meets.Length; lane++)
        {
            meets[lane] = FindMeet(lane);
        }
    }

    private static void Walk(Spine spine, List<int> order, List<(int Splice, int Before)> marks)
    {
        foreach (var station in spine.Stations)
        {
            WalkItems(station.Left, order, marks);
        }

        order.AddRange(spine.EndCards);
        for (var i = spine.Stations.Count - 1; i >= 0; i--)
        {
            foreach (var s in spine.Stations[i].Splices)
            {
                marks.Add((s, order.Count));
            }

            for (var k = spine.Stations[i].Right.Count - 1; k >= 0; k--)
            {
                WalkItem(spine.Stations[i].Right[k], order, marks);
            }
        }
    }

    private static void WalkItems(List<SpineItem> items, List<int> order, List<(int Splice, int Before)> marks)
    {
        foreach (var item in items)
        {
            WalkItem(item, order, marks);
        }
    }

    private static void WalkItem(SpineItem item, List<int> order, List<(int Splice, int Before)> marks)
    {
        if (item.Child is { } child)
        {
            Walk(child, order, marks);
        }
        else
        {
            order.Add(item.Card);
        }
    }

    // round the tree from the card: the far end that comes last goes first
    private void SortRows(int card, int position)
    {
        var rows = CardRows[card];
        var sorted = new (double Distance, int Tie, (int Lane, int End) Row)[rows.Count];
        for (var i = 0; i < rows.Count; i++)
        {
            var (lane, end) = rows[i];
            var far = EndOf(lane, 1 - end);
            var distance = Distance(FarPosition(lane, far, position), position);
            var tie = far.Kind == ChartEndKind.Card && cardPosition[far.Index] < position ? -rank[lane] : rank[lane];
            sorted[i] = (-distance, tie, rows[i]);
        }

        Array.Sort(sorted, (a, b) =>
        {
            var byDistance = a.Distance.CompareTo(b.Distance);
            return byDistance != 0 ? byDistance : a.Tie != b.Tie ? a.Tie.CompareTo(b.Tie) : a.Row.End.CompareTo(b.Row.End);
        });
        rows.Clear();
        foreach (var entry in sorted)
        {
            rows.Add(entry.Row);
        }
    }

    private double Distance(double far, double from) => far >= from ? far - from : far - from + around;

    private double PinPosition(int pin) => around - 1 - pin;

    private double FarPosition(int lane, ChartEnd far, int position)
    {
        if (far.Kind == ChartEndKind.Pin)
        {
            return PinPosition(far.Index);
        }

        if (far.Kind == ChartEndKind.Card)
        {
            return cardPosition[far.Index] == position ? position + 0.5 : cardPosition[far.Index];
        }

        double low = double.MaxValue, high = double.MinValue;
        foreach (var c in groupCards.GetValueOrDefault(group[lane], []))
        {
            if (cardPosition[c] != position)
            {
                (low, high) = (Math.Min(low, cardPosition[c]), Math.Max(high, cardPosition[c]));
            }
        }

        if (low > high)
        {
            return groupPin.TryGetValue(group[lane], out var only) ? PinPosition(only) : position + 0.5;
        }

        return high < position ? high : low > position ? low : groupPin.TryGetValue(group[lane], out var pin) ? PinPosition(pin) : low;
    }

    // where both ways meet: the spine, the end that comes first there, and between which events the lane runs
    private (Spine Meet, int First, int FirstEvent, int LastEvent) Meet(int lane) => meets[lane];

    private (Spine Meet, int First, int FirstEvent, int LastEvent) FindMeet(int lane)
    {
        var a = AttachOf(EndOf(lane, 0));
        var b = AttachOf(EndOf(lane, 1));
        while (a.Spine != b.Spine)
        {
            if (a.Spine.Depth >= b.Spine.Depth)
            {
                a = (a.Spine.Parent!, a.Spine.ParentItem!.Event);
            }
            else
            {
                b = (b.Spine.Parent!, b.Spine.ParentItem!.Event);
            }
        }

        var first = a.Event < b.Event ? 0 : a.Event > b.Event ? 1 : FirstOfSameCard(lane);
        return (a.Spine, first, Math.Min(a.Event, b.Event), Math.Max(a.Event, b.Event));
    }

    private int FirstOfSameCard(int lane)
    {
        var card = EndOf(lane, 0).Index;
        var (spine, e) = cardAt[card];
        var isRight = false;
        foreach (var station in spine.Stations)
        {
            foreach (var item in station.Right)
            {
                isRight |= item.Event == e;
            }
        }

        return (keys[lane, 0] < keys[lane, 1]) != isRight ? 0 : 1;
    }

    private (Spine Spine, int Event) AttachOf(ChartEnd end) => end.Kind switch
    {
        ChartEndKind.Pin => (spines[0], -1),
        ChartEndKind.Card => cardAt[end.Index],
        _ => spliceAt[end.Index],
    };
}

/// <summary>
/// A lane's way: which of its ends comes first on the spine where the two ways meet, its run there (with the key of the other end), and its
/// runs down to either end, nearest the meeting spine first.
/// </summary>
internal sealed record LanePath(int FirstEnd, Spine Meet, LaneRun MeetRun, List<(Spine Spine, LaneRun Run)> ToFirst, List<(Spine Spine, LaneRun Run)> ToLast);
