using System.Globalization;

namespace HarnessDraw.Units;

/// <summary>
/// Numbers as sheets and files print them: rounded once from the exact value, half away from zero, decimal point, never '-0', the
/// same on every machine.
/// </summary>
public static class NumberText
{
    /// <summary>Always <paramref name="decimals"/> digits after the point: '1.50'. Not finite: '-'.</summary>
    public static string Fixed(double value, int decimals)
    {
        if (!double.IsFinite(value))
        {
            return "-";
        }

        if (Math.Abs(value) >= 1e15)
        {
            return value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
        }

        // decimal keeps 15 figures of the double, so that 1.005 rounds the way it is read
        var text = Math.Round((decimal)value, decimals, MidpointRounding.AwayFromZero).ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return IsMinusZero(text) ? text[1..] : text;
    }

    /// <summary>At most <paramref name="decimals"/> digits, no trailing zeros: '1.5', '2'.</summary>
    public static string Brief(double value, int decimals = 3)
    {
        var text = Fixed(value, decimals);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }

    private static bool IsMinusZero(string text) => text.Length > 1 && text[0] == '-' && text.AsSpan(1).IndexOfAnyExcept('0', '.') < 0;
}
