using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Layout;

/// <summary>Reads places off the packed spines: lanes as rounded right-angled lines, cards, marks and bundles on paper.</summary>
internal sealed class ChartGeometry
{
    private readonly ChartProblem problem;
    private readonly ChartMetrics metrics;
    private readonly List<Spine> spines;
    private readonly ChartLanes lanes;
    private readonly ChartPacking packing;
    private readonly (Spine Spine, SpineItem Item)[] cardItem;
    private readonly Dictionary<int, double> spliceT = [];

    private ChartGeometry(ChartProblem problem, ChartMetrics metrics, List<Spine> spines, ChartLanes lanes, ChartPacking packing)
    {
        this.problem = problem;
        this.metrics = metrics;
        this.spines = spines;
        this.lanes = lanes;
        this.packing = packing;
        cardItem = new (Spine, SpineItem)[problem.Cards.Length];
        foreach (var spine in spines)
        {
            if (spine.Parent is { } parent)
            {
                (spine.OriginX, spine.OriginY) = parent.At(spine.ParentItem!.T, spine.ParentItem.EdgeU);
            }

            foreach (var mark in spine.Marks)
            {
                if (mark.Kind == MarkKind.Splice)
                {
                    spliceT[mark.Index] = mark.At;
                }
            }

            foreach (var station in spine.Stations)
            {
                foreach (var item in station.Left)
                {
                    Remember(spine, item);
                }

                foreach (var item in station.Right)
                {
                    Remember(spine, item);
                }
            }
        }

        void Remember(Spine spine, SpineItem item)
        {
            if (item.Card >= 0)
            {
                cardItem[item.Card] = (spine, item);
            }
        }
    }

    public static ChartPlan Read(ChartProblem problem, ChartMetrics metrics, List<Spine> spines, ChartLanes lanes, ChartPacking packing, LaneCrossings crossings)
    {
        var g = new ChartGeometry(problem, metrics, spines, lanes, packing);
        var occupied = ImmutableArray.CreateBuilder<Box>();
        foreach (var b in spines[0].Packed)
        {
            occupied.Add(g.OnPaper(spines[0], b));
        }

        var bounds = occupied.Count > 0 ? occupied[0] : default;
        foreach (var b in occupied)
        {
            bounds = bounds.Union(b);
        }

        var paths = ImmutableArray.CreateBuilder<ImmutableArray<LanePoint>>(problem.Lanes.Length);
        for (var lane = 0; lane < problem.Lanes.Length; lane++)
        {
            paths.Add(g.PathOf(lane));
        }

        return new ChartPlan
        {
            Bounds = bounds,
            Lanes = paths.ToImmutable(),
            Cards = g.Cards(),
            Lengths = g.Marks(MarkKind.Length),
            Flags = g.Marks(MarkKind.Flag),
            Discs = g.Marks(MarkKind.Disc),
            Splices = g.Splices(),
            Cuts = g.Cuts(),
            Stretches = g.Stretches(),
            Nodes = g.Nodes(),
            Table = problem.Table is { } table ? new Point(packing.ChannelMm, packing.TableTopU) : null,
            Occupied = occupied.ToImmutable(),
            Crossings = crossings,
        };
    }

    private double U(int slot) => slot * metrics.PitchMm;

    private Box OnPaper(Spine spine, FrameBox b)
    {
        var (x0, y0) = spine.At(b.T0, b.U0);
        var (x1, y1) = spine.At(b.T1, b.U1);
        return Box.FromEdges(Math.Min(x0, x1), Math.Min(y0, y1), Math.Max(x0, x1), Math.Max(y0, y1));
    }

    private static LanePoint On(Spine spine, double t, double u, double radius)
    {
        var (x, y) = spine.At(t, u);
        return new(new(Math.Round(x, 3), Math.Round(y, 3)), radius);
    }

