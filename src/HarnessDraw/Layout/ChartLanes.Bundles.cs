namespace HarnessDraw.Layout;

// what each splice has to do with the lanes round it, wherever they run
internal sealed partial class ChartLanes
{
    /// <summary>A splice with what does not change while lanes are placed: legs that begin there, lanes that arrive, foreign lanes that pass.</summary>
    private sealed record SpliceBundle(int Splice, Spine Spine, int At, int Net)
    {
        public List<(int Lane, int End)> Legs { get; } = [];
        public List<Arrival> Arriving { get; } = [];

        /// <summary>Foreign lanes that pass, by the end whose key they have there: those whose end there is at a card by rising key, then those whose end is at a splice.</summary>
        public List<(int Lane, int End)> PassingToCards { get; } = [];
        public List<(int Lane, int End)> PassingFromSplices { get; } = [];
        public IEnumerable<(int Lane, int End)> Passing => PassingToCards.Concat(PassingFromSplices);
        public required bool[] PassingLanes { get; init; }

        /// <summary>By splice: whether a lane that arrives meets it on the way, and whether it lies on the way from the root.</summary>
        public required bool[] Met { get; init; }
        public required bool[] IsBehind { get; init; }

        /// <summary>The first and the last card with lanes beyond it; -1: there is none.</summary>
        public required (int First, int Last) Beyond { get; init; }

        /// <summary>The splices whose lanes decide, by where they run, what places cost here.</summary>
        public List<int> DependsOn { get; } = [];
    }

    /// <summary>A lane end at a splice, by splice whether it is met on the way back from there, and the splice it comes from if that is one of them (else -1).</summary>
    private sealed record Arrival(int Lane, int End, bool[] Met, int From);

    private SpliceBundle BundleAt(int s)
    {
        var (spine, at) = spliceAt[s];
        var bundle = new SpliceBundle(s, spine, at, spliceEnds[s].Count > 0 ? problem.Lanes[spliceEnds[s][0].Lane].Net : -1)
        {
            PassingLanes = new bool[problem.Lanes.Length],
            Met = new bool[problem.Splices.Length],
            IsBehind = new bool[problem.Splices.Length],
            Beyond = CardsBeyond(spine, at),
        };
        for (var (on, e) = (spine, at); on is not null; (on, e) = (on.Parent!, on.ParentItem?.Event ?? 0))
        {
            MeetOn(on, -1, e, bundle.IsBehind);
        }

        foreach (var (lane, end) in spliceEnds[s])
        {
            var (meet, first, firstEvent, _) = Meet(lane);
            if (meet == spine && first == end && firstEvent == at)
            {
                bundle.Legs.Add((lane, end));
            }
            else
            {
                bundle.Arriving.Add(ArrivalOf(lane, end, spine, at));
            }
        }

        for (var lane = 0; lane < problem.Lanes.Length; lane++)
        {
            if (problem.Lanes[lane].Net != bundle.Net && Crosses(lane, spine, at, out var end))
            {
                (EndOf(lane, end).Kind == ChartEndKind.Splice ? bundle.PassingFromSplices : bundle.PassingToCards).Add((lane, end));
                bundle.PassingLanes[lane] = true;
            }
        }

        bundle.PassingToCards.Sort((a, b) => keys[a.Lane, a.End].CompareTo(keys[b.Lane, b.End]));
        return bundle;
    }

    // what is met on the way or passes, with the splices at either end of those lanes
    private void Depend(SpliceBundle[] bundles, SpliceBundle bundle)
    {
        var on = new bool[bundles.Length];
        for (var t = 0; t < on.Length; t++)
        {
            foreach (var arrival in bundle.Arriving)
            {
                bundle.Met[t] |= arrival.Met[t];
                on[t] |= arrival.Met[t] || arrival.From == t;
            }

            foreach (var (lane, _) in bundle.Met[t] ? spliceEnds[t] : [])
            {
                Add(lane);
            }
        }

        foreach (var (lane, _) in bundle.Passing.Concat(spliceEnds[bundle.Splice]))
        {
            Add(lane);
        }

        for (var t = 0; t < on.Length; t++)
        {
            if (on[t] && t != bundle.Splice)
            {
                bundle.DependsOn.Add(t);
            }
        }

        void Add(int lane)
        {
            for (var end = 0; end < 2; end++)
            {
                if (EndOf(lane, end) is { Kind: ChartEndKind.Splice } at)
                {
                    on[at.Index] = true;
                }
            }
        }
    }

    // back from the splice as far as the lane runs under the key of this end
    private Arrival ArrivalOf(int lane, int end, Spine from, int at)
    {
        var (meet, first, firstEvent, _) = Meet(lane);
        var met = new bool[problem.Splices.Length];
        for (var (spine, e) = (from, at); ; (spine, e) = (spine.Parent!, spine.ParentItem!.Event))
        {
            if (spine != meet || first != end)
            {
                MeetOn(spine, spine == meet ? firstEvent : -1, e, met);
            }

            if (spine == meet)
            {
                break;
            }
        }

        var far = EndOf(lane, 1 - end);
        var starts = far.Kind == ChartEndKind.Splice && spliceAt[far.Index] == (meet, firstEvent) && first != end ? far.Index : -1;
        return new(lane, end, met, starts);
    }

    private static void MeetOn(Spine spine, int from, int to, bool[] met)
    {
        foreach (var station in spine.Stations)
        {
            for (var k = 0; k < station.Splices.Count; k++)
            {
                if (station.FirstEvent + k > from && station.FirstEvent + k < to)
                {
                    met[station.Splices[k]] = true;
                }
            }
        }
    }

    // from the first to the last key beyond a splice; low above high: there is none
    private (double Low, double High) KeysBeyond(SpliceBundle bundle) => bundle.Beyond.First < 0 ? (1, 0) : (cardLow[bundle.Beyond.First], cardHigh[bundle.Beyond.Last]);

    private (int First, int Last) CardsBeyond(Spine spine, int at)
    {
        var (first, last) = (-1, -1);
        foreach (var station in spine.Stations)
        {
            foreach (var item in station.Left.Concat(station.Right))
            {
                if (item.Event > at && item.Child is { } child)
                {
                    var (f, l) = CardsBeyond(child, -1);
                    Take(f);
                    Take(l);
                }
                else if (item.Event > at)
                {
                    Take(item.Card);
                }
            }
        }

        spine.EndCards.ForEach(Take);
        return (first, last);

        void Take(int card)
        {
            if (card >= 0 && CardRows[card].Count > 0)
            {
                first = first < 0 || cardLow[card] < cardLow[first] ? card : first;
                last = last < 0 || cardHigh[card] > cardHigh[last] ? card : last;
            }
        }
    }

    // whether a lane passes a place of a spine, and the end whose key it has there
    private bool Crosses(int lane, Spine spine, int at, out int keyEnd)
    {
        var (meet, first, firstEvent, lastEvent) = Meet(lane);
        keyEnd = 1 - first;
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
                    keyEnd = end;
                    return at < e;
                }

                (s, e) = (s.Parent!, s.ParentItem!.Event);
            }
        }

        return false;
    }
}
