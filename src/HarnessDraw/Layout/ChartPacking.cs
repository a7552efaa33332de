namespace HarnessDraw.Layout;

/// <summary>
/// Packs a spine with all that hangs on it against a contour of boxes, children first. Everything that is printed is a box, boxes of one side are
/// pairwise apart, the spine's own lanes part the sides, and a child lies wholly beyond the edge it leaves: nothing can overlap.
/// </summary>
internal sealed class ChartPacking(ChartProblem problem, ChartMetrics metrics, ChartLanes lanes, double stretchX, double stretchY)
{
    private readonly List<FrameBox> left = [];
    private readonly List<FrameBox> right = [];
    private double[] slotFrom = [];
    private double[] slotTo = [];

    private double U(int slot) => slot * metrics.PitchMm;

    private double Gap => metrics.GapMm;

    /// <summary>Packs the spine and, before it, every child that has not been packed yet; leaves boxes and places in the spine.</summary>
    public void Pack(Spine spine)
    {
        foreach (var station in spine.Stations)
        {
            PackChildren(station.Left);
            PackChildren(station.Right);
        }

        current = spine;
        left.Clear();
        right.Clear();
        spine.Marks.Clear();
        FindEdges(spine);
        var t = spine.Parent is null ? PlaceTable(spine) : metrics.CornerMm + 1.2 + spine.LiftMm;
        spine.StartT = t;
        double true0 = 0;
        for (var i = 0; i < spine.Stations.Count; i++)
        {
            var station = spine.Stations[i];
            true0 += Distance(spine, station);
            t = PlaceStation(spine, station, t, Math.Max(0, true0));
            // branches leave in their true order
            t = PlaceItems(spine, station, station.Left, t);
            t = PlaceItems(spine, station, station.Right, t);
        }

        PlaceEnd(spine, t);
        spine.Packed.Clear();
        spine.Packed.AddRange(left);
        spine.Packed.AddRange(right);
        if (spine.SlotCount > 0)
        {
            spine.Packed.Add(new(spine.StartT, Math.Max(t, spine.StartT), -1, U(spine.SlotCount - 1) + 1));
        }

        spine.IsPacked = true;
    }

    private void PackChildren(List<SpineItem> items)
    {
        foreach (var item in items)
        {
            if (item.Child is { IsPacked: false } child)
            {
                new ChartPacking(problem, metrics, lanes, stretchX, stretchY).Pack(child);
            }
        }
    }

    // outermost live slot from an event on: suffix minima and maxima over the slots that still end there
    private void FindEdges(Spine spine)
    {
        var n = spine.EndEvent + 2;
        slotFrom = new double[n];
        slotTo = new double[n];
        Array.Fill(slotFrom, double.NaN);
        Array.Fill(slotTo, double.NaN);
        foreach (var run in spine.Runs)
        {
            var u = U(run.Slot);
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
        var middle = Math.Max(0, spine.SlotCount - 1) * metrics.PitchMm / 2;
        for (var e = 0; e < n; e++)
        {
            if (double.IsNaN(slotFrom[e]))
            {
                (slotFrom[e], slotTo[e]) = e > 0 ? (Middle(e - 1), Middle(e - 1)) : (middle, middle);
            }
        }

        double Middle(int e) => (slotFrom[e] + slotTo[e]) / 2;
    }

    private double Distance(Spine spine, Station station)
    {
        if (!station.HasEdge)
        {
            return 0;
        }

        var to = problem.Nodes[station.Node];
        var from = problem.Nodes[to.Parent];
        return ((to.X - from.X) * spine.Dx * stretchX) + ((to.Y - from.Y) * spine.Dy * stretchY);
    }

    private double PlaceTable(Spine spine)
    {
        var table = problem.Table;
        if (table is null)
        {
            return 0;
        }

        var middle = Math.Max(0, spine.SlotCount - 1) / 2.0;
        // rows half a lane off the slots
        var top = (Math.Floor(middle) * metrics.PitchMm) - (Math.Round(table.RowsMm.Length / 2.0) * metrics.RowMm) + (metrics.PitchMm / 2);
        if (table.RowsMm.Length > 0)
        {
            top = (Math.Floor(middle) * metrics.PitchMm) + (metrics.PitchMm / 2) - (Math.Round((table.RowsMm[^1] + table.RowsMm[0]) / 2 / metrics.PitchMm) * metrics.PitchMm);
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
                slots.Add(U(run.Slot));
                lanesOf.Add(run.Lane);
            }
        }

        var (tracks, count) = PinChannel.Route(rows.ToArray(), slots.ToArray(), metrics.PitchMm);
        TableTracks = new Dictionary<int, double>();
        for (var i = 0; i < tracks.Length; i++)
        {
            TableTracks[lanesOf[i]] = -2.5 - ((count - 1 - tracks[i]) * metrics.PitchMm);
        }

        ChannelMm = 2.5 + (Math.Max(0, count) * metrics.PitchMm) + 1;
        var box = new FrameBox(-ChannelMm - table.WidthMm, 0, Math.Min(top, -1), Math.Max(top + table.HeightMm, U(spine.SlotCount) + 1));
        left.Add(box);
        right.Add(box);
        return 0;

        double Off(double y)
        {
            var rest = (y / metrics.PitchMm) - Math.Floor(y / metrics.PitchMm);
            return (0.5 - rest) * metrics.PitchMm;
        }
    }

