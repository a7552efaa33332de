using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>How much nearer than neighbours should be each two colours of a chart are to the eye that sees least between them; 0: far enough.</summary>
internal static class ColourLikeness
{
    public static ImmutableArray<ImmutableArray<int>> Of(ImmutableArray<WireColour> colours) =>
        [.. colours.Select(a => colours.Select(b => (int)Math.Ceiling(Math.Max(0, ColourVision.NeighbourDistance - ColourVision.LeastDistance(a, b)))).ToImmutableArray())];
}
