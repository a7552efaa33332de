namespace HarnessDraw.Layout;

// true distances, as far as the paper has room for them
internal sealed partial class ChartPacking
{
    /// <summary>Furthest that a card is moved out for its true place, mm: about its own width, or its wires would leave the bundle's neighbourhood (common practice, no source).</summary>
    private const double MostOutMm = 40;

    // how far the place where a rib leaves truly lies from the line that its parent is drawn as, in the direction of the rib: the rib gives it back
    private double Offset(Spine spine)
    {
        if (spine.Parent is not { } parent || spine.Stations.Count == 0)
        {
            return 0;
        }

        var first = spine.Stations[0];
        var beyond = parent.Across(problem.Nodes[first.HasEdge ? problem.Nodes[first.Node].Parent : first.Node]) - parent.LineAcross;
        return (spine.ParentItem!.IsLeft ? -beyond : beyond) * (spine.IsHorizontal ? stance.StretchX : stance.StretchY);
    }

    // how far out a card stands beyond the innermost of its side, as its place truly lies further out: places of one bundle that sway beside it are told apart
    private double OutMm(Spine spine, SpineItem item)
    {
        if (stance.StretchX == 0)
        {
            return 0;
        }

        var innermost = item.IsLeft ? double.NegativeInfinity : double.PositiveInfinity;
        foreach (var station in spine.Stations)
        {
            foreach (var other in item.IsLeft ? station.Left : station.Right)
            {
                if (other.Card >= 0)
                {
                    var across = spine.Across(problem.Nodes[problem.Cards[other.Card].Node]);
                    innermost = item.IsLeft ? Math.Max(innermost, across) : Math.Min(innermost, across);
                }
            }
        }

        return Math.Min(MostOutMm, Math.Abs(spine.Across(problem.Nodes[problem.Cards[item.Card].Node]) - innermost) * stance.StretchX);
    }

    private double Distance(Spine spine, Station station)
    {
        if (!station.HasEdge)
        {
            return 0;
        }

        var to = problem.Nodes[station.Node];
        var from = problem.Nodes[to.Parent];
        return ((to.X - from.X) * spine.Dx * stance.StretchX) + ((to.Y - from.Y) * spine.Dy * stance.StretchY);
    }
}

/// <summary>
/// What one packing holds to: the share of the pin table above the middle of the trunk (half, or more where the paper's lower corner is needed), the room that stays
/// free below the table, and the least scales of the true distances, mm on paper a mm of vehicle.
/// </summary>
public readonly record struct ChartStance(double TableShare, double CornerWidthMm = 0, double CornerHeightMm = 0, double StretchX = 0, double StretchY = 0)
{
    /// <summary>The one scale of measured lengths, mm on paper a mm of bundle; 0: lengths are as what is printed beside them needs.</summary>
    public double Scale { get; init; }

    /// <summary>Lengths above this, mm of bundle, are not drawn to that scale but as short as they can be.</summary>
    public double ScaledUpToMm { get; init; }

    /// <summary>The table about the middle of the trunk, nothing kept free, nothing stretched.</summary>
    public static ChartStance Plain { get; } = new(0.5);
}
