namespace HarnessDraw.Layout;

// the pin table before the root spine, and the cards stacked at the end of a horizontal one
internal sealed partial class ChartPacking
{
    private double PlaceTable(Spine spine)
    {
        var table = problem.Table;
        if (table is null)
        {
            return 0;
        }

        var middle = Math.Max(0, spine.SlotCount - 1) / 2.0;
        // rows half a lane off the slots
        var top = (Math.Floor(middle) * spine.PitchMm) - (Math.Round(table.RowsMm.Length / 2.0) * metrics.RowMm) + (metrics.PitchMm / 2);
        if (table.RowsMm.Length > 0)
        {
            top = (Math.Floor(middle) * spine.PitchMm) + (metrics.PitchMm / 2) - (Math.Round((table.RowsMm[0] + ((table.RowsMm[^1] - table.RowsMm[0]) * stance.TableShare)) / metrics.PitchMm) * metrics.PitchMm);
            top += Off(top + table.RowsMm[0]);
        }

        TableTopU = top;
        var rows = new List<double>();
        var slots = new List<double>();
        var lanesOf = new List<int>();
        foreach (var run in spine.Runs)
        {
            var path = lanes.PathOf[run.Lane];
            var end = lanes.EndOf(run.Lane, path.FirstEnd);
            if (end.Kind == ChartEndKind.Pin && path.Meet == spine)
            {
                rows.Add(top + table.RowsMm[end.Index]);
                slots.Add(spine.U(run.Slot));
                lanesOf.Add(run.Lane);
            }
        }

        if (spine.TableShare != stance.TableShare)
        {
            (spine.TableShare, spine.TableChannel, spine.TableChannel2, spine.TableFan) = (stance.TableShare, null, null, null);
        }

        spine.TableChannel ??= PinChannel.Route(rows.ToArray(), slots.ToArray(), metrics.PitchMm);
        var (tracks, count, close) = spine.TableChannel.Value;
        // lanes that end in a band lie beside no row
        close = spine.IsBand ? 0 : close;
        TableTracks = new Dictionary<int, TableTrack>();
        var fan = 0;
        var mids = rows.ToArray();
        if (close > 0)
        {
            // sort in a channel as wide as the rows, half a row off them, then bring the lanes together
            mids = Mids(spine, rows);
            spine.TableChannel2 ??= PinChannel.Route(rows.ToArray(), mids, metrics.PitchMm);
            spine.TableFan ??= PinChannel.Route(mids, slots.ToArray(), metrics.PitchMm);
            (tracks, count, _) = spine.TableChannel2.Value;
            fan = spine.TableFan.Value.Count;
        }

        var fanMm = close > 0 ? (fan * metrics.PitchMm) + 2 : 0;
        for (var i = 0; i < tracks.Length; i++)
        {
            var second = close > 0 ? -2.5 - ((fan - 1 - spine.TableFan!.Value.Tracks[i]) * metrics.PitchMm) : double.NaN;
            TableTracks[lanesOf[i]] = new(-2.5 - fanMm - ((count - 1 - tracks[i]) * metrics.PitchMm), mids[i], second);
        }

        ChannelMm = 2.5 + fanMm + (Math.Max(0, count) * metrics.PitchMm) + 1;
        var box = new FrameBox(-ChannelMm - table.WidthMm, 0, Math.Min(Math.Min(top, MidFrom), -1), Math.Max(Math.Max(top + table.HeightMm, MidTo), spine.U(spine.SlotCount) + 1));
        left.Add(box);
        right.Add(box);
        if (stance.CornerHeightMm > 0)
        {
            corner = new(box.T0, box.T0 + stance.CornerWidthMm, box.U1, box.U1 + stance.CornerHeightMm);
            right.Add(corner);
        }

        return 0;

        double Off(double y)
        {
            var rest = (y / metrics.PitchMm) - Math.Floor(y / metrics.PitchMm);
            return (0.5 - rest) * metrics.PitchMm;
        }
    }

    private double PlaceEnd(Spine spine, double t)
    {
        if (spine.EndCards.Count == 0)
        {
            return t;
        }

        var (box, channel, gap) = spine.EndStack ??= StackAtEnd(spine);
        var at = Math.Max(Settle(left, [box], t + 1), Settle(right, [box], t + 1));
        left.Add(box.Move(at));
        (spine.EndT, spine.EndCardT) = (at, at + channel + gap);
        return at;
    }

