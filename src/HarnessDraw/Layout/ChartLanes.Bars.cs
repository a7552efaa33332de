namespace HarnessDraw.Layout;

// who draws which piece of a splice's bar, so that no lane crosses another on the bar and again on its way
internal sealed partial class ChartLanes
{
    private readonly Dictionary<(int Splice, int Lane), HashSet<int>> crossedBy = [];
    private Dictionary<(int Splice, int Lane), double> barEnds = [];

    /// <summary>The key of the lane as far as which a lane draws the bar of its splice; null: it only ends on the bar.</summary>
    public double? BarEnd(int splice, int lane) => barEnds.TryGetValue((splice, lane), out var key) ? key : null;

    // The far ones first. Where some pair would cross twice whoever draws the bar, the lanes arrive side by side: then only legs lie on it.
    private void DrawBars(SpliceBundle[] bundles, SpliceBundle[] farFirst)
    {
        var isTogether = new bool[bundles.Length];
        for (var again = true; again;)
        {
            again = false;
            barEnds.Clear();
            foreach (var bundle in farFirst)
            {
                new SplicePlacing(this, bundles, bundle).NoteCrossed();
                NoteCrossed(bundles, bundle);
                if (DrawBar(bundle) > 0 && !isTogether[bundle.Splice])
                {
                    isTogether[bundle.Splice] = again = true;
                    new SplicePlacing(this, bundles, bundle).Gather();
                    break;
                }
            }

            if (again)
            {
                Renumber();
            }
        }
    }

    // a leg crosses lanes that end further on at a splice, if they draw the bar there that the leg lies in
    private void NoteCrossed(SpliceBundle[] bundles, SpliceBundle bundle)
    {
        foreach (var (lane, end) in bundle.Legs)
        {
            var key = keys[lane, 1 - end];
            var crossed = crossedBy[(bundle.Splice, lane)] = [];
            foreach (var other in bundles)
            {
                foreach (var arrival in other.PassingLanes[lane] ? other.Arriving : [])
                {
                    var from = keys[arrival.Lane, arrival.End];
                    if (bundle.PassingLanes[arrival.Lane] && BarEnd(other.Splice, arrival.Lane) is { } to && key > Math.Min(to, from) && key < Math.Max(to, from))
                    {
                        crossed.Add(arrival.Lane);
                    }
                }
            }
        }
    }

    // Each piece between neighbours on the bar is drawn by a lane from its own place, as far as the next that draws, past lanes that only end on it. Of all ways, one by which
    // the fewest lanes are crossed by a lane that crosses them elsewhere too (that many are returned); of these the one where each draws to its neighbour towards the feed.
    private int DrawBar(SpliceBundle bundle)
    {
        var ends = bundle.Legs.Select(l => (Key: keys[l.Lane, 1 - l.End], l.Lane)).Concat(bundle.Arriving.Select(a => (Key: keys[a.Lane, a.End], a.Lane)));
        var places = ends.GroupBy(e => e.Key).OrderBy(g => g.Key).Select(g => (g.Key, Lanes: g.Select(e => e.Lane).ToList())).ToList();
        if (places.Count < 2)
        {
            return 0;
        }

        var feed = bundle.Arriving.Count > 0 ? keys[bundle.Arriving[0].Lane, bundle.Arriving[0].End] : places[0].Key;
        // least by place and by the lane there (0: none) that has drawn the piece before
        var least = new (int Twice, int Odd, int From, int Used, int Drawer)[places.Count][];
        for (var j = 0; j < places.Count; j++)
        {
            least[j] = new (int, int, int, int, int)[places[j].Lanes.Count + 1];
            Array.Fill(least[j], (j == 0 ? 0 : int.MaxValue, 0, -1, 0, -1));
            for (var i = 0; i < j; i++)
            {
                for (var used = 0; used < least[i].Length; used++)
                {
                    for (var k = 0; k < places[j].Lanes.Count && least[i][used].Twice < int.MaxValue; k++)
                    {
                        Try(i, used, j, k + 1, places[j].Lanes[k], isInward: places[j].Key > feed);
                    }

                    for (var k = 0; k < places[i].Lanes.Count && least[i][used].Twice < int.MaxValue; k++)
                    {
                        if (k + 1 != used)
                        {
                            Try(i, used, j, 0, places[i].Lanes[k], isInward: places[i].Key < feed);
                        }
                    }
                }
            }
        }

        var (place, state) = (places.Count - 1, Enumerable.Range(0, least[^1].Length).MinBy(u => (least[^1][u].Twice, least[^1][u].Odd, u)));
        var twice = least[place][state].Twice;
        while (place > 0)
        {
            var step = least[place][state];
            barEnds[(bundle.Splice, step.Drawer)] = state > 0 ? places[step.From].Key : places[place].Key;
            (place, state) = (step.From, step.Used);
        }

        return twice;

        void Try(int i, int used, int j, int drawnBy, int lane, bool isInward)
        {
            var crossed = crossedBy.GetValueOrDefault((bundle.Splice, lane), []);
            var met = crossed.Count == 0 ? 0 : bundle.Passing.Count(p => crossed.Contains(p.Lane) && keys[p.Lane, p.End] > places[i].Key && keys[p.Lane, p.End] < places[j].Key);
            var odd = j - i - 1 + (isInward ? 0 : 1) + (places[i].Key < feed && places[j].Key > feed ? 1 : 0);
            var (sum, sumOdd) = (least[i][used].Twice + met, least[i][used].Odd + odd);
            if ((sum, sumOdd).CompareTo((least[j][drawnBy].Twice, least[j][drawnBy].Odd)) < 0)
            {
                least[j][drawnBy] = (sum, sumOdd, i, used, lane);
            }
        }
    }
}