    private ImmutableArray<LanePoint> PathOf(int lane)
    {
        var path = lanes.PathOf[lane];
        var points = new List<LanePoint>();
        var firstSpine = path.ToFirst.Count > 0 ? path.ToFirst[^1] : (path.Meet, path.MeetRun);
        var lastSpine = path.ToLast.Count > 0 ? path.ToLast[^1] : (path.Meet, path.MeetRun);
        Finish(points, lane, path.FirstEnd, firstSpine.Item1, firstSpine.Item2, isStart: path.ToFirst.Count == 0);
        for (var i = path.ToFirst.Count - 1; i >= 0; i--)
        {
            var (child, run) = path.ToFirst[i];
            var above = i > 0 ? path.ToFirst[i - 1].Run : path.MeetRun;
            points.Add(Corner(child, run, above));
        }

        var back = new List<LanePoint>();
        Finish(back, lane, 1 - path.FirstEnd, lastSpine.Item1, lastSpine.Item2, isStart: false);
        for (var i = path.ToLast.Count - 1; i >= 0; i--)
        {
            var (child, run) = path.ToLast[i];
            var above = i > 0 ? path.ToLast[i - 1].Run : path.MeetRun;
            back.Add(Corner(child, run, above));
        }

        back.Reverse();
        points.AddRange(back);
        return [.. Clean(points)];
    }

    private static List<LanePoint> Clean(List<LanePoint> points)
    {
        var kept = new List<LanePoint>(points.Count);
        foreach (var p in points)
        {
            if (kept.Count == 0 || Math.Abs(kept[^1].At.X - p.At.X) + Math.Abs(kept[^1].At.Y - p.At.Y) > 1e-6)
            {
                kept.Add(p);
            }
        }

        return kept;
    }

    private LanePoint Corner(Spine child, LaneRun run, LaneRun above)
    {
        var item = child.ParentItem!;
        var t = item.IsLeft ? item.T + U(run.Slot) : item.T - U(run.Slot);
        return On(child.Parent!, t, U(above.Slot), run.CornerMm);
    }

    // the points at one end, from the end inwards, up to and including the corner on the run
    private void Finish(List<LanePoint> points, int lane, int end, Spine spine, LaneRun run, bool isStart)
    {
        var at = lanes.EndOf(lane, end);
        var u = U(run.Slot);
        if (at.Kind == ChartEndKind.Pin)
        {
            var row = packing.TableTopU + problem.Table!.RowsMm[at.Index];
            var t = packing.TableTracks[lane];
            var radius = Math.Min(0.8 * metrics.PitchMm, Math.Abs(row - u) / 2);
            points.Add(On(spine, -packing.ChannelMm - problem.Table.LabelMm, row, 0));
            points.Add(On(spine, t, row, radius));
            points.Add(On(spine, t, u, radius));
        }
        else if (at.Kind == ChartEndKind.Splice)
        {
            var t = spliceT[at.Index];
            points.Add(On(spine, t, Toward(at.Index, spine, run), 0));
            points.Add(On(spine, t, u, IsOutermost(at.Index, spine, run) ? metrics.TightCornerMm : 0));
        }
        else
        {
            FinishAtCard(points, lane, end, at.Index, spine, u, isStart);
        }
    }

    private void FinishAtCard(List<LanePoint> points, int lane, int end, int card, Spine spine, double u, bool turns)
    {
        if (spine.EndTracks.TryGetValue((lane, end), out var track))
        {
            var radius = Math.Min(0.8 * metrics.PitchMm, Math.Abs(track.U - u) / 2);
            points.Add(On(spine, spine.EndCardT, track.U, 0));
            points.Add(On(spine, track.T, track.U, radius));
            points.Add(On(spine, track.T, u, radius));
            return;
        }

        var item = cardItem[card].Item;
        var rows = lanes.CardRows[card];
        var k = rows.IndexOf((lane, end));
        var order = item.IsLeft ? k : rows.Count - 1 - k;
        var t = item.T + packing.FirstRow(spine, problem.Cards[card]) + (order * metrics.RowMm);
        points.Add(On(spine, t, item.EdgeU, 0));
        points.Add(On(spine, t, u, turns ? metrics.TightCornerMm : Comb(order)));
    }

