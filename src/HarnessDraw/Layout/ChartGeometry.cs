using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Layout;

/// <summary>Reads places off the packed spines: lanes as rounded right-angled lines, cards, marks and bundles on paper.</summary>
internal sealed partial class ChartGeometry
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
            spine.TakeOrigin();
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

    public static ChartPlan Read(ChartProblem problem, ChartMetrics metrics, List<Spine> spines, ChartLanes lanes, ChartPacking packing, Lazy<LaneCrossings> crossings)
    {
        var g = new ChartGeometry(problem, metrics, spines, lanes, packing);
        var room = ChartRoom.Of(spines[0]);
        var paths = ImmutableArray.CreateBuilder<ImmutableArray<LanePoint>>(problem.Lanes.Length);
        for (var lane = 0; lane < problem.Lanes.Length; lane++)
        {
            paths.Add(g.PathOf(lane));
        }

        return new ChartPlan
        {
            Bounds = room.Bounds,
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
            Occupied = room.Occupied,
            Counted = crossings,
        };
    }

    /// <summary>The same of a chart that is only tried, with what the panels speak of.</summary>
    public static ChartOutline Outline(ChartProblem problem, ChartMetrics metrics, List<Spine> spines, ChartLanes lanes, ChartPacking packing)
    {
        var g = new ChartGeometry(problem, metrics, spines, lanes, packing);
        return new(ChartRoom.Of(spines[0]), g.Cuts())
        {
            HasLengths = spines.Exists(s => s.Marks.Exists(m => m.Kind == MarkKind.Length)),
            HasBands = spines.Exists(s => s.IsBand) && g.Stretches().Any(s => s.BandLanes > 0),
        };
    }

    private static LanePoint On(Spine spine, double t, double u, double radius)
    {
        var (x, y) = spine.At(t, u);
        return new(new(Math.Round(x, 3), Math.Round(y, 3)), radius);
    }

    // lanes of a comb, counted from the one that leaves first
    private double Comb(Spine spine, int order) => Math.Min(metrics.WidestCombMm, metrics.TightCornerMm + spine.U(order));

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
                dots.Add(On(spine, mark.At, spine.U(Math.Max(0, feed)), 0).At);
                seen.Add(feed);
                foreach (var (slot, run) in slots)
                {
                    if (seen.Add(slot) && !IsOutermost(mark.Index, spine, run))
                    {
                        dots.Add(On(spine, mark.At, spine.U(slot), 0).At);
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
        return new(mark.Index, spine.OnPaper(mark.Box), On(spine, mark.At, edge, 0).At, On(spine, mark.Box.T0, edge, 0).At);
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
                    placed.Add(Placed(spine, mark) with { IsToScale = kind == MarkKind.Length && spine.Stations.Exists(s => s.Node == mark.Index && s.IsToScale) });
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
            (low, high) = (Math.Min(low, spine.U(run.Slot)), Math.Max(high, spine.U(run.Slot)));
        }

        return new(spine.OnPaper(mark.Box), On(spine, mark.At, low - 1.4, 0).At, On(spine, mark.At, mark.Box.U0, 0).At, order.ToImmutable(), spine.IsHorizontal);
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

                // lanes with empty slots between them are bundles of their own to the eye
                var (low, high, count) = (double.NaN, double.NaN, 0);
                foreach (var run in spine.Runs)
                {
                    if (run.StartEvent >= station.FirstEvent || run.EndEvent < station.FirstEvent)
                    {
                        continue;
                    }

                    if (spine.U(run.Slot) > high + (2.5 * metrics.PitchMm))
                    {
                        Add();
                        (low, count) = (double.NaN, 0);
                    }

                    (low, high, count) = (double.IsNaN(low) ? spine.U(run.Slot) : low, spine.U(run.Slot), count + 1);
                }

                if (!double.IsNaN(low))
                {
                    Add();
                }

                void Add() => placed.Add(new(station.Node, spine.OnPaper(new(station.FromT, station.T, low, high))) { BandLanes = spine.IsBand ? count : 0, IsHorizontal = spine.IsHorizontal });
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
                    at[station.Node] = On(spine, station.T, spine.U(Math.Max(0, spine.SlotCount - 1)) / 2, 0).At;
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
        var height = metrics.HeightMm(card, rows.Count);
        var box = spine.OnPaper(item.IsLeft ? new(item.T, item.T + height, item.EdgeU - card.WidthMm, item.EdgeU) : new(item.T, item.T + height, item.EdgeU, item.EdgeU + card.WidthMm));
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
            LeadMm = item.LeadMm,
            LeadY = isDown ? box.Y + (card.HeadMm / 2) : box.Y + (card.HeadMm / 2),
        };
    }

    private PlacedCard AtEnd(Spine spine, int i)
    {
        var c = spine.EndCards[i];
        var card = problem.Cards[c];
        var rows = lanes.CardRows[c];
        var height = metrics.HeightMm(card, rows.Count);
        var box = spine.OnPaper(new(spine.EndCardT, spine.EndCardT + card.WidthMm, spine.EndCardU[i], spine.EndCardU[i] + height));
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
