namespace HarnessDraw.Layout;

// the bar of a splice, drawn piece by piece by the lanes that meet there
internal sealed partial class ChartGeometry
{
    // slots on the bar in order, the feed (first lane to arrive) being where the dot is
    private (List<(int Slot, LaneRun Run)> Slots, int Feed) Bar(int splice, Spine spine)
    {
        var slots = new List<(int, LaneRun)>();
        var feed = -1;
        var e = lanes.Splice(splice).Event;
        foreach (var run in spine.Runs)
        {
            if (run.StartEvent != e && run.EndEvent != e)
            {
                continue;
            }

            foreach (var (lane, _) in lanes.EndsAt(splice))
            {
                if (lane == run.Lane)
                {
                    slots.Add((run.Slot, run));
                    break;
                }
            }
        }

        // the first of its wires that arrives from the root's side is the feed
        foreach (var (lane, _) in lanes.EndsAt(splice))
        {
            foreach (var (slot, run) in slots)
            {
                feed = run.Lane == lane && run.EndEvent == e && feed < 0 ? slot : feed;
            }
        }

        return (slots, feed < 0 && slots.Count > 0 ? slots[0].Item1 : feed);
    }

    // how far a lane's own piece of the bar goes
    private double Toward(int splice, Spine spine, LaneRun run)
    {
        if (lanes.BarEnd(splice, run.Lane) is not { } to)
        {
            return spine.U(run.Slot);
        }

        foreach (var (slot, other) in Bar(splice, spine).Slots)
        {
            if (other.Key == to)
            {
                return spine.U(slot);
            }
        }

        return spine.U(run.Slot);
    }

    // at an end of the bar that its own lane draws there is a corner and no dot
    private bool IsOutermost(int splice, Spine spine, LaneRun run) => lanes.BarEnd(splice, run.Lane) is { } to
        && Bar(splice, spine).Slots.TrueForAll(s => s.Run == run || (to < run.Key ? s.Slot < run.Slot : s.Slot > run.Slot));
}
