using System.Globalization;
using HarnessDraw.Fabrication;
using HarnessDraw.Model;
using HarnessDraw.Planning;

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

    /// <summary>A length along the harness: '880 mm', '880 mm (34.6 in)' or '34.6 in'.</summary>
    public static string Of(double lengthMm, UnitsShown units) => Both($"{Pages.Shown.Number(lengthMm)}\u00a0mm", $"{InchLength.Words(lengthMm, 1)}\u00a0in", units);

    /// <summary>A length against its limit, short: '645 of max 1000 mm' or '25.4 of max 39.4 in'.</summary>
    public static string OfMost(double lengthMm, double mostMm, UnitsShown units) => units == UnitsShown.Inch
        ? $"{InchLength.Words(lengthMm, 1)} of max {InchLength.Words(mostMm, 1)}\u00a0in"
        : $"{Pages.Shown.Number(lengthMm)} of max {Pages.Shown.Number(mostMm)}\u00a0mm";

    /// <summary>The cut length of a wire, inches from the exact length and not from the rounded millimetres; null while it is not known.</summary>
    public static string? Cut(Plan plan, Wire wire, UnitsShown units)
    {
        ArgumentNullException.ThrowIfNull(wire);
        return wire.CutLengthMm is { } mm ? Both($"{Pages.Shown.Number(mm)} mm", $"{InchLength.RoundedUp(CutRows.ExactMm(plan, wire) ?? mm).ToString("0.##", CultureInfo.InvariantCulture)} in", units) + (wire.Estimated ? " E" : "") : null;
    }

    /// <summary>The size of an opening: '80 × 118 mm', '80 × 118 mm (3.15 × 4.65 in)' or '3.15 × 4.65 in'; a round one by its diameter.</summary>
    public static string Of(Opening opening, UnitsShown units)
    {
        ArgumentNullException.ThrowIfNull(opening);
        return opening.Round ? $"Ø {Small(opening.WidthMm, units)}" : Across(opening.WidthMm, opening.HeightMm, units);
    }

    /// <summary>Width and height: '80 × 118 mm', '80 × 118 mm (3.15 × 4.65 in)' or '3.15 × 4.65 in'.</summary>
    public static string Across(double widthMm, double heightMm, UnitsShown units) => Both(
        $"{Pages.Shown.Number(widthMm, 1)} × {Pages.Shown.Number(heightMm, 1)} mm",
        $"{InchLength.Words(widthMm, 2)} × {InchLength.Words(heightMm, 2)} in",
        units);

    private static string Both(string metric, string inches, UnitsShown units) => units switch { UnitsShown.Inch => inches, UnitsShown.Both => $"{metric} ({inches})", _ => metric };

    /// <summary>A short length to be measured: '9.5 mm', '9.5 mm (0.37 in)' or '0.37 in'.</summary>
    public static string Small(double lengthMm, UnitsShown units)
    {
        var metric = $"{lengthMm.ToString("0.#", CultureInfo.InvariantCulture)} mm";
        var inches = $"{InchLength.Words(lengthMm, 2)} in";
        return Both(metric, inches, units);
    }
}
