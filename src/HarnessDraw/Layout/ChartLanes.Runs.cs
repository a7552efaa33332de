namespace HarnessDraw.Layout;

// the lanes as runs on the spines, and their slots
internal sealed partial class ChartLanes
{
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
