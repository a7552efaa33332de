using System.Globalization;
using System.Text;

namespace HarnessDraw.Drawing;

/// <summary>
/// Which letters need shaping, and in which order pieces of a line stand that mixes directions. The line itself runs from left to right, as the labels of
/// a drawing do; the order is that of the Unicode bidirectional algorithm (UAX #9, rules W2 to W7, N1, N2, L2) for text without explicit marks.
/// </summary>
public static class ScriptRuns
{
    /// <summary>True when a text holds a letter that one glyph after the other would set wrongly: it joins, stacks, marks or runs from right to left.</summary>
    public static bool AnyComplex(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (IsComplex(rune.Value))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Blocks of the Unicode standard with right-to-left or joining scripts, Indic and Southeast Asian scripts, and marks that combine.</summary>
    public static bool IsComplex(int c) => c is (>= 0x300 and < 0x370) or (>= 0x590 and < 0x10A0) or (>= 0x1100 and < 0x1200) or (>= 0x1700 and < 0x1AB0) or (>= 0x1B00 and < 0x1C80)
        or (>= 0x200C and <= 0x200D) or (>= 0xA8E0 and < 0xAC00) or (>= 0xFB1D and < 0xFE00) or (>= 0xFE20 and < 0xFE30) or (>= 0xFE70 and < 0xFF00) or (>= 0x10A00 and < 0x11000) or (>= 0x11000 and < 0x12000) or (>= 0x1E800 and < 0x1F000);

    /// <summary>The level of every rune: 0 from left to right, 1 from right to left, 2 a number within words that run from right to left.</summary>
    public static int[] Levels(ReadOnlySpan<Rune> runes)
    {
        var levels = new int[runes.Length];
        var kinds = new char[runes.Length]; // L, R, N(umber), a '.' for whatever takes its direction from around it
        var strong = 'L';
        for (var i = 0; i < runes.Length; i++)
        {
            var kind = Kind(runes[i]);
            strong = kind is 'L' or 'R' ? kind : strong;
            kinds[i] = kind == 'N' && strong == 'L' ? 'L' : kind;
        }

        for (var i = 0; i < runes.Length; i++)
        {
            levels[i] = kinds[i] switch { 'R' => 1, 'N' => 2, 'L' => 0, _ => Around(kinds, i) };
        }

        return levels;
    }

    /// <summary>Places of pieces from left to right, given the level of each in reading order.</summary>
    public static int[] LeftToRight(ReadOnlySpan<int> levels)
    {
        int[] order = [.. Enumerable.Range(0, levels.Length)];
        for (var level = 2; level >= 1; level--)
        {
            for (var from = 0; from < order.Length; from++)
            {
                var to = from;
                while (to < order.Length && levels[order[to]] >= level)
                {
                    to++;
                }

                order.AsSpan(from, to - from).Reverse();
                from = Math.Max(from, to);
            }
        }

        return order;
    }

    // a space or sign between two stretches of one direction belongs to them; else to the line
    private static int Around(char[] kinds, int at)
    {
        int before = at - 1, after = at + 1;
        while (before >= 0 && kinds[before] == '.')
        {
            before--;
        }

        while (after < kinds.Length && kinds[after] == '.')
        {
            after++;
        }

        return before >= 0 && after < kinds.Length && kinds[before] is 'R' or 'N' && after < kinds.Length && kinds[after] is 'R' or 'N' ? 1 : 0;
    }

    private static char Kind(Rune rune) =>
        rune.Value is (>= 0x590 and < 0x900) or (>= 0xFB1D and < 0xFE00) or (>= 0xFE70 and < 0xFF00) or (>= 0x10800 and < 0x11000) or (>= 0x1E800 and < 0x1F000) && !Rune.IsDigit(rune) ? 'R'
        : Rune.IsDigit(rune) ? 'N'
        : Rune.IsLetter(rune) || Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark ? 'L'
        : '.';
}
