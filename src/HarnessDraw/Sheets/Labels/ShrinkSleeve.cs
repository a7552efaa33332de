using System.Collections.Immutable;

namespace HarnessDraw.Sheets.Labels;

/// <summary>
/// Heat-shrink sleeve that halves: bore before and after, mm. Sizes sold by the fraction of an inch (common practice, no source). It must slip on over the insulation
/// (1.2 times its diameter) and grip it when shrunk (0.8 times).
/// </summary>
internal sealed record ShrinkSleeve(double BeforeMm)
{
    private static readonly ImmutableArray<double> Sizes = [1.6, 2.4, 3.2, 4.8, 6.4, 9.5, 12.7, 19, 25.4, 38];

    public double AfterMm => BeforeMm / 2;

    /// <summary>Width when it lies flat, mm: what a label printer must hold.</summary>
    public double FlatMm => BeforeMm * Math.PI / 2;

    /// <summary>The smallest that slips on and grips; null where none does both.</summary>
    public static ShrinkSleeve? For(double outsideMm) =>
        Sizes.Where(s => s >= (1.2 * outsideMm) - 1e-9 && s / 2 <= (0.8 * outsideMm) + 1e-9).Select(s => new ShrinkSleeve(s)).FirstOrDefault();
}