    /// <summary>Of the root spine: u of the pin table's top, t of each lane's track, width of the channel.</summary>
    public double TableTopU { get; private set; }
    public Dictionary<int, double> TableTracks { get; private set; } = [];
    public double ChannelMm { get; private set; }

    private double PlaceStation(Spine spine, Station station, double prevEnd, double trueDistance)
    {
        var node = problem.Nodes[station.Node];
        station.FromT = prevEnd;
        var e = station.FirstEvent;
        var t = prevEnd + 1;
        if (station == spine.Stations[0] && spine.Parent is not null && node.Disc && station.HasEdge)
        {
            var d = metrics.DiscMm;
            var disc = Beside(spine, e, true, t, d, d + 1, 1.6);
            spine.Marks.Add(new(MarkKind.Disc, station.Node, disc, true, disc.T0));
            left.Add(disc);
        }

        var many = station.Splices.Count > 3 && spine.IsHorizontal;
        var step = spine.IsHorizontal ? many ? metrics.SpliceStepMm / 2 : metrics.SpliceStepMm : 8;
        for (var k = 0; k < station.Splices.Count; k++)
        {
            var s = station.Splices[k];
            var label = problem.Splices[s].LabelMm;
            var half = spine.IsHorizontal ? Math.Max(label / 2, 1.5) + 0.6 : 3.7;
            var depth = spine.IsHorizontal ? 7.5 : label + 1;
            var off = 3.5 + (many && k % 2 == 1 ? 8.2 : 0);
            var at = Math.Max(t + 2.5, prevEnd + 3.5 + (k == 0 ? half - 2.5 : 0));
            var box = Beside(spine, e + k, false, at - half, 2 * half, depth, off);
            at = box.T0 + half;
            spine.Marks.Add(new(MarkKind.Splice, s, box, false, at));
            right.Add(box);
            t = at + Math.Max(0, step - 2.5);
            if (k == station.Splices.Count - 1)
            {
                t = at + 2.5;
            }
        }

        if (station.HasCut)
        {
            var c = metrics.CutMm;
            var box = Beside(spine, e + station.Splices.Count, false, Math.Max(t + 1, prevEnd + 2), c, c + 2, 1.5);
            spine.Marks.Add(new(MarkKind.Cut, station.Node, box, false, (box.T0 + box.T1) / 2));
            right.Add(box);
            t = Math.Max(t, box.T1 + 1);
        }

        t = Math.Max(t, trueDistance);
        if (station.HasEdge && node.CaptionMm > 0)
        {
            var least = spine.IsHorizontal ? node.CaptionMm + 9 : 11;
            var depth = spine.IsHorizontal ? metrics.DimensionMm : node.CaptionMm + 3.5;
            var box = Beside(spine, e, true, prevEnd + 1, least, depth, 2.2);
            var end = Math.Max(t, box.T1);
            box = box with { T1 = end };
            spine.Marks.Add(new(MarkKind.Length, station.Node, box, true, end));
            left.Add(box);
            t = Math.Max(t, end + 0.8);
        }

        if (node.FlagWidthMm > 0 && (station.HasEdge || spine.Parent is null || IsFirstOf(spine, station)))
        {
            t = PlaceFlag(spine, station, node, t);
        }

        station.T = t;
        return t;
    }

