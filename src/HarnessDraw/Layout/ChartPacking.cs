using System.Runtime.InteropServices;

namespace HarnessDraw.Layout;

/// <summary>
/// Packs a spine with all that hangs on it against a contour of boxes, children first. Everything that is printed is a box, boxes of one side are
/// pairwise apart, the spine's own lanes part the sides, and a child lies wholly beyond the edge it leaves: nothing can overlap.
/// </summary>
internal sealed partial class ChartPacking(ChartProblem problem, ChartMetrics metrics, ChartLanes lanes, ChartStance stance)
{

    private readonly FrameBoxes left = new();
    private readonly FrameBoxes right = new();
    private readonly List<StationStart> begins = [];
    private double[] slotFrom = [];
    private double[] slotTo = [];

    private double Gap => metrics.GapMm;

    /// <summary>Packs the spine and, before it, every child that has not been packed yet; leaves boxes and places in the spine.</summary>
    /// <param name="spine">What is packed.</param>
    /// <param name="first">The first station that is not as it was when this spine was packed last: what stands before it stays.</param>
    public void Pack(Spine spine, int first = 0)
    {
        foreach (var station in spine.Stations)
        {
            PackChildren(station.Left);
            PackChildren(station.Right);
        }

        var (t, true0) = first == 0 ? (Begin(spine), Offset(spine)) : Resume(spine, first);
        for (var i = first; i < spine.Stations.Count; i++)
        {
            begins.Add(new(left.Count, right.Count, spine.Marks.Count, t, true0));
            var station = spine.Stations[i];
            true0 += Distance(spine, station);
            t = PlaceStation(spine, station, t, Math.Max(0, true0));
            // branches leave in their true order
            t = PlaceItems(spine, station, station.Left, t);
            t = PlaceItems(spine, station, station.Right, t);
            Measure(spine, station);
            if (i == 0 && spine.HasOwnFirst)
            {
                // cards of the place where the rib leaves stay there
                (spine.OwnLeft, spine.OwnRight) = (left.Count, right.Count);
                t += spine.LiftMm;
            }
        }

        // the lanes reach to what stands at the end, however far that was pushed
        t = PlaceEnd(spine, t);
        spine.Packed.Clear();
        spine.TurnedEdge = double.NaN;
        spine.Packed.EnsureCapacity(left.Count + right.Count + 1);
        spine.Packed.AddRange(left.Boxes);
        spine.LeftCount = left.Count;
        spine.Packed.AddRange(right.Boxes);
        if (corner != default)
        {
            spine.Packed.Remove(corner);
        }

        if (spine.SlotCount > 0)
        {
            spine.Packed.Add(new(spine.Parent is null ? 0 : metrics.CornerMm, Math.Max(t, spine.StartT), -1, spine.U(spine.SlotCount - 1) + 1));
        }

        spine.IsPacked = true;
    }

    private double Begin(Spine spine)
    {
        current = spine;
        begins.Clear();
        left.KeepFirst(0);
        right.KeepFirst(0);
        spine.Marks.Clear();
        FindEdges(spine);
        return spine.StartT = spine.Parent is null ? PlaceTable(spine) : metrics.CornerMm + 1.2 + (spine.HasOwnFirst ? 0 : spine.LiftMm);
    }

    private (double T, double TrueMm) Resume(Spine spine, int station)
    {
        var at = begins[station];
        begins.RemoveRange(station, begins.Count - station);
        left.KeepFirst(at.Left);
        right.KeepFirst(at.Right);
        spine.Marks.RemoveRange(at.Marks, spine.Marks.Count - at.Marks);
        return (at.T, at.TrueMm);
    }

    // packs the children, one after the other
    private ChartPacking Inner => inner ??= new(problem, metrics, lanes, stance);
    private ChartPacking? inner;

    private void PackChildren(List<SpineItem> items)
    {
        foreach (var item in items)
        {
            if (item.Child is { IsPacked: false } child)
            {
                Inner.Pack(child);
            }
        }
    }

    /// <summary>Of the root spine: u of the pin table's top, t of each lane's track, width of the channel.</summary>
    public double TableTopU { get; private set; }
    public Dictionary<int, TableTrack> TableTracks { get; private set; } = [];
    public double ChannelMm { get; private set; }

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
        if (HasTurn(station))
        {
            foreach (var other in station.Left)
            {
                end = Math.Max(end, other.LastLaneT + 2);
            }
        }

