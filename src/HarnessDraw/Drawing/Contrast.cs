namespace HarnessDraw.Drawing;

/// <summary>Contrast of two colours as WCAG 2 defines it: 1 (none) to 21 (black on white).</summary>
public static class Contrast
{
    public static double Ratio(Rgb a, Rgb b)
    {
        var (x, y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    /// <summary>Relative luminance, 0 to 1.</summary>
    public static double Luminance(Rgb c) => (0.2126 * Linear(c.R)) + (0.7152 * Linear(c.G)) + (0.0722 * Linear(c.B));

    // WCAG 2 keeps the threshold 0.03928 of an early sRGB draft; no 8-bit value lies between it and 0.04045
    internal static double Linear(byte channel)
    {
        var c = channel / 255.0;
        return c <= 0.03928 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
