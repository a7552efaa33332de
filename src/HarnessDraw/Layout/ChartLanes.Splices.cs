namespace HarnessDraw.Layout;

// where the lanes that feed a splice run on the way to it
internal sealed partial class ChartLanes
{
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

        // a leg that comes back from another branch has crossed the lanes on that side already: its piece of the bar lies on the feed's other side
        var (meet, first, firstEvent, _) = Meet(lane);
        var turn = taken.Count > 0 && first != end && EndOf(lane, first).Kind != ChartEndKind.Pin ? SideOf(meet, firstEvent) : 0;
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

            cost += (turn < 0 && g > taken[0]) || (turn > 0 && g < taken[0]) ? passing.Count + 1 : 0;
            var off = legs.Count == 0 ? 0 : Math.Min(Math.Abs(g - legLow), Math.Abs(g - legHigh));
            if ((cost, off, g).CompareTo(best) < 0)
            {
                best = (cost, off, g);
            }
        }

        return best.Key;
    }

    // -1: the event is an item on the left; 1: on the right; 0: neither
    private static int SideOf(Spine spine, int e)
    {
        foreach (var station in spine.Stations)
        {
            if (station.Left.Exists(i => i.Event == e))
            {
                return -1;
            }

            if (station.Right.Exists(i => i.Event == e))
            {
                return 1;
            }
        }

        return 0;
    }
}
