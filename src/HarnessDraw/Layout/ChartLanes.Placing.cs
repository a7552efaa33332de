namespace HarnessDraw.Layout;

internal sealed partial class ChartLanes
{
    /// <summary>What every gap costs the lanes that arrive at one splice, all other lanes being where they are.</summary>
    private sealed class SplicePlacing
    {
        private readonly ChartLanes lanes;
        private readonly SpliceBundle[] bundles;
        private readonly SpliceBundle bundle;
        private readonly bool withColours;
        private readonly double low;
        private readonly double high;
        private readonly double around;
        private readonly List<Other> others = [];
        private readonly List<double> bounds = [];
        private readonly List<int> laneAt = [];

        // a lane met on the way, with its number among the bounds
        private readonly record struct Other(double Key, double Distance, int Lane, int ArrivesAt, int StartsAt, int At);

        // a crossing at a breakout outweighs all likeness
        private const int Tie = 10_000;

        public SplicePlacing(ChartLanes lanes, SpliceBundle[] bundles, SpliceBundle bundle, bool withColours = false)
        {
            this.withColours = withColours;
            this.lanes = lanes;
            this.bundles = bundles;
            this.bundle = bundle;
            (low, high) = lanes.KeysBeyond(bundle);
            around = RootPosition + 1 + (lanes.problem.Table?.RowsMm.Length ?? 0);
        }

        // beyond the last key; the pins follow from the last to the first
        private double RootPosition => lanes.keys.Length + lanes.spliceKey.Length + lanes.cardLow.Length;

        /// <summary>Moves the arriving lanes where that saves crossings; the first time, anyway.</summary>
        public bool Improve(bool isFirst)
        {
            if (bundle.Arriving.Count == 0 || low > high)
            {
                return false;
            }

            var (cost, tie, passing, legs) = Costs();
            var best = SpliceSearch.Best(cost, tie, passing, legs);
            var now = bundle.Arriving.Select(a => Below(lanes.keys[a.Lane, a.End])).ToArray();
            if (!isFirst && SpliceSearch.Score(cost, tie, passing, legs, now).CompareTo(SpliceSearch.Score(cost, tie, passing, legs, best)) <= 0)
            {
                return false;
            }

            PutAll(best, legs);
            return true;
        }

        /// <summary>Moves the arriving lanes side by side to where that costs least.</summary>
        public void Gather()
        {
            if (bundle.Arriving.Count > 0 && low <= high)
            {
                var (cost, tie, passing, legs) = Costs();
                var best = Enumerable.Range(0, bounds.Count + 1).Select(g => bundle.Arriving.Select(_ => g).ToArray()).MinBy(c => SpliceSearch.Score(cost, tie, passing, legs, c))!;
                PutAll(best, legs);
            }
        }

        /// <summary>The fewest crossings of the splice's lanes with the unspliced ones that pass it.</summary>
        public int LeastAgainstSingles()
        {
            if (bundle.Arriving.Count == 0 || low > high)
            {
                return 0;
            }

            var (cost, tie, passing, legs) = Costs(onlySingles: true);
            return SpliceSearch.Score(cost, tie, passing, legs, SpliceSearch.Best(cost, tie, passing, legs)).Crossings;
        }

        /// <summary>The same by the gaps between those lanes; null where no lane arrives.</summary>
        public SpliceAlone? AgainstSingles()
        {
            if (bundle.Arriving.Count == 0 || low > high)
            {
                return null;
            }

            var (cost, _, passing, legs) = Costs(onlySingles: true);
            return new(bounds, cost, passing, legs);
        }

        private (int[][] Cost, int[][] Tie, int[] Passing, (int, int)? Legs) Costs(bool onlySingles = false)
        {
            FindOthers(onlySingles);
            var passing = new int[bounds.Count];
            foreach (var other in others)
            {
                passing[other.At] += other.ArrivesAt < 0 ? 1 : 0;
            }

            var (cost, tie) = (new int[bundle.Arriving.Count][], new int[bundle.Arriving.Count][]);
            for (var a = 0; a < cost.Length; a++)
            {
                (cost[a], tie[a]) = CostOf(bundle.Arriving[a], isFeed: a == 0, withBars: !onlySingles);
            }

            (int, int)? legs = null;
            foreach (var (lane, end) in bundle.Legs)
            {
                var at = Below(lanes.keys[lane, 1 - end]);
                legs = legs is { } l ? (Math.Min(l.Item1, at), Math.Max(l.Item2, at)) : (at, at);
            }

            return (cost, tie, passing, legs);
        }

        private void PutAll(int[] best, (int Low, int High)? legs)
        {
            for (var gap = 0; gap <= bounds.Count; gap++)
            {
                var here = bundle.Arriving.Where((_, a) => best[a] == gap).ToList();
                if (here.Count > 0)
                {
                    Put(here, gap, legs);
                }
            }
        }

