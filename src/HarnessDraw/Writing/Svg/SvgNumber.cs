using System.Text;

namespace HarnessDraw.Writing.Svg;

/// <summary>Numbers of an SVG file: at most three decimals, no trailing zeros, no negative zero, no exponent.</summary>
public static class SvgNumber
{
    // the largest number below a half, as the runtime rounds halves away from nought: with a half 0.49999999999999994 would become 1
    private const double UnderHalf = 0.49999999999999994;

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
        ? (long)((value * 1000) + Math.CopySign(UnderHalf, value))
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
        at += Whole(whole, text[at..]);
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

    // most have three digits at the most: one after the other is quicker than the general way
    private static int Whole(ulong whole, Span<byte> text)
    {
        if (whole >= 1000)
        {
            whole.TryFormat(text, out var digits);
            return digits;
        }

        var (count, left) = (whole >= 100 ? 3 : whole >= 10 ? 2 : 1, (uint)whole);
        for (var i = count - 1; i >= 0; i--, left /= 10)
        {
            text[i] = (byte)('0' + (left % 10));
        }

        return count;
    }
}
