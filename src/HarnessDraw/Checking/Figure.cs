using System.Globalization;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Numbers in messages: as many digits as a person reads, never '0.30000000004' and never '-0'.</summary>
internal static class Figure
{
    public static string Number(double value)
    {
        var size = Math.Abs(value);
        var digits = size >= 99.95 ? 0 : size >= 9.995 ? 1 : size >= 0.0995 ? 2 : 3;
        var rounded = Math.Round(value, digits, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.###", CultureInfo.InvariantCulture);
    }

    public static string Of(double value, string unit) => unit.Length == 0 ? Number(value) : $"{Number(value)} {unit}";

    public static string Amps(double value) => $"{Number(value)} A";

    public static string Millimetres(double value) => $"{Number(Math.Round(value, MidpointRounding.AwayFromZero))} mm";

    public static string Area(double value) => $"{Number(value)} mm²";

    /// <summary>A wire's size as it is sold: '2.5 mm²', '16 AWG'.</summary>
    public static string Size(Wire wire) => wire.Awg is null ? $"{wire.SizeLabel} mm²" : wire.SizeLabel;

    public static string Volts(double value) => $"{Number(value)} V";

    public static string Percent(double fraction) => $"{Number(fraction * 100)} %";
}