        return end;
    }

    // a lane that comes from here and goes away from the root
    private bool HasTurn(Station station)
    {
        var first = station.FirstEvent + station.Splices.Count;
        var last = first + station.Left.Count + station.Right.Count;
        foreach (var run in current!.Runs)
        {
            if (run.StartEvent >= first && run.StartEvent < last)
            {
                return true;
            }
        }

        return false;
    }

    private Spine? current;

    private void PlaceChild(Spine spine, SpineItem item, Spine child, double from)
    {
        var isLeft = item.IsLeft;
        var list = isLeft ? left : right;
        var edge = isLeft ? slotFrom[item.Event] : slotTo[item.Event];
        var width = child.U(Math.Max(0, child.SlotCount - 1));
        var least = isLeft ? from + metrics.CornerMm + 0.6 : from + metrics.CornerMm + 0.6 + width;
        if (lift is { } limit && spine.Parent is null)
        {
            Lift(child, list, isLeft, edge, width, least, limit);
        }

        // until the child is packed again its boxes lie beside its parent as they did
        if (child.TurnedEdge != edge)
        {
            Turn(child, isLeft, edge, width, 0);
            child.TurnedEdge = edge;
        }

        item.T = Settle(list, CollectionsMarshal.AsSpan(child.Turned), least);
        item.EdgeU = edge;
        item.LastLaneT = isLeft ? item.T + width : item.T;
        foreach (var b in child.Turned)
        {
            list.Add(b.Move(item.T));
        }

        Staircase(spine, item, isLeft);
        Corners(spine, item, child);
    }

    // the boxes of a child as they lie beside its parent, its stem lengthened
    private void Turn(Spine child, bool isLeft, double edge, double width, double liftMm)
    {
        var stem = isLeft
            ? new FrameBox(-metrics.CornerMm, width + 0.8, edge - metrics.CornerMm - 2, edge)
            : new FrameBox(-width - metrics.CornerMm, 0.8, edge, edge + metrics.CornerMm + 2);
        var boxes = child.Turned;
        boxes.Clear();
        boxes.EnsureCapacity(child.Packed.Count + 1);
        boxes.Add(stem);
        for (var i = 0; i < child.Packed.Count; i++)
        {
            var b = child.Packed[i];
            // cards of the place itself stay; what begins at the parent, lanes and their staircase, grows; all else moves out
            var isOwn = i < child.OwnLeft || (i >= child.LeftCount && i < child.LeftCount + child.OwnRight);
            var (near, far) = (isOwn || b.T0 < child.StartT - 1e-6 ? b.T0 : b.T0 + liftMm, isOwn ? b.T1 : b.T1 + liftMm);
            boxes.Add(isLeft ? new(b.U0, b.U1, edge - far, edge - near) : new(-b.U1, -b.U0, edge + near, edge + far));
        }
    }

    private void PlaceCard(Spine spine, SpineItem item, double from)
    {
        var card = problem.Cards[item.Card];
        var isLeft = item.IsLeft;
        var list = isLeft ? left : right;
        var rows = lanes.CardRows[item.Card].Count;
        var height = metrics.HeightMm(card, rows);
        var lead = item.LeadNode >= 0 ? problem.Nodes[item.LeadNode].CaptionMm + 6 : 0;
        var gap = Math.Max(metrics.CardGapMm, Math.Max(card.StubMm > 0 ? card.StubMm + 2.5 : 0, lead));
        var edge = isLeft ? Math.Min(slotFrom[0], slotFrom[item.Event]) - gap : Math.Max(slotTo[0], slotTo[item.Event]) + gap;
        var inner = isLeft ? slotFrom[item.Event] : slotTo[item.Event];
        edge += isLeft ? -OutMm(spine, item) : OutMm(spine, item);
        edge = ScaledLead(item, inner, edge);
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

    private double Settle(FrameBoxes placed, ReadOnlySpan<FrameBox> boxes, double least)
    {
        var t = least;
        if (current!.Parent is not null)
        {
            // nothing reaches back to the bundle that this spine left
            foreach (var b in boxes)
            {
                t = Math.Max(t, metrics.CornerMm - b.T0);
            }
        }

        var first = double.PositiveInfinity;
        foreach (var b in boxes)
        {
            first = Math.Min(first, b.T0);
        }

        // most of what is placed lies too far back to push any of them
        for (var i = placed.Count - 1; i >= 0 && placed.FarthestUpTo(i) + Gap - first > t; i--)
        {
            var p = placed.Boxes[i];
            if (p.T1 + Gap - first <= t)
            {
                continue;
            }

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
            left.Add(new(0, item.LastLaneT + 0.8, now, later - (spine.PitchMm / 2)));
        }
        else if (!isLeft && later < now)
        {
            right.Add(new(0, item.LastLaneT + 0.8, later + (spine.PitchMm / 2), now));
        }
    }

    // concentric corners from the inside out; they rest on the lanes' order alone
    private void Corners(Spine spine, SpineItem item, Spine child)
    {
        if (child.HasCorners)
        {
            return;
        }

        child.HasCorners = true;
        var mine = new Dictionary<int, LaneRun>();
        foreach (var run in spine.Runs)
        {
            if (run.EndEvent == item.Event)
            {
                mine[run.Lane] = run;
            }
        }

        // a lane that turns the other way crosses those beside it: there all corners are tight, so it meets straight pieces
        var isTight = child.Runs.Exists(r => r.Turns);
        var radius = isTight ? metrics.TightCornerMm : metrics.CornerMm;
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

            if (lastChild is not null && !isTight)
            {
                radius += Math.Min(child.U(Math.Abs(run.Slot - lastChild.Slot)), spine.U(Math.Abs(above.Slot - lastMine!.Slot)));
            }

            run.CornerMm = radius;
            (lastChild, lastMine) = (run, above);
        }
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

    /// <summary>How many boxes and marks stood before a station, how far the spine had come and its true length there.</summary>
    private readonly record struct StationStart(int Left, int Right, int Marks, double T, double TrueMm);
}
