namespace HarnessDraw.Layout;

// measured lengths at one scale: the dimension line between two places is as long as the scale asks, the places themselves are as wide as what leaves there
internal sealed partial class ChartPacking
{
    /// <summary>What of a bundle may lie beyond the ends of its dimension line, mm: the corner of what leaves and a gap.</summary>
    private const double BeyondMm = 4;

    private bool IsScaled => stance.Scale > 0;

    /// <summary>Of the lengths that are known and drawn, how many are to scale, and all.</summary>
    public static (int Kept, int All) LengthsToScale(ChartProblem problem, List<Spine> spines)
    {
        var (kept, all) = (0, 0);
        foreach (var station in spines.SelectMany(s => s.Stations))
        {
            if (station.HasEdge && problem.Nodes[station.Node].LengthMm > 0)
            {
                kept += station.IsToScale ? 1 : 0;
                all++;
            }

            foreach (var item in station.Left.Concat(station.Right))
            {
                if (item.LeadNode >= 0 && problem.Nodes[item.LeadNode].LengthMm > 0)
                {
                    kept += item.LeadMm > 0 ? 1 : 0;
                    all++;
                }
            }
        }

        return (kept, all);
    }

    // the dimension line of the edge above a place, on the side where it begins first
    private double PlaceScaled(Spine spine, Station station, ChartNode node, double from, double t)
    {
        (station.BeyondMm, station.IsToScale) = (0, false);
        // the line tells all of a stem that is lengthened for the cards
        var begin = from - (station == spine.Stations.Find(s => s.HasEdge) ? spine.LiftMm : 0);
        var wanted = station.HasEdge && node.CaptionMm > 0 ? ScaledMm(node) : 0;
        if (wanted < Math.Max(LeastDimensionMm(spine, node), t - begin - 1))
        {
            return PlaceLength(spine, station, node, from, t);
        }

        var depth = DimensionDepthMm(spine, node);
        var (onLeft, onRight) = (Beside(spine, station.FirstEvent, true, begin + 1, wanted, depth, 2.2), Beside(spine, station.FirstEvent, false, begin + 1, wanted, depth, 2.2));
        var isLeft = onLeft.T0 <= onRight.T0 + 1e-6;
        var box = isLeft ? onLeft : onRight;
        spine.Marks.Add(new(MarkKind.Length, station.Node, box, isLeft, box.T1));
        (isLeft ? left : right).Add(box);
        (station.BeyondMm, station.IsToScale) = (box.T0 - begin - 1, true);
        return box.T1 + 0.8;
    }

    // 0: it is drawn as short as what stands beside it allows
    private double ScaledMm(ChartNode node) => node.LengthMm > stance.ScaledUpToMm ? 0 : node.LengthMm * stance.Scale;

    // how far the first thing that leaves a place was pushed away from it
    private void Measure(Spine spine, Station station)
    {
        if (!station.IsToScale)
        {
            return;
        }

        var first = double.PositiveInfinity;
        foreach (var items in (List<SpineItem>[])[station.Left, station.Right])
        {
            if (items.Count > 0)
            {
                first = Math.Min(first, Least(spine, items[0]));
            }
        }

        station.BeyondMm += double.IsPositiveInfinity(first) ? 0 : Math.Max(0, first - station.T);
        station.IsToScale = station.BeyondMm <= BeyondMm;
    }

    // where on its spine a thing begins to leave
    private double Least(Spine spine, SpineItem item) => item.Child is { } child
        ? item.T - metrics.CornerMm - 0.6 - (item.IsLeft ? 0 : child.U(Math.Max(0, child.SlotCount - 1)))
        : item.T - Math.Max(0, 2.2 - FirstRow(spine, problem.Cards[item.Card]));

    // the near edge of a card at the end of its own path, moved out to the scale where that is further out
    private double ScaledLead(SpineItem item, double inner, double edge)
    {
        item.LeadMm = 0;
        var wanted = item.LeadNode >= 0 ? ScaledMm(problem.Nodes[item.LeadNode]) : 0;
        var scaled = item.IsLeft ? inner - wanted : inner + wanted;
        if (wanted <= 0 || (item.IsLeft ? scaled > edge : scaled < edge))
        {
            return edge;
        }

        item.LeadMm = wanted;
        return scaled;
    }
}
