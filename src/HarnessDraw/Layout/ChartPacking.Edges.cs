namespace HarnessDraw.Layout;

// how far the lanes of a spine reach across it
internal sealed partial class ChartPacking
{
    // outermost live slot from an event on: suffix minima and maxima over the slots that still end there; they rest on the lanes' order alone
    private void FindEdges(Spine spine)
    {
        if (spine.Edges is { } known)
        {
            (slotFrom, slotTo) = known;
            return;
        }

        var n = spine.EndEvent + 2;
        slotFrom = new double[n];
        slotTo = new double[n];
        spine.Edges = (slotFrom, slotTo);
        Array.Fill(slotFrom, double.NaN);
        Array.Fill(slotTo, double.NaN);
        foreach (var run in spine.Runs)
        {
            var u = spine.U(run.Slot);
            slotFrom[run.EndEvent] = double.IsNaN(slotFrom[run.EndEvent]) ? u : Math.Min(slotFrom[run.EndEvent], u);
            slotTo[run.EndEvent] = double.IsNaN(slotTo[run.EndEvent]) ? u : Math.Max(slotTo[run.EndEvent], u);
        }

        var (low, high) = (double.NaN, double.NaN);
        for (var e = n - 1; e >= 0; e--)
        {
            low = double.IsNaN(low) ? slotFrom[e] : double.IsNaN(slotFrom[e]) ? low : Math.Min(low, slotFrom[e]);
            high = double.IsNaN(high) ? slotTo[e] : double.IsNaN(slotTo[e]) ? high : Math.Max(high, slotTo[e]);
            (slotFrom[e], slotTo[e]) = (low, high);
        }

        // nothing left: the middle of what was there
        var middle = spine.U(Math.Max(0, spine.SlotCount - 1)) / 2;
        for (var e = 0; e < n; e++)
        {
            if (double.IsNaN(slotFrom[e]))
            {
                (slotFrom[e], slotTo[e]) = e > 0 ? (Middle(e - 1), Middle(e - 1)) : (middle, middle);
            }
        }

        double Middle(int e) => (slotFrom[e] + slotTo[e]) / 2;
    }
}
