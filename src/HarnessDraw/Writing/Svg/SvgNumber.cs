using System.Text;

namespace HarnessDraw.Writing.Svg;

/// <summary>Numbers of an SVG file: at most three decimals, no trailing zeros, no negative zero, no exponent.</summary>
internal static class SvgNumber
{
    public static string Text(double value)
    {
        Span<char> text = stackalloc char[24];
        return text[..Format(value, text)].ToString();
    }

    public static StringBuilder AppendNumber(this StringBuilder builder, double value)
    {
        Span<char> text = stackalloc char[24];
        return builder.Append(text[..Format(value, text)]);
    }

    private static int Format(double value, Span<char> text)
    {
        if (!double.IsFinite(value) || Math.Abs(value) > 1e9)
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "a drawing has no such coordinate");
        }

        var thousandths = (long)Math.Round(value * 1000, MidpointRounding.AwayFromZero);
        var at = 0;
        if (thousandths < 0)
        {
            text[at++] = '-';
            thousandths = -thousandths;
        }

        (thousandths / 1000).TryFormat(text[at..], out var digits);
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
