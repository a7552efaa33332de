using System.Text;

namespace HarnessDraw.Writing.Svg;

/// <summary>Numbers of an SVG file: at most three decimals, no trailing zeros, no negative zero, no exponent.</summary>
internal static class SvgNumber
{
    public static string Text(double value)
    {
        Span<char> text = stackalloc char[24];
        return text[..Format(Thousandths(value), text)].ToString();
    }

    public static StringBuilder AppendNumber(this StringBuilder builder, double value) => builder.AppendThousandths(Thousandths(value));

    /// <summary>A number that is known in thousandths.</summary>
    public static StringBuilder AppendThousandths(this StringBuilder builder, long thousandths)
    {
        Span<char> text = stackalloc char[24];
        return builder.Append(text[..Format(thousandths, text)]);
    }

    /// <summary>Rounded to thousandths, as numbers are written.</summary>
    public static long Thousandths(double value) => double.IsFinite(value) && Math.Abs(value) <= 1e9
        ? (long)Math.Round(value * 1000, MidpointRounding.AwayFromZero)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "a drawing has no such coordinate");

    private static int Format(long thousandths, Span<char> text)
    {
        var at = 0;
        if (thousandths < 0)
        {
            text[at++] = '-';
            thousandths = -thousandths;
        }

        ((ulong)thousandths / 1000).TryFormat(text[at..], out var digits);
        at += digits;
        var part = (int)(thousandths % 1000);
        if (part == 0)
        {
            return at;
        }

        text[at++] = '.';
        for (var unit = 100; part > 0; unit /= 10)
        {
            text[at++] = (char)('0' + (part / unit));
            part %= unit;
        }

        return at;
    }
}