    private static bool IsFirstOf(Spine spine, Station station) =>
        station.Node >= 0 && spine.Stations.Count == 1 && !station.HasEdge;

    private double PlaceFlag(Spine spine, Station station, ChartNode node, double t)
    {
        // ribs of a place on a horizontal spine carry its flag
        if (spine.IsHorizontal && HasRib(station))
        {
            return t;
        }

        if (!station.HasEdge && !IsFlagRib(spine))
        {
            return t;
        }

        var isLeft = station.Left.Count >= station.Right.Count;
        var e = station.FirstEvent + station.Splices.Count;
        var (length, depth) = spine.IsHorizontal ? (node.FlagWidthMm, node.FlagHeightMm) : (node.FlagHeightMm, node.FlagWidthMm);
        var box = Beside(spine, e, isLeft, t + 1, length, depth, spine.IsHorizontal ? 3 : metrics.CardGapMm);
        spine.Marks.Add(new(MarkKind.Flag, station.Node, box, isLeft, (box.T0 + box.T1) / 2));
        (isLeft ? left : right).Add(box);
        return spine.IsHorizontal ? Math.Max(t, box.T1 + 1) : Math.Max(t, box.T0);
    }

    private static bool HasRib(Station station)
    {
        foreach (var list in (List<SpineItem>[])[station.Left, station.Right])
        {
            foreach (var item in list)
            {
                if (item.Child is { } child && child.Stations[0].Node == station.Node)
                {
                    return true;
                }
            }
        }

        return false;
    }

    // the first rib of the place
    private static bool IsFlagRib(Spine rib)
    {
        if (rib.Parent is null || rib.ParentItem is null)
        {
            return rib.Parent is null;
        }

        foreach (var station in rib.Parent.Stations)
        {
            foreach (var list in (List<SpineItem>[])[station.Left, station.Right])
            {
                foreach (var item in list)
                {
                    if (item.Child is { } child && child.Stations[0].Node == rib.Stations[0].Node && !child.Stations[0].HasEdge)
                    {
                        return child == rib;
                    }
                }
            }
        }

        return false;
    }

    private FrameBox Beside(Spine spine, int e, bool isLeft, double t, double length, double depth, double off)
    {
        var edge = isLeft ? slotFrom[e] - off : slotTo[e] + off;
        var (u0, u1) = isLeft ? (edge - depth, edge) : (edge, edge + depth);
        var list = isLeft ? left : right;
        for (var again = true; again;)
        {
            again = false;
            foreach (var b in list)
            {
                if (b.U0 < u1 + 1 && u0 - 1 < b.U1 && b.T0 < t + length + 1 && t - 1 < b.T1)
                {
                    t = b.T1 + 1;
                    again = true;
                }
            }
        }

        return new(t, t + length, u0, u1);
    }

    private double PlaceItems(Spine spine, Station station, List<SpineItem> items, double t)
    {
        var end = t;
        var from = station.T;
        foreach (var item in items)
        {
            from = Math.Max(from, LinkedEnd(station, item, items));
            if (item.Child is { } child)
            {
                PlaceChild(spine, item, child, from);
            }
            else
            {
                PlaceCard(spine, item, from);
            }

            from = Math.Max(from, item.LastLaneT + 1);
            end = Math.Max(end, item.LastLaneT + 1);
        }

        return end;
    }