    // the stack's box from its first track on, the room of its tracks and from them to the cards: they rest on the lanes' order alone
    private (FrameBox Box, double ChannelMm, double GapMm) StackAtEnd(Spine spine)
    {
        var isDown = spine.Ry > 0;
        var stub = 0.0;
        var total = -metrics.GapMm;
        var width = 0.0;
        foreach (var c in spine.EndCards)
        {
            var card = problem.Cards[c];
            stub = Math.Max(stub, card.StubMm);
            total += Height(c) + metrics.GapMm;
            width = Math.Max(width, card.WidthMm);
        }

        var e = spine.EndEvent;
        var middle = (slotFrom[e] + slotTo[e]) / 2;
        // tops lie on the lane grid, so rows lie half a lane off the slots
        var u = Grid(middle - (total / 2));
        spine.EndCardU = new double[spine.EndCards.Count];
        var rows = new List<double>();
        var slots = new List<double>();
        var place = new Dictionary<(int, int), double>();
        for (var i = 0; i < spine.EndCards.Count; i++)
        {
            var c = spine.EndCards[i];
            var card = problem.Cards[c];
            spine.EndCardU[i] = u;
            var own = lanes.CardRows[c];
            // stubs at the foot of the card on paper
            var first = u + (isDown ? card.HeadMm : metrics.FootMm + (card.Stubs * metrics.RowMm)) + (metrics.RowMm / 2);
            first = Grid(first) + (metrics.PitchMm / 2);
            spine.EndCardU[i] += first - (u + (isDown ? card.HeadMm : metrics.FootMm + (card.Stubs * metrics.RowMm)) + (metrics.RowMm / 2));
            for (var k = 0; k < own.Count; k++)
            {
                place[own[k]] = first + (k * metrics.RowMm);
            }

            u = Grid(spine.EndCardU[i] + Height(c) + metrics.GapMm + metrics.PitchMm);
        }

        var order = new List<(int Lane, int End)>();
        foreach (var run in spine.Runs)
        {
            if (run.EndEvent == e)
            {
                var end = LastEndOn(spine, run);
                rows.Add(spine.U(run.Slot));
                slots.Add(place[(run.Lane, end)]);
                order.Add((run.Lane, end));
            }
        }

        var (tracks, count, _) = PinChannel.Route(rows.ToArray(), slots.ToArray(), metrics.PitchMm);
        var channel = 1.5 + (count * metrics.PitchMm);
        var low = spine.EndCardU[0];
        var high = spine.EndCardU[^1] + Height(spine.EndCards[^1]);
        var gap = Math.Max(metrics.CardGapMm - 2, stub + 2.5);
        for (var i = 0; i < order.Count; i++)
        {
            spine.EndTracks[order[i]] = (tracks[i] * metrics.PitchMm, slots[i]);
        }

        return (new(0, channel + gap + width, Math.Min(low, slotFrom[e] - 1), Math.Max(high, slotTo[e] + 1)), channel, gap);

        double Height(int c) => metrics.HeightMm(problem.Cards[c], lanes.CardRows[c].Count);

        double Grid(double v) => Math.Ceiling((v / metrics.PitchMm) - 1e-6) * metrics.PitchMm;
    }

    private int LastEndOn(Spine spine, LaneRun run)
    {
        var path = lanes.PathOf[run.Lane];
        if (path.Meet == spine && path.MeetRun == run)
        {
            return 1 - path.FirstEnd;
        }

        foreach (var (s, r) in path.ToFirst)
        {
            if (s == spine && r == run)
            {
                return path.FirstEnd;
            }
        }

        return 1 - path.FirstEnd;
    }

    // heights in slot order, a row apart, half a row off the rows, about the middle of the bundle
    private double[] Mids(Spine spine, List<double> rows)
    {
        var middle = spine.U(Math.Max(0, spine.SlotCount - 1)) / 2;
        var first = middle - ((rows.Count - 1) / 2.0 * metrics.RowMm);
        var off = rows.Count == 0 ? 0 : (first - rows[0]) / metrics.RowMm;
        first += (Math.Floor(off) + 0.5 - off) * metrics.RowMm;
        var mids = new double[rows.Count];
        for (var i = 0; i < mids.Length; i++)
        {
            mids[i] = first + (i * metrics.RowMm);
        }

        MidFrom = Math.Min(MidFrom, first);
        MidTo = Math.Max(MidTo, first + (mids.Length * metrics.RowMm));
        return mids;
    }

    // kept free below the pin table
    private FrameBox corner;

    private double MidFrom { get; set; }
    private double MidTo { get; set; }
}

/// <summary>The way of one lane through the channel at the pin table: its track (t), and where it is sorted first, its height there and its second track.</summary>
internal readonly record struct TableTrack(double T, double MidU, double SecondT)
{
    public bool HasTwo => !double.IsNaN(SecondT);
}
