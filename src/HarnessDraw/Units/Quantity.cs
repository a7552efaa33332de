using System.Globalization;

namespace HarnessDraw.Units;

/// <summary>
/// A quantity as typed: <see cref="Value"/> in the kind's own unit (for AWG the gauge number: 18, and 0 for 1/0, -1 for 2/0), the
/// unit that was written, and the number as it was written.
/// </summary>
public readonly record struct Quantity(double Value, string Unit, string NumberText)
{
    public bool IsAwg => Unit == "AWG";

    /// <summary>Reads '4.6 A', '3 ft 2 in', '48 1/4 in', '2/0 AWG'. No exponents, no thousands marks, no decimal commas.</summary>
    public static bool TryParse(string text, QuantityKind kind, out Quantity quantity, out string? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(kind);
        quantity = default;
        var rest = text.AsSpan().Trim();
        var total = 0.0;
        var parts = 0;
        while (rest.Length > 0)
        {
            var numberLength = NumberLength(rest);
            if (numberLength == 0)
            {
                problem = parts == 0 ? "no number" : "text after the unit";
                return false;
            }

            var numberText = rest[..numberLength].TrimEnd();
            var afterNumber = rest[numberLength..].TrimStart();
            var unitLength = UnitLength(afterNumber);
            if (unitLength == 0)
            {
                problem = "no unit";
                return false;
            }

            var unit = FindUnit(kind, afterNumber[..unitLength].TrimEnd(), ref unitLength, afterNumber);
            if (unit is null)
            {
                problem = $"unit '{afterNumber[..unitLength].TrimEnd()}' is not one of them";
                return false;
            }

            var isAwg = unit.Symbol == "AWG";
            if (!(isAwg ? TryGauge(numberText, out var number) : TryNumber(numberText, out number)))
            {
                problem = $"'{numberText}' is not a number";
                return false;
            }

            if (number < 0 && !kind.MayBeNegative && !isAwg)
            {
                problem = "it is below zero";
                return false;
            }

            if (number == 0 && !kind.MayBeZero && !isAwg)
            {
                problem = "it is zero";
                return false;
            }

            total += (number * unit.Factor) + unit.Offset;
            rest = afterNumber[unitLength..].TrimStart();
            parts++;
            quantity = new Quantity(total, unit.Symbol, numberText.ToString());
            if (rest.Length > 0 && (kind != QuantityKind.Length || unit.Symbol != "ft" || parts > 1))
            {
                problem = $"'{rest}' follows the unit";
                return false;
            }
        }

        problem = parts == 0 ? "nothing was given" : null;
        return parts > 0;
    }

    /// <summary>A plain number: sign, digits, one decimal point. Refuses '1_0', '7E05', '1,5', '0x1F'.</summary>
    public static bool TryNumber(ReadOnlySpan<char> text, out double number)
    {
        number = 0;
        var space = text.IndexOf(' ');
        if (space > 0)
        {
            // 48 1/4: whole and fraction
            return TryDecimal(text[..space], out var whole) && TryFraction(text[(space + 1)..].TrimStart(), out var part) && Add(whole, part, out number);
        }

        return TryDecimal(text, out number) || TryFraction(text, out number);
    }

    private static bool Add(double whole, double part, out double sum)
    {
        sum = whole < 0 ? whole - part : whole + part;
        return true;
    }

    private static bool TryFraction(ReadOnlySpan<char> text, out double number)
    {
        number = 0;
        var slash = text.IndexOf('/');
        if (slash <= 0 || !TryDecimal(text[..slash], out var top) || !TryDecimal(text[(slash + 1)..], out var bottom) || bottom <= 0)
        {
            return false;
        }

        number = top / bottom;
        return true;
    }

    private static bool TryDecimal(ReadOnlySpan<char> text, out double number)
    {
        number = 0;
        if (text.Length is 0 or > 24 || !char.IsAsciiDigit(text[^1]))
        {
            return false;
        }

        if (!double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number))
        {
            return false;
        }

        number += 0.0; // -0 becomes 0
        return true;
    }

    private static bool TryGauge(ReadOnlySpan<char> text, out double gauge)
    {
        var slash = text.IndexOf('/');
        if (slash > 0 && text[(slash + 1)..] is "0" && TryDecimal(text[..slash], out var noughts) && noughts is >= 1 and <= 4)
        {
            gauge = 1 - noughts;
            return true;
        }

        return TryDecimal(text, out gauge) && gauge is >= 0 and <= 40 && gauge == Math.Floor(gauge);
    }

    private static int NumberLength(ReadOnlySpan<char> text)
    {
        var length = 0;
        while (length < text.Length && (char.IsAsciiDigit(text[length]) || text[length] is '.' or ',' or '_' or '/' or '+' or '-' or ' ' || IsExponent(text, length)))
        {
            length++;
        }

        return text[..length].Trim().Length == 0 ? 0 : length;
    }

    // '7E05' is taken in one piece, so that the message speaks of it and not of a unit 'E05'
    private static bool IsExponent(ReadOnlySpan<char> text, int at) =>
        at > 0 && text[at] is 'e' or 'E' && at + 1 < text.Length && (char.IsAsciiDigit(text[at + 1]) || text[at + 1] is '+' or '-');

    private static int UnitLength(ReadOnlySpan<char> text)
    {
        var length = 0;
        while (length < text.Length && text[length] is not ' ')
        {
            length++;
        }

        return length;
    }

    private static Unit? FindUnit(QuantityKind kind, ReadOnlySpan<char> word, ref int length, ReadOnlySpan<char> text)
    {
        foreach (var unit in kind.Units)
        {
            if (unit.Symbol.Contains(' ', StringComparison.Ordinal) && text.StartsWith(unit.Symbol, StringComparison.Ordinal))
            {
                length = unit.Symbol.Length;
                return unit;
            }

            if (word.SequenceEqual(unit.Symbol))
            {
                return unit;
            }
        }

        return null;
    }
}