    // lanes from the left to the right side of one place need their order along the spine
    private double LinkedEnd(Station station, SpineItem item, List<SpineItem> items)
    {
        if (items != station.Right || station.Left.Count == 0)
        {
            return 0;
        }

        var end = 0.0;
        foreach (var run in RunsEndingAt(item))
        {
            foreach (var other in station.Left)
            {
                if (run.StartEvent == other.Event)
                {
                    end = Math.Max(end, other.LastLaneT + 2);
                }
            }
        }

        return end;
    }

    private List<LaneRun> RunsEndingAt(SpineItem item)
    {
        var found = new List<LaneRun>();
        foreach (var run in current!.Runs)
        {
            if (run.EndEvent == item.Event)
            {
                found.Add(run);
            }
        }

        return found;
    }

    private Spine? current;

    private void PlaceChild(Spine spine, SpineItem item, Spine child, double from)
    {
        var isLeft = item.IsLeft;
        var list = isLeft ? left : right;
        var edge = isLeft ? slotFrom[item.Event] : slotTo[item.Event];
        var width = U(Math.Max(0, child.SlotCount - 1));
        var least = isLeft ? from + metrics.CornerMm + 0.6 : from + metrics.CornerMm + 0.6 + width;
        var stem = isLeft
            ? new FrameBox(-metrics.CornerMm, width + 0.8, edge - metrics.CornerMm - 2, edge)
            : new FrameBox(-width - metrics.CornerMm, 0.8, edge, edge + metrics.CornerMm + 2);
        var boxes = new List<FrameBox>(child.Packed.Count + 2) { stem };
        foreach (var b in child.Packed)
        {
            boxes.Add(isLeft ? new(b.U0, b.U1, edge - b.T1, edge - b.T0) : new(-b.U1, -b.U0, edge + b.T0, edge + b.T1));
        }

        item.T = Settle(list, boxes, least);
        item.EdgeU = edge;
        item.LastLaneT = isLeft ? item.T + width : item.T;
        foreach (var b in boxes)
        {
            list.Add(b.Move(item.T));
        }

        Staircase(spine, item, isLeft);
        Corners(spine, item, child);
    }

    private void PlaceCard(Spine spine, SpineItem item, double from)
    {
        var card = problem.Cards[item.Card];
        var isLeft = item.IsLeft;
        var list = isLeft ? left : right;
        var rows = lanes.CardRows[item.Card].Count;
        var height = card.HeadMm + metrics.FootMm + (metrics.RowMm * (rows + card.Stubs));
        var lead = item.LeadNode >= 0 ? problem.Nodes[item.LeadNode].CaptionMm + 6 : 0;
        var gap = Math.Max(metrics.CardGapMm, Math.Max(card.StubMm > 0 ? card.StubMm + 2.5 : 0, lead));
        var edge = isLeft ? Math.Min(slotFrom[0], slotFrom[item.Event]) - gap : Math.Max(slotTo[0], slotTo[item.Event]) + gap;
        var inner = isLeft ? slotFrom[item.Event] : slotTo[item.Event];
        var box = isLeft ? new FrameBox(0, height, edge - card.WidthMm, inner - 1) : new FrameBox(0, height, inner + 1, edge + card.WidthMm);
        var firstRow = FirstRow(spine, card);
        item.T = Settle(list, [box], Math.Max(from, from + 2.2 - firstRow));
        item.EdgeU = edge;
        item.LastLaneT = rows == 0 ? item.T : item.T + firstRow + ((rows - 1) * metrics.RowMm);
        list.Add(box.Move(item.T));
        Staircase(spine, item, isLeft);
    }

    /// <summary>Distance from a card's start along the spine to its first row with a lane.</summary>
    public double FirstRow(Spine spine, ChartCard card) => (spine.Dy > 0 ? card.HeadMm : metrics.FootMm) + (metrics.RowMm / 2);

