namespace HarnessDraw.Layout;

/// <summary>Crossings counted from the order alone, and bounds below it. Null bounds come with the reason.</summary>
public sealed record LaneCrossings(int Count, int? StraightLaneBound, int? LowerBound, string? Reason);

/// <summary>Counts the crossings that the lane order leads to, without geometry.</summary>
internal static class CrossingCount
{
    public static int Of(ChartProblem problem, List<Spine> spines, ChartLanes lanes)
    {
        var count = AtTable(problem, spines[0], lanes);
        foreach (var spine in spines)
        {
            count += OnSpine(problem, spine, lanes);
        }

        return count;
    }

    private static int AtTable(ChartProblem problem, Spine root, ChartLanes lanes)
    {
        var at = new List<(int Pin, int Slot, int Net)>();
        foreach (var run in root.Runs)
        {
            var path = lanes.PathOf[run.Lane];
            var end = lanes.EndOf(run.Lane, path.FirstEnd);
            if (path.MeetRun == run && end.Kind == ChartEndKind.Pin)
            {
                at.Add((end.Index, run.Slot, problem.Lanes[run.Lane].Net));
            }
        }

        // runs are in slot order: those before each that have a later pin
        var pins = new PlaceCounts(problem.Table?.RowsMm.Length ?? 0);
        var byNet = new Dictionary<int, List<int>>();
        var count = 0;
        for (var i = 0; i < at.Count; i++)
        {
            count += i - pins.UpTo(at[i].Pin);
            pins.Add(at[i].Pin, 1);
            if (!byNet.TryGetValue(at[i].Net, out var own))
            {
                byNet[at[i].Net] = own = [];
            }

            count -= own.Count(pin => pin > at[i].Pin);
            own.Add(at[i].Pin);
        }

        return count;
    }

    private static int OnSpine(ChartProblem problem, Spine spine, ChartLanes lanes)
    {
        var start = new double[spine.Runs.Count];
        var end = new double[spine.Runs.Count];
        for (var i = 0; i < spine.Runs.Count; i++)
        {
            start[i] = spine.Runs[i].StartEvent;
            end[i] = spine.Runs[i].EndEvent;
        }

        var count = 0;
        var meeting = new RunsByEvent(spine);
        var rank = new Dictionary<(int Lane, int End), double>();
        var leavesLeft = new bool[spine.EndEvent + 2];
        foreach (var station in spine.Stations)
        {
            for (var k = 0; k < station.Splices.Count; k++)
            {
                count += AtBar(problem, spine, lanes, station.Splices[k], station.FirstEvent + k);
            }

            foreach (var item in station.Left)
            {
                leavesLeft[item.Event] = true;
                Refine(spine, lanes, item, meeting, rank, start, end);
            }

            foreach (var item in station.Right)
            {
                Refine(spine, lanes, item, meeting, rank, start, end);
            }
        }

        for (var i = 0; i < spine.Runs.Count; i++)
        {
            var run = spine.Runs[i];
            var path = lanes.PathOf[run.Lane];
            if (path.MeetRun == run && start[i] > -1 && lanes.EndOf(run.Lane, path.FirstEnd).Kind != ChartEndKind.Splice | path.ToFirst.Count > 0)
            {
                count += AtTurn(problem, spine, i, run.StartEvent >= 0 && leavesLeft[run.StartEvent], start, end);
            }
        }

        return count;
    }

    private static int AtBar(ChartProblem problem, Spine spine, ChartLanes lanes, int splice, int at)
    {
        int low = int.MaxValue, high = int.MinValue, net = -1;
        foreach (var run in spine.Runs)
        {
            if ((run.StartEvent == at || run.EndEvent == at) && Ends(lanes, run.Lane, splice))
            {
                (low, high, net) = (Math.Min(low, run.Slot), Math.Max(high, run.Slot), problem.Lanes[run.Lane].Net);
            }
        }

        var count = 0;
        foreach (var run in spine.Runs)
        {
            count += run.StartEvent < at && run.EndEvent > at && run.Slot > low && run.Slot < high && problem.Lanes[run.Lane].Net != net ? 1 : 0;
        }

        return count;
    }

    private static bool Ends(ChartLanes lanes, int lane, int splice)
    {
        foreach (var (l, _) in lanes.EndsAt(splice))
        {
            if (l == lane)
            {
                return true;
            }
        }

        return false;
    }

    // the exact order of leaving within one item
    private static void Refine(Spine spine, ChartLanes lanes, SpineItem item, RunsByEvent meeting, Dictionary<(int Lane, int End), double> rank, double[] start, double[] end)
    {
        rank.Clear();
        if (item.Child is { } child)
        {
            for (var i = 0; i < child.Runs.Count; i++)
            {
                var share = (double)(item.IsLeft ? i : child.Runs.Count - 1 - i) / child.Runs.Count;
                if (child.Runs[i].StartEvent == -1)
                {
                    rank[(child.Runs[i].Lane, 0)] = share;
                    rank[(child.Runs[i].Lane, 1)] = share;
                }
            }
        }
        else
        {
            var rows = lanes.CardRows[item.Card];
            for (var i = 0; i < rows.Count; i++)
            {
                rank[rows[i]] = (double)(item.IsLeft ? i : rows.Count - 1 - i) / rows.Count;
            }
        }

        for (var at = meeting.First(item.Event); at >= 0; at = meeting.Next(at))
        {
            var i = RunsByEvent.RunOf(at);
            var run = spine.Runs[i];
            var path = lanes.PathOf[run.Lane];
            if (path.MeetRun == run)
            {
                Add(ref start[i], run.StartEvent, (run.Lane, path.FirstEnd));
                Add(ref end[i], run.EndEvent, (run.Lane, 1 - path.FirstEnd));
            }
            else
            {
                Add(ref end[i], run.EndEvent, (run.Lane, 0));
                Add(ref end[i], run.EndEvent, (run.Lane, 1));
            }
        }

        void Add(ref double t, int e, (int Lane, int End) key)
        {
            if (e == item.Event && rank.TryGetValue(key, out var share))
            {
                t = e + share;
            }
        }
    }

    private static int AtTurn(ChartProblem problem, Spine spine, int turning, bool isLeft, double[] start, double[] end)
    {
        var run = spine.Runs[turning];
        var count = 0;
        for (var i = 0; i < spine.Runs.Count; i++)
        {
            var other = spine.Runs[i];
            var between = isLeft ? other.Slot < run.Slot : other.Slot > run.Slot;
            count += i != turning && between && start[i] < start[turning] && end[i] > start[turning] && problem.Lanes[other.Lane].Net != problem.Lanes[run.Lane].Net ? 1 : 0;
        }

        return count;
    }

    // runs that start or end at an event, as a chain: run i has its start at 2i and its end at 2i + 1
    private sealed class RunsByEvent
    {
        private readonly int[] first;
        private readonly int[] next;

        public RunsByEvent(Spine spine)
        {
            first = new int[spine.EndEvent + 2];
            next = new int[2 * spine.Runs.Count];
            Array.Fill(first, -1);
            for (var i = spine.Runs.Count - 1; i >= 0; i--)
            {
                Add((2 * i) + 1, spine.Runs[i].EndEvent);
                Add(2 * i, spine.Runs[i].StartEvent);
            }

            void Add(int at, int e)
            {
                if (e >= 0)
                {
                    (next[at], first[e]) = (first[e], at);
                }
            }
        }

        public static int RunOf(int at) => at / 2;

        public int First(int e) => first[e];

        public int Next(int at) => next[at];
    }
}