        // lanes that pass, and those that end at splices on the way, by rising key: lanes to cards never change their order, so only the others are sorted in
        private void FindOthers(bool onlySingles = false, bool everywhere = false)
        {
            var moving = new List<(double Key, int Lane, int End, int ArrivesAt)>();
            foreach (var (lane, end) in onlySingles ? [] : bundle.PassingFromSplices)
            {
                moving.Add((lanes.keys[lane, end], lane, end, -1));
            }

            for (var t = 0; t < bundles.Length && !onlySingles; t++)
            {
                if (bundle.Met[t] && bundles[t].Net != bundle.Net)
                {
                    foreach (var arrival in bundles[t].Arriving)
                    {
                        moving.Add((lanes.keys[arrival.Lane, arrival.End], arrival.Lane, arrival.End, t));
                    }
                }
            }

            moving.Sort();
            var m = 0;
            foreach (var (lane, end) in bundle.PassingToCards)
            {
                for (; m < moving.Count && moving[m].Key < lanes.keys[lane, end]; m++)
                {
                    Add(moving[m].Lane, moving[m].End, moving[m].ArrivesAt);
                }

                if (!onlySingles || lanes.EndOf(lane, 1 - end).Kind != ChartEndKind.Splice)
                {
                    Add(lane, end, -1);
                }
            }

            for (; m < moving.Count; m++)
            {
                Add(moving[m].Lane, moving[m].End, moving[m].ArrivesAt);
            }

            void Add(int lane, int end, int arrivesAt)
            {
                var key = lanes.keys[lane, end];
                if (everywhere || (key > low - 1 && key < high + 1))
                {
                    if (bounds.Count == 0 || bounds[^1] != key)
                    {
                        bounds.Add(key);
                        laneAt.Add(lane);
                    }

                    var far = lanes.EndOf(lane, 1 - end);
                    var starts = far.Kind == ChartEndKind.Splice && bundle.IsBehind[far.Index] ? far.Index : -1;
                    others.Add(new(key, Distance(starts >= 0 ? RootPosition : FarPosition(lane, 1 - end)), lane, arrivesAt, starts, bounds.Count - 1));
                }
            }
        }

        private double FarPosition(int lane, int end)
        {
            var far = lanes.EndOf(lane, end);
            return far.Kind == ChartEndKind.Pin ? RootPosition + lanes.problem.Table!.RowsMm.Length - far.Index : lanes.keys[lane, end];
        }

        private double Distance(double position) => position >= low ? position - low : position - low + around;

        private int Below(double key)
        {
            var at = bounds.BinarySearch(key);
            return at < 0 ? ~at : at;
        }

        // crossings on the way back from the splice, and how many of them lie at a breakout
        private (int[] Cost, int[] Tie) CostOf(Arrival arrival, bool isFeed, bool withBars)
        {
            var distance = DistanceOf(arrival);
            var steps = new int[bounds.Count + 2];
            var turns = new int[bounds.Count + 1];
            foreach (var other in others)
            {
                if (IsOrdered(arrival, other))
                {
                    // what comes last round the tree lies to the left
                    var at = other.At;
                    Count(steps, other.Distance > distance ? 0 : at + 1, other.Distance > distance ? at : bounds.Count);
                }
            }

            var cost = Sum(steps);
            for (var g = 0; g < turns.Length; g++)
            {
                // where crossings are equal, fewer of them at breakouts; then neighbours whose colours differ
                turns[g] = ((isFeed ? 0 : cost[g]) * Tie) + AlikeIn(g, arrival.Lane);
            }

            if (!withBars)
            {
                return (cost, turns);
            }

            var bars = new int[bounds.Count + 2];
            for (var t = 0; t < bundles.Length; t++)
            {
                if (arrival.Met[t] && bundles[t].Net != bundle.Net)
                {
                    var (from, to) = lanes.BarOf(bundles[t]);
                    Count(bars, Below(from) + (bounds.BinarySearch(from) >= 0 ? 1 : 0), Below(to));
                }
            }

            var inBars = Sum(bars);
            for (var g = 0; g < cost.Length; g++)
            {
                cost[g] += inBars[g];
            }

            if (arrival.From >= 0)
            {
                AddBar(cost, bundles[arrival.From], arrival);
            }

            return (cost, turns);
        }

        private int AlikeIn(int gap, int lane) => !withColours ? 0 : (gap > 0 ? AlikeAt(gap - 1, lane) : 0) + (gap < bounds.Count ? AlikeAt(gap, lane) : 0);

        private int AlikeAt(int bound, int lane) => lanes.problem.Alike(lane, laneAt[bound]);

