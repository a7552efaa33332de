using HarnessDraw.Planning.Routing;

namespace HarnessDraw.Planning.Splicing;

/// <summary>A splice to be: where, which members join it directly, and the junctions linked to it by one wire.</summary>
internal sealed record Junction(TreePoint Point, List<int> Members, List<Junction> Links, bool Allowed)
{
    /// <summary>The id of a splice that is built; null: it gets one.</summary>
    public string? Id { get; init; }
}

/// <summary>One thing to be joined: a member of the net, or (member -1) the link to the other half of a divided net.</summary>
internal readonly record struct Joint(int Member, int Place, double AreaMm2);

/// <summary>
/// Joins the members of one net with least copper. One splice goes to the cheapest allowed point (a weighted median of the tree); two,
/// one on either side of a segment, are taken when the copper saved pays for the second, or when one would hold too many wires.
/// </summary>
internal sealed class JunctionFinder(RoutedTree tree, SplicePlaces places, PlanningOptions options)
{
    private const int MostWires = 4;

    public Junction Join(IReadOnlyList<Joint> joints, Func<IReadOnlyList<Joint>, double> linkArea) => Find(joints, linkArea, 3).Junction;

    private (double Cost, Junction Junction) Find(IReadOnlyList<Joint> joints, Func<IReadOnlyList<Joint>, double> linkArea, int splits)
    {
        var ways = Ways(joints);
        var (point, cost, allowed) = places.Cheapest(ways, p => CopperOf(joints, p));
        (double Cost, Junction Junction) best = (cost + options.SplicePriceMm3, new(point, [.. joints.Where(j => j.Member >= 0).Select(j => j.Member)], [], allowed));
        var crowded = joints.Count > MostWires;
        if (splits == 0 || joints.Count < 4)
        {
            return best;
        }

        (double Cost, Junction Junction)? divided = null;
        foreach (var s in ways.Order())
        {
            var far = joints.Where(j => tree.PointOf(j.Place) is var p && (p.Segment == s || tree.IsBelow(s, p))).ToList();
            var near = joints.Except(far).ToList();
            if (far.Count < 2 || near.Count < 2)
            {
                continue;
            }

            var link = linkArea(far);
            var nearSide = Find([.. near, new(-1, tree.Segments[s].From, link)], linkArea, crowded ? splits - 1 : 0);
            var farSide = Find([.. far, new(-1, tree.Segments[s].To, link)], linkArea, crowded ? splits - 1 : 0);
            var total = nearSide.Cost + farSide.Cost + (link * tree.Segments[s].LengthMm);
            if ((divided is null || total < divided.Value.Cost - 1e-6) && nearSide.Junction.Point != farSide.Junction.Point)
            {
                divided = (total, nearSide.Junction with { Links = [.. nearSide.Junction.Links, farSide.Junction] });
            }
        }

        return divided is { } d && (crowded || d.Cost < best.Cost - 1e-6) ? d : best;
    }

    private double CopperOf(IReadOnlyList<Joint> joints, TreePoint p)
    {
        var copper = 0.0;
        foreach (var j in joints)
        {
            copper += j.AreaMm2 * tree.FromPlaceMm(p, j.Place);
        }

        return copper;
    }

    /// <summary>Segments between the members; with all of them at one place, the segments that touch it.</summary>
    private HashSet<int> Ways(IReadOnlyList<Joint> joints)
    {
        var first = tree.PointOf(joints[0].Place);
        var ways = joints.Skip(1).SelectMany(j => tree.Way(first, tree.PointOf(j.Place))).ToHashSet();
        if (ways.Count == 0)
        {
            ways = [.. tree.Segments.Where(s => s.From == joints[0].Place || s.To == joints[0].Place).Select(s => s.Number)];
        }

        return ways;
    }
}
