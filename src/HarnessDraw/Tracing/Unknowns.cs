using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>Figures on a way that nobody has given or measured, in words.</summary>
internal static class Unknowns
{
    public static IEnumerable<string> Of(Plan plan, IEnumerable<TraceWay> ways)
    {
        foreach (var way in ways)
        {
            foreach (var hop in way.Hops.Where(h => h.Wire is not null))
            {
                if (hop.CutLengthMm is null)
                {
                    yield return $"the length of wire {hop.Wire} is unknown";
                }
                else if (hop.Estimated)
                {
                    yield return $"the length of wire {hop.Wire} is estimated (E): measure it on the vehicle";
                }
            }

            foreach (var fuse in plan.Fuses.Where(f => f.RatingA is null && way.Stops.Any(s => s.Node == CurrentGraph.Node(f.Id, "out"))))
            {
                yield return $"the rating of fuse {fuse.Id} is not known";
            }

            var silent = way.Stops.Where(s => s.OnV is null && s.Node != CurrentGraph.Body).Select(s => PointWords.OfNode(s.Node)).ToList();
            if (silent.Count > 0)
            {
                yield return $"volts are not known at {string.Join(", ", silent)}";
            }
        }
    }
}
