using System.Buffers;
using System.Text;

namespace HarnessDraw.Drawing;

/// <summary>
/// What of a text is drawn. Names come from users: line ends and tabs become spaces, other control characters and lone
/// surrogates become '?', direction marks and joiners (which could turn the words beside them around) are left out.
/// </summary>
public static class ShownText
{
    private static readonly SearchValues<char> Plain = SearchValues.Create(
        " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~²°Ø×−±≤≥–—…");

    /// <summary>The text as it is measured and drawn; most texts come back unchanged.</summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!text.AsSpan().ContainsAnyExcept(Plain))
        {
            return text;
        }

        foreach (var c in text)
        {
            if (char.IsSurrogate(c) || IsOther(c))
            {
                return Rewrite(text);
            }
        }

        return text;
    }

    private static string Rewrite(string text)
    {
        var shown = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            Append(shown, rune);
        }

        return shown.ToString();
    }

    private static void Append(StringBuilder shown, Rune rune)
    {
        var c = rune.Value;
        if (c is '\n' or '\r' or '\t' or 0x85 or 0x2028 or 0x2029)
        {
            shown.Append(' ');
        }
        else if (c < 0x20 || c is (>= 0x7F and < 0xA0) or 0xFFFD or 0xFFFE or 0xFFFF)
        {
            shown.Append('?');
        }
        else if (c is 0x2610 or 0x2300)
        {
            // neither face has them; the nearest sign they have
            shown.Append(c == 0x2610 ? '□' : 'Ø');
        }
        else if (!IsInvisible(c))
        {
            shown.Append(rune);
        }
    }

    // a letter that is drawn as another, or not at all
    private static bool IsOther(int c) => c is < 0x20 or (>= 0x7F and < 0xA0) or 0x2028 or 0x2029 or 0xFFFD or 0xFFFE or 0xFFFF or 0x2610 or 0x2300 || IsInvisible(c);

    private static bool IsInvisible(int c) =>
        c is 0xAD or 0x61C or 0x180E or 0xFEFF or (>= 0x200B and <= 0x200F) or (>= 0x202A and <= 0x202E)
            or (>= 0x2060 and <= 0x206F) or (>= 0xFFF9 and <= 0xFFFB) or (>= 0xE0000 and <= 0xE007F);
}
