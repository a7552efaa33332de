using System.Globalization;

namespace HarnessDraw.Fabrication;

/// <summary>Lengths for a tape in inches. One inch is 25.4 mm (exact, international yard and pound agreement of 1959).</summary>
public static class InchLength
{
    private const double MmPerInch = 25.4;

    // keeps 1333.5 mm at 52.5 in although the division is not exact
    private const double SmallestStepIn = 1e-6;

    /// <summary>Inches rounded up to 1/4 up to 36 in, to 1/2 above (common practice, no source).</summary>
    public static double RoundedUp(double lengthMm)
    {
        var exactIn = lengthMm / MmPerInch;
        var quartersIn = Math.Ceiling((exactIn - SmallestStepIn) * 4) / 4;
        return quartersIn <= 36 ? quartersIn : Math.Ceiling((exactIn - SmallestStepIn) * 2) / 2;
    }

    /// <summary>A length in inches to so many decimals, from the exact millimetres; a dash for an unknown one.</summary>
    public static string Words(double? lengthMm, int decimals) =>
        lengthMm is { } mm ? Math.Round(mm / MmPerInch, decimals, MidpointRounding.AwayFromZero).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) : "–";
}
