using System.Collections.Immutable;
using System.Text;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing;

/// <summary>File names of the output contract: NAME.SHEET[.N][.black].svg and a folder a build.</summary>
public static class OutputNames
{
    private const int LongestPart = 60;

    public static string OfPage(string name, Sheet sheet, string extension)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return $"{Safe(name)}.{sheet.Name}{(sheet.Number is { } n ? $".{n}" : "")}{Ink(sheet.BlackInk)}.{extension}";
    }

    public static string OfSheet(string name, string sheetName, bool blackInk, string extension) => $"{Safe(name)}.{sheetName}{Ink(blackInk)}.{extension}";

    public static string OfSet(string name, bool blackInk) => $"{Safe(name)}{Ink(blackInk)}.pdf";

    /// <summary>'charging-exciter+cooling-belt-fan' for a build.</summary>
    public static string BuildFolder(ImmutableSortedDictionary<string, string> build)
    {
        ArgumentNullException.ThrowIfNull(build);
        return build.Count == 0 ? "usual" : string.Join('+', build.Select(c => $"{Slug(c.Key)}-{Slug(c.Value)}"));
    }

    /// <summary>A name that stays in its folder: no separators, no control characters, no leading dot.</summary>
    public static string Safe(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var safe = new string([.. name.Select(c => char.IsControl(c) || "/\\:*?\"<>|".Contains(c, StringComparison.Ordinal) ? '-' : c)]).TrimStart('.', ' ');
        return safe.Length == 0 ? "harness" : safe;
    }

    private static string Ink(bool blackInk) => blackInk ? ".black" : "";

    private static string Slug(string text)
    {
        var slug = new StringBuilder();
        foreach (var c in text.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(c))
            {
                slug.Append(c);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        var trimmed = slug.ToString().Trim('-');
        return trimmed.Length == 0 ? "x" : trimmed[..Math.Min(LongestPart, trimmed.Length)];
    }
}
