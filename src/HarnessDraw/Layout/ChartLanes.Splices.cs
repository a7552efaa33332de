namespace HarnessDraw.Layout;

// where the lanes that arrive at a splice run on the way to it: each splice in turn takes the best place while the others stay
internal sealed partial class ChartLanes
{
    private const int MostRounds = 12;

    /// <summary>A splice with what does not change while lanes are placed: legs that begin there, lanes that arrive, foreign lanes that pass.</summary>
    private sealed record SpliceBundle(int Splice, Spine Spine, int At, int Net)
    {
        public List<(int Lane, int End)> Legs { get; } = [];
        public List<Arrival> Arriving { get; } = [];

        /// <summary>Foreign lanes that pass, by the end whose key they have there.</summary>
        public List<(int Lane, int End)> Passing { get; } = [];
        public HashSet<int> PassingLanes { get; } = [];
    }

    /// <summary>A lane end at a splice, the splices met on the way back from there, and the splice it comes from if that is one of them (else -1).</summary>
    private sealed record Arrival(int Lane, int End, HashSet<int> Met, int From);

    private void PlaceSplices()
    {
        var bundles = new SpliceBundle[problem.Splices.Length];
        for (var s = 0; s < bundles.Length; s++)
        {
            bundles[s] = BundleAt(s);
        }

        bundlesOfAll = bundles;
        // the far ones first: legs may end in another splice
        var order = bundles.ToArray();
        Array.Sort(order, (a, b) =>
        {
            var byDepth = b.Spine.Depth.CompareTo(a.Spine.Depth);
            return byDepth != 0 ? byDepth : a.At != b.At ? b.At.CompareTo(a.At) : a.Splice.CompareTo(b.Splice);
        });
        foreach (var bundle in order)
        {
            Begin(bundle);
        }

        Improve(bundles, order, withColours: false);
        if (!problem.Likeness.IsEmpty)
        {
            // from there on nothing moves that would cross more
            Improve(bundles, order, withColours: true);
        }

        DrawBars(bundles, order);
    }

    private void Improve(SpliceBundle[] bundles, SpliceBundle[] order, bool withColours)
    {
        var again = true;
        for (var round = 0; round < MostRounds && again; round++)
        {
            again = false;
            foreach (var bundle in order)
            {
                again |= new SplicePlacing(this, bundles, bundle, withColours).Improve(isFirst: round == 0 && !withColours);
            }

            if (again || !withColours)
            {
                Renumber();
            }
        }
    }

    private SpliceBundle BundleAt(int s)
    {
        var (spine, at) = spliceAt[s];
        var bundle = new SpliceBundle(s, spine, at, spliceEnds[s].Count > 0 ? problem.Lanes[spliceEnds[s][0].Lane].Net : -1);
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
                bundle.Passing.Add((lane, end));
                bundle.PassingLanes.Add(lane);
            }
        }

        return bundle;
    }

    // back from the splice as far as the lane runs under the key of this end
    private Arrival ArrivalOf(int lane, int end, Spine from, int at)
    {
        var (meet, first, firstEvent, _) = Meet(lane);
        var met = new HashSet<int>();
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

    private static void MeetOn(Spine spine, int from, int to, HashSet<int> met)
    {
        foreach (var station in spine.Stations)
        {
            for (var k = 0; k < station.Splices.Count; k++)
            {
                if (station.FirstEvent + k > from && station.FirstEvent + k < to)
                {
                    met.Add(station.Splices[k]);
                }
            }
        }
    }

    // before anything is known: beside the middle leg
    private void Begin(SpliceBundle bundle)
    {
        var legs = bundle.Legs.ConvertAll(l => keys[l.Lane, 1 - l.End]);
        legs.Sort();
        for (var i = 0; i < bundle.Arriving.Count; i++)
        {
            var (lane, end, _, _) = bundle.Arriving[i];
            keys[lane, end] = (legs.Count > 0 ? legs[legs.Count / 2] : spliceKey[bundle.Splice]) + (i * 0.001);
        }
    }

    // whole numbers again, in the same order: places between keys never run out
    private void Renumber()
    {
        var all = new SortedSet<double>(spliceKey);
        foreach (var key in keys)
        {
            all.Add(key);
        }

        for (var c = 0; c < cardLow.Length; c++)
        {
            all.Add(cardLow[c]);
            all.Add(cardHigh[c]);
        }

        var sorted = all.ToArray();
        for (var lane = 0; lane < problem.Lanes.Length; lane++)
        {
            (keys[lane, 0], keys[lane, 1]) = (Place(keys[lane, 0]), Place(keys[lane, 1]));
        }

        for (var s = 0; s < spliceKey.Length; s++)
        {
            spliceKey[s] = Place(spliceKey[s]);
        }

        for (var c = 0; c < cardLow.Length; c++)
        {
            (cardLow[c], cardHigh[c]) = (Place(cardLow[c]), Place(cardHigh[c]));
        }

        double Place(double key) => Array.BinarySearch(sorted, key);
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

    /// <summary>From the lowest to the highest key of the lanes that a splice joins.</summary>
    private (double Low, double High) BarOf(SpliceBundle bundle, int without = -1)
    {
        double low = double.MaxValue, high = double.MinValue;
        foreach (var (lane, end) in bundle.Legs)
        {
            if (lane != without)
            {
                (low, high) = (Math.Min(low, keys[lane, 1 - end]), Math.Max(high, keys[lane, 1 - end]));
            }
        }

        foreach (var (lane, end, _, _) in bundle.Arriving)
        {
            (low, high) = (Math.Min(low, keys[lane, end]), Math.Max(high, keys[lane, end]));
        }

        return (low, high);
    }
}
