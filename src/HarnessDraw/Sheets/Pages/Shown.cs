using System.Globalization;

namespace HarnessDraw.Sheets.Pages;

/// <summary>Figures as sheets print them: a dash for what is not known, a true minus, never a minus nought.</summary>
internal static class Shown
{
    public const string Unknown = "–";

    /// <summary>At most so many decimals, none of them a trailing nought.</summary>
    public static string Number(double? value, int decimals = 0) =>
        value is { } known ? Signed(Rounded(known, decimals).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture)) : Unknown;

    /// <summary>Always so many decimals: volts in a column.</summary>
    public static string Fixed(double? value, int decimals) =>
        value is { } known ? Signed(Rounded(known, decimals).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)) : Unknown;

    /// <summary>'1 wire', '3 wires'.</summary>
    public static string Count(int count, string one, string? many = null) => $"{count.ToString(CultureInfo.InvariantCulture)} {(count == 1 ? one : many ?? one + "s")}";

    /// <summary>Titles of the catalogue as sheets print them: square millimetres with their sign.</summary>
    public static string Units(string words) => words.Replace("mm2", "mm²", StringComparison.Ordinal);

    // adding nought turns a rounded minus nought into nought
    private static double Rounded(double value, int decimals) => Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;

    private static string Signed(string figure) => figure.Replace('-', '−');
}
