using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>How much nearer than neighbours should be each two colours of a chart are to the eye that sees least between them; 0: far enough.</summary>
internal sealed class ColourLikeness
{
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);

    public ColourLikeness(IEnumerable<string> codes)
    {
        var colours = ImmutableArray.CreateBuilder<WireColour>();
        foreach (var code in codes)
        {
            if (numbers.TryAdd(code, numbers.Count))
            {
                colours.Add(WireColour.Parse(code));
            }
        }

        ByNumber = [.. colours.Select(a => colours.Select(b => Of(a, b)).ToImmutableArray())];
    }

    public ImmutableArray<ImmutableArray<int>> ByNumber { get; }

    public int NumberOf(string code) => numbers[code];

    private static int Of(WireColour a, WireColour b) => (int)Math.Ceiling(Math.Max(0, ColourVision.NeighbourDistance - ColourVision.LeastDistance(a, b)));
}
