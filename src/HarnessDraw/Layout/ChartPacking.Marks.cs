namespace HarnessDraw.Layout;

// lengths, splices, cuts, flags and discs beside a spine
internal sealed partial class ChartPacking
{
    private double PlaceStation(Spine spine, Station station, double prevEnd, double trueDistance)
    {
        var node = problem.Nodes[station.Node];
        station.FromT = prevEnd;
        var e = station.FirstEvent;
        var t = prevEnd + 1;
        if (spine.Parent is not null && node.Disc && station.HasEdge && (station == spine.Stations[0] || (station == spine.Stations[1] && !spine.Stations[0].HasEdge)))
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

        t = IsScaled ? PlaceScaled(spine, station, node, prevEnd, t) : PlaceLength(spine, station, node, prevEnd, Math.Max(t, trueDistance) + station.HoldMm);
        if (node.FlagWidthMm > 0 && (station.HasEdge || spine.Parent is null || IsFirstOf(spine, station)))
        {
            t = PlaceFlag(spine, station, node, t);
        }

        station.T = t;
        return t;
    }

    private double PlaceLength(Spine spine, Station station, ChartNode node, double from, double t)
    {
        if (!station.HasEdge || node.CaptionMm <= 0)
        {
            return t;
        }

        var box = Beside(spine, station.FirstEvent, true, from + 1, LeastDimensionMm(spine, node), DimensionDepthMm(spine, node), 2.2);
        // as long as the stretch, but not into what stands beside it further on
        var end = Math.Max(t, box.T1);
        foreach (var b in left.Boxes)
        {
            end = b.T0 >= box.T1 && b.U0 < box.U1 + 1 && box.U0 - 1 < b.U1 ? Math.Max(box.T1, Math.Min(end, b.T0 - 1)) : end;
        }

        box = box with { T1 = end };
        spine.Marks.Add(new(MarkKind.Length, station.Node, box, true, end));
        left.Add(box);
        return Math.Max(t, end + 0.8);
    }

    private static double LeastDimensionMm(Spine spine, ChartNode node) => spine.IsHorizontal ? node.CaptionMm + 9 : 11;

    private double DimensionDepthMm(Spine spine, ChartNode node) => spine.IsHorizontal ? metrics.DimensionMm : node.CaptionMm + 3.5;

    private static bool IsFirstOf(Spine spine, Station station) =>
        station == spine.Stations[0] && !station.HasEdge;

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
            for (var i = list.Count - 1; i >= 0 && list.FarthestUpTo(i) - 1e-6 > t - 1; i--)
            {
                var b = list.Boxes[i];
                if (b.U0 < u1 + 1 && u0 - 1 < b.U1 && b.T0 < t + length + 1 - 1e-6 && t - 1 < b.T1 - 1e-6)
                {
                    t = b.T1 + 1;
                    again = true;
                }
            }
        }

        return new(t, t + length, u0, u1);
    }
}