    private double Settle(List<FrameBox> placed, List<FrameBox> boxes, double least)
    {
        var t = least;
        foreach (var p in placed)
        {
            foreach (var b in boxes)
            {
                if (p.U0 < b.U1 + Gap && b.U0 - Gap < p.U1 && p.T1 + Gap - b.T0 > t)
                {
                    t = p.T1 + Gap - b.T0;
                }
            }
        }

        return Math.Round(t, 3);
    }

    // the lanes that have left: nothing of this side may lie on them further back
    private void Staircase(Spine spine, SpineItem item, bool isLeft)
    {
        var next = item.Event + 1;
        var (now, later) = isLeft ? (slotFrom[item.Event], slotFrom[next]) : (slotTo[item.Event], slotTo[next]);
        if (isLeft && later > now)
        {
            left.Add(new(spine.StartT - metrics.CornerMm, item.LastLaneT + 0.8, now, later - (metrics.PitchMm / 2)));
        }
        else if (!isLeft && later < now)
        {
            right.Add(new(spine.StartT - metrics.CornerMm, item.LastLaneT + 0.8, later + (metrics.PitchMm / 2), now));
        }
    }

    // concentric corners from the inside out
    private void Corners(Spine spine, SpineItem item, Spine child)
    {
        var mine = new Dictionary<int, LaneRun>();
        foreach (var run in spine.Runs)
        {
            if (run.EndEvent == item.Event)
            {
                mine[run.Lane] = run;
            }
        }

        var radius = metrics.CornerMm;
        LaneRun? lastChild = null, lastMine = null;
        var runs = child.Runs;
        for (var i = 0; i < runs.Count; i++)
        {
            var run = runs[item.IsLeft ? i : runs.Count - 1 - i];
            if (run.StartEvent != -1)
            {
                continue;
            }

            if (run.Turns || !mine.TryGetValue(run.Lane, out var above))
            {
                run.CornerMm = metrics.TightCornerMm;
                continue;
            }

            if (lastChild is not null)
            {
                radius += Math.Min(Math.Abs(run.Slot - lastChild.Slot), Math.Abs(above.Slot - lastMine!.Slot)) * metrics.PitchMm;
            }

            run.CornerMm = radius;
            (lastChild, lastMine) = (run, above);
        }
    }

    private void PlaceEnd(Spine spine, double t)
    {
        if (spine.EndCards.Count == 0)
        {
            return;
        }

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
                rows.Add(U(run.Slot));
                slots.Add(place[(run.Lane, end)]);
                order.Add((run.Lane, end));
            }
        }

        var (tracks, count) = PinChannel.Route(rows.ToArray(), slots.ToArray(), metrics.PitchMm);
        var channel = 1.5 + (count * metrics.PitchMm);
        var low = spine.EndCardU[0];
        var high = spine.EndCardU[^1] + Height(spine.EndCards[^1]);
        var gap = Math.Max(metrics.CardGapMm - 2, stub + 2.5);
        var box = new FrameBox(0, channel + gap + width, Math.Min(low, slotFrom[e] - 1), Math.Max(high, slotTo[e] + 1));
        var at = Math.Max(Settle(left, [box], t + 1), Settle(right, [box], t + 1));
        left.Add(box.Move(at));
        spine.EndCardT = at + channel + gap;
        spine.EndTracks.Clear();
        for (var i = 0; i < order.Count; i++)
        {
            spine.EndTracks[order[i]] = (at + 1 + (tracks[i] * metrics.PitchMm), slots[i]);
        }

        double Height(int c) => problem.Cards[c].HeadMm + metrics.FootMm + (metrics.RowMm * (lanes.CardRows[c].Count + problem.Cards[c].Stubs));

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

    /// <summary>Packs everything from the root.</summary>
    public void PackAll(List<Spine> spines)
    {
        foreach (var spine in spines)
        {
            spine.IsPacked = false;
        }

        Pack(spines[0]);
    }
}
