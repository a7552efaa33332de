using System.Collections.Immutable;

namespace HarnessDraw.Fabrication;

/// <summary>
/// A printable heat-shrink sleeve, 2 to 1, by its nominal bore in mm. It goes on when the bore is at least 1.1 times the wire and grips when it shrinks to at
/// most 0.8 of the wire (common practice, no source).
/// </summary>
public sealed record LabelSleeve(double BoreMm)
{
    public static readonly ImmutableArray<double> BoresMm = [1.6, 2.4, 3.2, 4.8, 6.4, 9.5, 12.7, 19.1, 25.4, 38.1];

    private const double SlipFactor = 1.1;
    private const double GripFactor = 0.8;
    private const double ShrinkRatio = 2;

    public double ShrunkMm => BoreMm / ShrinkRatio;

    /// <summary>Width of the sleeve lying flat, mm: half its circumference.</summary>
    public double FlatMm => Math.Round(Math.PI * BoreMm / 2, 1);

    /// <summary>The smallest sleeve that slips over a wire and grips it; null when none does.</summary>
    public static LabelSleeve? For(double outsideMm)
    {
        var bore = BoresMm.FirstOrDefault(b => b >= SlipFactor * outsideMm);
        return outsideMm > 0 && bore > 0 && bore / ShrinkRatio <= GripFactor * outsideMm ? new(bore) : null;
    }
}