        // whether the order of two lanes decides if they cross: they share their way up to where it parts, not to where one of them begins
        private bool IsOrdered(Arrival arrival, Other other) =>
            (other.ArrivesAt < 0 || arrival.Met[other.ArrivesAt])
            && !(other.StartsAt >= 0 && arrival.Met[other.StartsAt])
            && !(arrival.From >= 0 && bundles[arrival.From].PassingLanes[other.Lane]);

        /// <summary>Takes down which passing lanes each arriving lane crosses on its way.</summary>
        public void NoteCrossed()
        {
            if (bundle.Arriving.Count == 0 || low > high)
            {
                return;
            }

            // also lanes that come back and were put outside all that lies beyond
            FindOthers(everywhere: true);
            foreach (var arrival in bundle.Arriving)
            {
                var key = lanes.keys[arrival.Lane, arrival.End];
                var distance = DistanceOf(arrival);
                var crossed = lanes.crossedBy[(bundle.Splice, arrival.Lane)] = [];
                foreach (var other in others)
                {
                    // what is crossed at a bar nearer the root is seen to there
                    if (other.ArrivesAt < 0 && IsOrdered(arrival, other) && other.Distance > distance != other.Key < key)
                    {
                        crossed.Add(other.Lane);
                    }
                }
            }
        }

        private double DistanceOf(Arrival arrival) => Distance(arrival.From >= 0 ? RootPosition : FarPosition(arrival.Lane, 1 - arrival.End));

        // the bar at which the lane begins reaches as far as the lane
        private void AddBar(int[] cost, SpliceBundle from, Arrival arrival)
        {
            var (first, last) = lanes.BarOf(from, without: arrival.Lane);
            for (var g = 0; g < cost.Length; g++)
            {
                var key = g == 0 ? low - 0.5 : g == bounds.Count ? high + 0.5 : (bounds[g - 1] + bounds[g]) / 2;
                foreach (var (lane, end) in from.Passing)
                {
                    var k = lanes.keys[lane, end];
                    cost[g] += k > Math.Min(first, key) && k < Math.Max(last, key) ? 1 : 0;
                }
            }
        }

        private static void Count(int[] steps, int from, int to)
        {
            if (from <= to)
            {
                steps[from]++;
                steps[to + 1]--;
            }
        }

        private int[] Sum(int[] steps)
        {
            var sums = new int[bounds.Count + 1];
            var sum = 0;
            for (var g = 0; g < sums.Length; g++)
            {
                sums[g] = sum += steps[g];
            }

            return sums;
        }

        // lanes of one gap in the order of their far ends; one of them goes on in the place of a leg that lies there
        private void Put(List<Arrival> here, int gap, (int Low, int High)? legs)
        {
            here.Sort((a, b) =>
            {
                var byDistance = DistanceOf(b).CompareTo(DistanceOf(a));
                return byDistance != 0 ? byDistance : a.Lane.CompareTo(b.Lane);
            });
            var inGap = bundle.Legs.Select(l => lanes.keys[l.Lane, 1 - l.End]).Where(k => Below(k) == gap).Order().ToList();
            if (inGap.Count > 0)
            {
                var feed = Math.Max(0, here.IndexOf(bundle.Arriving[0]));
                Spread(here[..feed], Neighbour(inGap[0], -1), inGap[0]);
                lanes.keys[here[feed].Lane, here[feed].End] = inGap[Math.Min(feed, inGap.Count - 1)];
                Spread(here[(feed + 1)..], inGap[^1], Neighbour(inGap[^1], 1));
            }
            else if (gap < bounds.Count && (gap == 0 || (legs is { } l && gap < l.Low)))
            {
                Spread(here, Neighbour(bounds[gap], -1), bounds[gap]);
            }
            else if (gap > 0)
            {
                Spread(here, bounds[gap - 1], Neighbour(bounds[gap - 1], 1));
            }
            else
            {
                Spread(here, low - 1, low);
            }
        }

        private void Spread(List<Arrival> some, double from, double to)
        {
            for (var i = 0; i < some.Count; i++)
            {
                lanes.keys[some[i].Lane, some[i].End] = from + ((to - from) * (i + 1) / (some.Count + 1));
            }
        }

        // the nearest key on one side, of any lane but those that are being placed
        private double Neighbour(double key, int side)
        {
            var best = key + side;
            for (var lane = 0; lane < lanes.problem.Lanes.Length; lane++)
            {
                for (var end = 0; end < 2; end++)
                {
                    var k = lanes.keys[lane, end];
                    if ((side > 0 ? k > key && k < best : k < key && k > best) && !bundle.Arriving.Exists(a => a.Lane == lane && a.End == end))
                    {
                        best = k;
                    }
                }
            }

            return best;
        }
    }
}
