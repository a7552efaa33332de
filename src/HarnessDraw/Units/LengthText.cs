namespace HarnessDraw.Units;

/// <summary>Lengths in words: millimetres, and inches with fractions for the inch view. The exact value is converted once.</summary>
public static class LengthText
{
    public const double MmPerInch = 25.4;
    private const double RoundingSlackMm = 1e-6;

    /// <summary>'1235 mm'.</summary>
    public static string Millimetres(double lengthMm, int decimals = 0) => NumberText.Fixed(lengthMm, decimals) + " mm";

    /// <summary>'48 1/4 in', to the nearest fraction with the given denominator (a power of two).</summary>
    public static string Inches(double lengthMm, int denominator = 16) => Fraction(Math.Round(lengthMm / MmPerInch * denominator, MidpointRounding.AwayFromZero), denominator);

    /// <summary>As <see cref="Inches"/>, never shorter than the exact value: for cut lengths.</summary>
    public static string InchesUp(double lengthMm, int denominator = 4) => Fraction(Math.Ceiling((lengthMm - RoundingSlackMm) / MmPerInch * denominator), denominator);

    /// <summary>The next multiple of <paramref name="stepMm"/> that is not shorter.</summary>
    public static double RoundUpMm(double lengthMm, double stepMm) => Math.Ceiling((lengthMm - RoundingSlackMm) / stepMm) * stepMm;

    private static string Fraction(double parts, int denominator)
    {
        if (!double.IsFinite(parts) || Math.Abs(parts) > 1e12)
        {
            return "-";
        }

        var whole = (long)parts / denominator;
        var rest = (long)Math.Abs(parts) % denominator;
        if (rest == 0)
        {
            return $"{whole} in";
        }

        while (rest % 2 == 0 && denominator % 2 == 0)
        {
            rest /= 2;
            denominator /= 2;
        }

        var sign = parts < 0 && whole == 0 ? "-" : "";
        return whole == 0 ? $"{sign}{rest}/{denominator} in" : $"{whole} {rest}/{denominator} in";
    }
}