    // lanes of a comb, counted from the one that leaves first
    private double Comb(int order) => Math.Min(metrics.WidestCombMm, metrics.TightCornerMm + (order * metrics.PitchMm));

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
                    feed = run.EndEvent == e && feed < 0 ? run.Slot : feed;
                    break;
                }
            }
        }

        return (slots, feed < 0 && slots.Count > 0 ? slots[0].Item1 : feed);
    }

    // the neighbour on the bar that is nearer the feed; the lane's own piece of the bar goes that far
    private double Toward(int splice, Spine spine, LaneRun run)
    {
        var (slots, feed) = Bar(splice, spine);
        var best = run.Slot;
        foreach (var (slot, other) in slots)
        {
            if (other == run)
            {
                continue;
            }

            if (run.Slot > feed && slot < run.Slot && (slot > best || best == run.Slot))
            {
                best = slot;
            }
            else if (run.Slot < feed && slot > run.Slot && (slot < best || best == run.Slot))
            {
                best = slot;
            }
        }

        return U(best);
    }

    private bool IsOutermost(int splice, Spine spine, LaneRun run)
    {
        var (slots, feed) = Bar(splice, spine);
        foreach (var (slot, other) in slots)
        {
            if (other != run && (run.Slot > feed ? slot >= run.Slot : slot <= run.Slot))
            {
                return false;
            }
        }

        return run.Slot != feed;
    }

    private ImmutableArray<PlacedSplice> Splices()
    {
        var placed = ImmutableArray.CreateBuilder<PlacedSplice>();
        foreach (var spine in spines)
        {
            foreach (var mark in spine.Marks)
            {
                if (mark.Kind != MarkKind.Splice)
                {
                    continue;
                }

                var (slots, feed) = Bar(mark.Index, spine);
                var dots = ImmutableArray.CreateBuilder<Point>();
                var seen = new HashSet<int>();
                dots.Add(On(spine, mark.At, U(Math.Max(0, feed)), 0).At);
                seen.Add(feed);
                foreach (var (slot, run) in slots)
                {
                    if (seen.Add(slot) && !IsOutermost(mark.Index, spine, run))
                    {
                        dots.Add(On(spine, mark.At, U(slot), 0).At);
                    }
                }

                placed.Add(new(mark.Index, dots.ToImmutable(), Placed(spine, mark)));
            }
        }

        return placed.ToImmutable();
    }

    private PlacedMark Placed(Spine spine, SpineMark mark)
    {
        var edge = mark.IsLeft ? mark.Box.U1 : mark.Box.U0;
        return new(mark.Index, OnPaper(spine, mark.Box), On(spine, mark.At, edge, 0).At, On(spine, mark.Box.T0, edge, 0).At);
    }

    private ImmutableArray<PlacedMark> Marks(MarkKind kind)
    {
        var placed = ImmutableArray.CreateBuilder<PlacedMark>();
        foreach (var spine in spines)
        {
            foreach (var mark in spine.Marks)
            {
                if (mark.Kind == kind)
                {
                    placed.Add(Placed(spine, mark));
                }
            }
        }

        return placed.ToImmutable();
    }

    private ImmutableArray<PlacedCut> Cuts()
    {
        var cuts = ImmutableArray.CreateBuilder<PlacedCut>();
        foreach (var spine in spines)
        {
            foreach (var mark in spine.Marks)
            {
                if (mark.Kind == MarkKind.Cut)
                {
                    cuts.Add(CutAt(spine, mark));
                }
            }
        }

        return cuts.ToImmutable();
    }

    private PlacedCut CutAt(Spine spine, SpineMark mark)
    {
        var station = spine.Stations.Find(s => s.Node == mark.Index)!;
        var e = station.FirstEvent + station.Splices.Count - 0.5;
        var met = new List<LaneRun>();
        foreach (var run in spine.Runs)
        {
            if (run.StartEvent < e && run.EndEvent > e)
            {
                met.Add(run);
            }
        }

        // from the top, or from the left
        if (spine.IsHorizontal ? spine.Ry < 0 : spine.Rx < 0)
        {
            met.Reverse();
        }

        var order = ImmutableArray.CreateBuilder<int>(met.Count);
        double low = double.MaxValue, high = double.MinValue;
        foreach (var run in met)
        {
            order.Add(run.Lane);
            (low, high) = (Math.Min(low, U(run.Slot)), Math.Max(high, U(run.Slot)));
        }

        return new(OnPaper(spine, mark.Box), On(spine, mark.At, low - 1.4, 0).At, On(spine, mark.At, mark.Box.U0, 0).At, order.ToImmutable(), spine.IsHorizontal);
    }

    private ImmutableArray<PlacedStretch> Stretches()
    {
        var placed = ImmutableArray.CreateBuilder<PlacedStretch>();
        foreach (var spine in spines)
        {
            foreach (var station in spine.Stations)
            {
                if (!station.HasEdge)
                {
                    continue;
                }

                double low = double.MaxValue, high = double.MinValue;
                foreach (var run in spine.Runs)
                {
                    if (run.StartEvent < station.FirstEvent && run.EndEvent >= station.FirstEvent)
                    {
                        (low, high) = (Math.Min(low, U(run.Slot)), Math.Max(high, U(run.Slot)));
                    }
                }

                if (low <= high)
                {
                    placed.Add(new(station.Node, OnPaper(spine, new(station.FromT, station.T, low, high))));
                }
            }
        }

        return placed.ToImmutable();
    }

    private ImmutableArray<Point?> Nodes()
    {
        var at = new Point?[problem.Nodes.Length];
        foreach (var spine in spines)
        {
            foreach (var station in spine.Stations)
            {
                if (station.Node >= 0 && (station.HasEdge || station.Node == 0))
                {
                    at[station.Node] = On(spine, station.T, U(Math.Max(0, spine.SlotCount - 1)) / 2, 0).At;
                }
            }
        }

        return [.. at];
    }

    private ImmutableArray<PlacedCard> Cards()
    {
        var placed = ImmutableArray.CreateBuilder<PlacedCard>(problem.Cards.Length);
        for (var c = 0; c < problem.Cards.Length; c++)
        {
            if (cardItem[c].Item is { } item)
            {
                placed.Add(BesideSpine(c, cardItem[c].Spine, item));
            }
        }

        foreach (var spine in spines)
        {
            for (var i = 0; i < spine.EndCards.Count; i++)
            {
                placed.Add(AtEnd(spine, i));
            }
        }

        return placed.ToImmutable();
    }

    private PlacedCard BesideSpine(int c, Spine spine, SpineItem item)
    {
        var card = problem.Cards[c];
        var rows = lanes.CardRows[c];
        var isDown = spine.Dy > 0;
        var height = card.HeadMm + metrics.FootMm + (metrics.RowMm * (rows.Count + card.Stubs));
        var box = OnPaper(spine, item.IsLeft ? new(item.T, item.T + height, item.EdgeU - card.WidthMm, item.EdgeU) : new(item.T, item.T + height, item.EdgeU, item.EdgeU + card.WidthMm));
        var onLeft = item.IsLeft ? spine.Rx < 0 : spine.Rx > 0;
        var list = ImmutableArray.CreateBuilder<(int, int, double)>(rows.Count);
        for (var order = 0; order < rows.Count; order++)
        {
            var row = rows[item.IsLeft ? order : rows.Count - 1 - order];
            var (_, y) = spine.At(item.T + packing.FirstRow(spine, card) + (order * metrics.RowMm), 0);
            list.Add((row.Lane, row.End, Math.Round(y, 3)));
        }

        if (!isDown)
        {
            list.Reverse();
        }

        var first = isDown ? box.Y + card.HeadMm + (metrics.RowMm * (rows.Count + 0.5)) : box.Y + card.HeadMm + (metrics.RowMm / 2);
        return new(c, box, onLeft, list.ToImmutable(), first)
        {
            LeadNode = item.LeadNode,
            LeadY = isDown ? box.Y + (card.HeadMm / 2) : box.Y + (card.HeadMm / 2),
        };
    }

    private PlacedCard AtEnd(Spine spine, int i)
    {
        var c = spine.EndCards[i];
        var card = problem.Cards[c];
        var rows = lanes.CardRows[c];
        var height = card.HeadMm + metrics.FootMm + (metrics.RowMm * (rows.Count + card.Stubs));
        var box = OnPaper(spine, new(spine.EndCardT, spine.EndCardT + card.WidthMm, spine.EndCardU[i], spine.EndCardU[i] + height));
        var list = ImmutableArray.CreateBuilder<(int, int, double)>(rows.Count);
        foreach (var (lane, end) in rows)
        {
            var (_, y) = spine.At(0, spine.EndTracks[(lane, end)].U);
            list.Add((lane, end, Math.Round(y, 3)));
        }

        if (spine.Ry < 0)
        {
            list.Reverse();
        }

        return new(c, box, spine.Dx > 0, list.ToImmutable(), box.Y + card.HeadMm + (metrics.RowMm * (rows.Count + 0.5)));
    }
}
