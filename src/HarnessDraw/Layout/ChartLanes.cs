namespace HarnessDraw.Layout;

/// <summary>
/// Lane order: every lane end at a card has a key, its place in leaf order; every bundle is ordered by key, so lanes never change their places and a
/// branch leaves at the edge. A lane between two loads has the key of its nearer end on that end's branches, and the key of the
/// farther end from the spine where the two meet.
/// </summary>
internal sealed class ChartLanes
{
    private readonly ChartProblem problem;
    private readonly List<Spine> spines;
    private readonly (Spine Spine, int Event)[] cardAt;
    private readonly (Spine Spine, int Event)[] spliceAt;
    private readonly double[,] keys;
    private readonly double[] spliceKey;
    private readonly int[] cardPosition;
    private readonly List<(int Lane, int End)>[] spliceEnds;
    private readonly int[] group;
    private readonly Dictionary<int, List<int>> groupCards = [];
    private readonly Dictionary<int, int> groupPin = [];
    private readonly double[] cardLow;
    private readonly double[] cardHigh;
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
        PathOf = new LanePath[problem.Lanes.Length];
    }

    /// <summary>Lane ends of each card by rising key.</summary>
    public List<(int Lane, int End)>[] CardRows { get; }

    /// <summary>The way of each lane over the spines.</summary>
    public LanePath[] PathOf { get; }

    /// <summary>Splice to the lane ends that meet there.</summary>
    public IReadOnlyList<(int Lane, int End)> EndsAt(int splice) => spliceEnds[splice];

    public (Spine Spine, int Event) Splice(int splice) => spliceAt[splice];

    public int GroupOf(int lane) => group[lane];

    public static ChartLanes Order(ChartProblem problem, List<Spine> spines)
    {
        var lanes = new ChartLanes(problem, spines);
        lanes.NumberEvents();
        lanes.Join();
        lanes.OrderRows();
        lanes.PlaceSplices();
        lanes.Run();
        return lanes;
    }

    private void NumberEvents()
    {
        foreach (var spine in spines)
        {
            var e = 0;
            foreach (var station in spine.Stations)
            {
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
                        if (item.Card >= 0)
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
            var tie = far.Kind == ChartEndKind.Card && cardPosition[far.Index] < position ? -lane : lane;
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

    // where both ways meet: the end that comes first there, the other one, and the spine
    private (Spine Meet, int First, int FirstEvent, int LastEvent) Meet(int lane)
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

    private void PlaceSplices()
    {
        var order = new int[problem.Splices.Length];
        for (var s = 0; s < order.Length; s++)
        {
            order[s] = s;
            foreach (var (lane, end) in spliceEnds[s])
            {
                keys[lane, end] = spliceKey[s];
            }
        }

        // the far ones first: legs may end in another splice
        Array.Sort(order, (a, b) =>
        {
            var byDepth = spliceAt[b].Spine.Depth.CompareTo(spliceAt[a].Spine.Depth);
            return byDepth != 0 ? byDepth : spliceAt[a].Event != spliceAt[b].Event ? spliceAt[b].Event.CompareTo(spliceAt[a].Event) : a.CompareTo(b);
        });
        for (var round = 0; round < 3; round++)
        {
            var changed = false;
            foreach (var s in order)
            {
                changed |= PlaceSplice(s);
            }

            if (!changed)
            {
                break;
            }
        }
    }

    /// <summary>Finds the best place among the passing lanes for every lane that ends in the splice from the root's side.</summary>
    private bool PlaceSplice(int s)
    {
        var (spine, at) = spliceAt[s];
        var legs = new List<double>();
        var arriving = new List<(int Lane, int End)>();
        foreach (var (lane, end) in spliceEnds[s])
        {
            var (meet, first, firstEvent, _) = Meet(lane);
            if (meet == spine && first == end && firstEvent == at)
            {
                legs.Add(keys[lane, 1 - end]);
            }
            else
            {
                arriving.Add((lane, end));
            }
        }

        if (arriving.Count == 0)
        {
            return false;
        }

        var (low, high) = KeysBeyond(spine, at);
        if (low > high)
        {
            return SpreadAt(s, arriving);
        }

        var passing = Passing(spine, at, group[arriving[0].Lane]);
        legs.Sort();
        var changed = false;
        var taken = new List<double>();
        foreach (var (lane, end) in arriving)
        {
            var key = BestKey(lane, end, s, legs, taken, passing, low, high);
            changed |= key != keys[lane, end];
            keys[lane, end] = key;
            taken.Add(key);
        }

        return changed;
    }

    private bool SpreadAt(int s, List<(int Lane, int End)> arriving)
    {
        var changed = false;
        for (var i = 0; i < arriving.Count; i++)
        {
            var key = spliceKey[s] + (i * 0.001);
            changed |= keys[arriving[i].Lane, arriving[i].End] != key;
            keys[arriving[i].Lane, arriving[i].End] = key;
        }

        return changed;
    }

    private (double Low, double High) KeysBeyond(Spine spine, int at)
    {
        double low = double.MaxValue, high = double.MinValue;
        foreach (var station in spine.Stations)
        {
            Range(station.Left, at, ref low, ref high);
            Range(station.Right, at, ref low, ref high);
        }

        foreach (var c in spine.EndCards)
        {
            (low, high) = (Math.Min(low, cardLow[c]), Math.Max(high, cardHigh[c]));
        }

        return (low, high);
    }

    private void Range(List<SpineItem> items, int at, ref double low, ref double high)
    {
        foreach (var item in items)
        {
            if (item.Event > at)
            {
                if (item.Child is { } child)
                {
                    var (l, h) = KeysBeyond(child, -1);
                    (low, high) = (Math.Min(low, l), Math.Max(high, h));
                }
                else if (CardRows[item.Card].Count > 0)
                {
                    (low, high) = (Math.Min(low, cardLow[item.Card]), Math.Max(high, cardHigh[item.Card]));
                }
            }
        }
    }

    // foreign lanes at the splice's station: their key and how far round the tree their other end is
    private List<(double Key, double Distance)> Passing(Spine spine, int at, int own)
    {
        var passing = new List<(double Key, double Distance)>();
        var position = PositionOf(spine);
        for (var lane = 0; lane < problem.Lanes.Length; lane++)
        {
            if (group[lane] == own)
            {
                continue;
            }

            if (Crosses(lane, spine, at, out var key, out var farEnd))
            {
                passing.Add((key, Distance(FarPosition(lane, EndOf(lane, farEnd), position), position)));
            }
        }

        passing.Sort();
        return passing;
    }

    private int PositionOf(Spine spine)
    {
        var s = spine;
        while (s is not null)
        {
            foreach (var station in s.Stations)
            {
                foreach (var list in (List<SpineItem>[])[station.Left, station.Right])
                {
                    foreach (var item in list)
                    {
                        if (item.Card >= 0)
                        {
                            return cardPosition[item.Card];
                        }
                    }
                }
            }

            if (s.EndCards.Count > 0)
            {
                return cardPosition[s.EndCards[0]];
            }

            s = s.Stations[^1].Left.Count > 0 ? s.Stations[^1].Left[0].Child : s.Stations[^1].Right.Count > 0 ? s.Stations[^1].Right[0].Child : null;
        }

        return 0;
    }

    private bool Crosses(int lane, Spine spine, int at, out double key, out int farEnd)
    {
        var (meet, first, firstEvent, lastEvent) = Meet(lane);
        (key, farEnd) = (keys[lane, 1 - first], first);
        if (meet == spine)
        {
            return firstEvent < at && at < lastEvent;
        }

        for (var end = 0; end < 2; end++)
        {
            var (s, e) = AttachOf(EndOf(lane, end));
            while (s != meet)
            {
                if (s == spine)
                {
                    (key, farEnd) = (keys[lane, end], 1 - end);
                    return at < e;
                }

                (s, e) = (s.Parent!, s.ParentItem!.Event);
            }
        }

        return false;
    }

    private double BestKey(int lane, int end, int s, List<double> legs, List<double> taken, List<(double Key, double Distance)> passing, double low, double high)
    {
        var (spine, _) = spliceAt[s];
        var position = PositionOf(spine);
        var own = Distance(FarPosition(lane, EndOf(lane, 1 - end), position), position);
        var candidates = new List<double>(legs);
        candidates.RemoveAll(taken.Contains);
        var shift = 0.5 + (0.4 * (lane + 1.0) / (problem.Lanes.Length + 2.0)) - 0.2;
        for (var i = 0; i <= passing.Count; i++)
        {
            var k = i < passing.Count ? passing[i].Key : high;
            candidates.Add(Math.Floor(k) + shift - (i < passing.Count ? 1 : 0));
        }

        double legLow = legs.Count > 0 ? legs[0] : double.MaxValue, legHigh = legs.Count > 0 ? legs[^1] : double.MinValue;
        foreach (var t in taken)
        {
            (legLow, legHigh) = (Math.Min(legLow, t), Math.Max(legHigh, t));
        }

        var best = (Cost: int.MaxValue, Off: double.MaxValue, Key: 0.0);
        foreach (var g in candidates)
        {
            if (g < low - 1 || g > high + 1)
            {
                continue;
            }

            var (from, to) = (Math.Min(g, legLow), Math.Max(g, legHigh));
            var cost = 0;
            foreach (var (key, distance) in passing)
            {
                cost += (key < g) != (distance > own) ? 1 : 0;
                cost += key > from && key < to ? 1 : 0;
            }

            var off = legs.Count == 0 ? 0 : Math.Min(Math.Abs(g - legLow), Math.Abs(g - legHigh));
            if ((cost, off, g).CompareTo(best) < 0)
            {
                best = (cost, off, g);
            }
        }

        return best.Key;
    }

    private void Run()
    {
        for (var lane = 0; lane < problem.Lanes.Length; lane++)
        {
            var (meet, first, firstEvent, lastEvent) = Meet(lane);
            var near = new List<(Spine, LaneRun)>();
            var far = new List<(Spine, LaneRun)>();
            Descend(lane, first, meet, near);
            Descend(lane, 1 - first, meet, far);
            var run = new LaneRun { Lane = lane, Key = keys[lane, 1 - first], StartEvent = firstEvent, EndEvent = lastEvent };
            meet.Runs.Add(run);
            PathOf[lane] = new LanePath(first, meet, run, near, far);
        }

        foreach (var spine in spines)
        {
            spine.Runs.Sort((a, b) => a.Key != b.Key ? a.Key.CompareTo(b.Key) : a.StartEvent != b.StartEvent ? a.StartEvent.CompareTo(b.StartEvent) : a.Lane.CompareTo(b.Lane));
            var slot = -1;
            var lastKey = double.NaN;
            var free = int.MinValue;
            foreach (var run in spine.Runs)
            {
                // a feed and the leg that goes on from it share their place
                if (run.Key != lastKey || run.StartEvent < free)
                {
                    slot++;
                }

                (lastKey, free) = (run.Key, run.EndEvent);
                run.Slot = slot;
            }

            spine.SlotCount = slot + 1;
        }
    }

    // from the meeting spine down to the end, nearest spine first
    private void Descend(int lane, int end, Spine meet, List<(Spine, LaneRun)> runs)
    {
        var (s, e) = AttachOf(EndOf(lane, end));
        while (s != meet)
        {
            var run = new LaneRun { Lane = lane, Key = keys[lane, end], StartEvent = -1, EndEvent = e, Turns = s.Parent == meet && PathEndIsFirst(lane, end, meet) };
            s.Runs.Add(run);
            runs.Insert(0, (s, run));
            (s, e) = (s.Parent!, s.ParentItem!.Event);
        }
    }

    private bool PathEndIsFirst(int lane, int end, Spine meet)
    {
        var (m, first, _, _) = Meet(lane);
        return m == meet && first == end;
    }
}

/// <summary>
/// A lane's way: which of its ends comes first on the spine where the two ways meet, its run there (with the key of the other end), and its
/// runs down to either end, nearest the meeting spine first.
/// </summary>
internal sealed record LanePath(int FirstEnd, Spine Meet, LaneRun MeetRun, List<(Spine Spine, LaneRun Run)> ToFirst, List<(Spine Spine, LaneRun Run)> ToLast);
