using System.Text;

namespace HarnessDraw.Writing.Svg;

/// <summary>Numbers of an SVG file: at most three decimals, no trailing zeros, no negative zero, no exponent.</summary>
public static class SvgNumber
{
    /// <summary>The most bytes a number takes.</summary>
    public const int MostDigits = 24;

    /// <exception cref="ArgumentOutOfRangeException">No number of a drawing: not finite, or beyond a thousand million.</exception>
    public static string Text(double value)
    {
        Span<byte> text = stackalloc byte[MostDigits];
        return Encoding.ASCII.GetString(text[..Format(Thousandths(value), text)]);
    }

    /// <summary>Rounded to thousandths, as numbers are written.</summary>
    public static long Thousandths(double value) => double.IsFinite(value) && Math.Abs(value) <= 1e9
        ? (long)Math.Round(value * 1000, MidpointRounding.AwayFromZero)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "a drawing has no such coordinate");

    /// <summary>Writes a number that is known in thousandths; tells how many bytes it took.</summary>
    public static int Format(long thousandths, Span<byte> text)
    {
        var at = 0;
        if (thousandths < 0)
        {
            text[at++] = (byte)'-';
            thousandths = -thousandths;
        }

        var (whole, part) = Math.DivRem((ulong)thousandths, 1000);
        whole.TryFormat(text[at..], out var digits);
        at += digits;
        if (part == 0)
        {
            return at;
        }

        text[at] = (byte)'.';
        text[at + 1] = (byte)('0' + (part / 100));
        text[at + 2] = (byte)('0' + (part / 10 % 10));
        text[at + 3] = (byte)('0' + (part % 10));
        return at + (part % 10 != 0 ? 4 : part % 100 != 0 ? 3 : 2);
    }
}
