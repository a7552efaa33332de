using HarnessDraw.Planning.Routing;

namespace HarnessDraw.Planning.Splicing;

/// <summary>
/// The points where a splice may sit: clear of breakouts and connectors, in no moving, hot or unmeasured segment, and clear of the
/// splices placed before.
/// </summary>
internal sealed class SplicePlaces
{
    private readonly RoutedTree tree;
    private readonly double clearMm;
    private readonly List<TreePoint>[] bySegment;
    private readonly List<TreePoint> taken = [];
    private readonly double[] apartMm;

    public SplicePlaces(HarnessIndex index, PlanningOptions options, RoutedTree tree)
    {
        this.tree = tree;
        clearMm = options.SpliceClearMm;
        bySegment = new List<TreePoint>[tree.Segments.Count];
        apartMm = [.. tree.Segments.Select(s => index.IsWet(s.Zone) ? options.SealedSpliceClearMm : clearMm)];
        foreach (var s in tree.Segments)
        {
            bySegment[s.Number] = [];
            var allowed = s.MovesMm <= 0 && !s.IsUnknown && index.AmbientC(s.Zone, options) < options.SpliceMaxC;
            if (allowed && s.LengthMm >= 2 * clearMm)
            {
                for (var at = clearMm; at < s.LengthMm - clearMm; at += clearMm)
                {
                    bySegment[s.Number].Add(new(s.Number, at));
                }

                bySegment[s.Number].Add(new(s.Number, s.LengthMm - clearMm));
            }
        }
    }

    /// <summary>Cheapest free point; looks in <paramref name="segments"/> first and everywhere else only when none of them has one.</summary>
    public (TreePoint Point, double Cost, bool Allowed) Cheapest(IReadOnlyCollection<int> segments, Func<TreePoint, double> costOf)
    {
        if (Search(segments.Order(), costOf) is { } near)
        {
            return (near.Point, near.Cost, true);
        }

        if (Search(tree.Segments.Select(s => s.Number), costOf) is { } anywhere)
        {
            return (anywhere.Point, anywhere.Cost, true);
        }

        var longest = tree.Segments.OrderByDescending(s => s.LengthMm).ThenBy(s => s.Number).FirstOrDefault();
        var point = longest is null ? new TreePoint(-1, 0) : new(longest.Number, Math.Round(longest.LengthMm / 2));
        return (point, costOf(point), false);
    }

    public void Take(TreePoint point) => taken.Add(point);

    private (TreePoint Point, double Cost)? Search(IEnumerable<int> segments, Func<TreePoint, double> costOf)
    {
        (TreePoint Point, double Cost)? best = null;
        foreach (var s in segments)
        {
            foreach (var p in bySegment[s])
            {
                if (taken.Exists(t => t.Segment == s && Math.Abs(t.AtMm - p.AtMm) < apartMm[s] - 1e-9))
                {
                    continue;
                }

                var cost = costOf(p);
                if (best is null || cost < best.Value.Cost - 1e-6)
                {
                    best = (p, cost);
                }
            }
        }

        return best;
    }
}
