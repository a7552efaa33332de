using System.Globalization;
using HarnessDraw.Fabrication;

namespace HarnessDraw.Sheets;

/// <summary>Sums of lengths in the units a sheet shows: the design unit first, the other from the exact sum. One foot is 304.8 mm (exact, agreement of 1959).</summary>
public static class LengthWords
{
    private const double MmPerFoot = 304.8;

    /// <summary>'12.34 m', '12.34 m (40.5 ft)' or '40.5 ft', and how many lengths are unknown.</summary>
    public static string Sum(double sumMm, int unknown, UnitsShown units)
    {
        var metres = $"{(sumMm / 1000).ToString("0.00", CultureInfo.InvariantCulture)} m";
        var feet = $"{(Math.Ceiling((sumMm / MmPerFoot * 10) - 1e-6) / 10).ToString("0.0", CultureInfo.InvariantCulture)} ft";
        var words = units switch { UnitsShown.Inch => feet, UnitsShown.Both => $"{metres} ({feet})", _ => metres };
        return unknown == 0 ? words : $"{words} and {unknown.ToString(CultureInfo.InvariantCulture)} unknown";
    }

    /// <summary>A short length to be measured: '9.5 mm', '9.5 mm (0.37 in)' or '0.37 in'.</summary>
    public static string Small(double lengthMm, UnitsShown units)
    {
        var metric = $"{lengthMm.ToString("0.#", CultureInfo.InvariantCulture)} mm";
        var inches = $"{InchLength.Words(lengthMm, 2)} in";
        return units switch { UnitsShown.Inch => inches, UnitsShown.Both => $"{metric} ({inches})", _ => metric };
    }
}
