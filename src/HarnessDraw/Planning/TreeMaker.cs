using HarnessDraw.Planning.Routing;

namespace HarnessDraw.Planning;

/// <summary>The routed tree as the plan's record.</summary>
internal static class TreeMaker
{
    /// <summary>Places and lengths only, no wires yet.</summary>
    public static HarnessTree Skeleton(RoutedTree tree) => new(tree.PlaceId(tree.Root),
    [
        .. tree.Segments.Select(s => new Segment
        {
            Id = s.Id, From = tree.PlaceId(s.From), To = tree.PlaceId(s.To), LengthMm = s.IsUnknown ? null : s.LengthMm, Estimated = s.IsEstimated, Wires = [],
            Zone = s.Zone, Assumed = s.Run.Path is null,
        }),
    ]);
}
