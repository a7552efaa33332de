using System.Collections.Immutable;
using System.Globalization;

namespace HarnessDraw.Drawing;

/// <summary>
/// The papers a sheet can lie on: ISO 216 A sizes, the drawing sizes of ASME Y14.1, rolls. Named as a person asks for them;
/// a name alone lies as drawings lie (landscape; A4 and Letter upright), 'landscape' or 'portrait' after it turns it.
/// </summary>
public static class PaperSizes
{
    private const double Inch = 25.4;

    public static readonly Paper A4 = new("A4", 210, 297);
    public static readonly Paper A4Landscape = new("A4 landscape", 297, 210);
    public static readonly Paper A3 = new("A3", 420, 297);
    public static readonly Paper A2 = new("A2", 594, 420);
    public static readonly Paper A1 = new("A1", 841, 594);
    public static readonly Paper A0 = new("A0", 1189, 841);
    public static readonly Paper TwoA0 = new("2A0", 1682, 1189);
    public static readonly Paper Letter = new("Letter", 8.5 * Inch, 11 * Inch);
    public static readonly Paper LetterLandscape = new("Letter landscape", 11 * Inch, 8.5 * Inch);
    public static readonly Paper Tabloid = new("Tabloid", 17 * Inch, 11 * Inch);
    public static readonly Paper AnsiC = new("ANSI C", 22 * Inch, 17 * Inch);
    public static readonly Paper AnsiD = new("ANSI D", 34 * Inch, 22 * Inch);
    public static readonly Paper AnsiE = new("ANSI E", 44 * Inch, 34 * Inch);

    /// <summary>ISO sizes for charts, smallest first.</summary>
    public static ImmutableArray<Paper> Iso => [A4Landscape, A3, A2, A1, A0, TwoA0];

    /// <summary>Inch sizes for charts, smallest first.</summary>
    public static ImmutableArray<Paper> Asme => [LetterLandscape, Tabloid, AnsiC, AnsiD, AnsiE];

    /// <summary>Every named size.</summary>
    public static ImmutableArray<Paper> All => [A4, .. Iso, Letter, .. Asme];

    /// <summary>
    /// The paper of that name ('A3', 'a4 landscape', 'A2 portrait', 'ANSI D', 'Ledger', 'roll 914 x 2400'), or null. Case does not matter.
    /// </summary>
    public static Paper? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var words = name.Trim().ToUpperInvariant();
        if (words.StartsWith("ROLL ", StringComparison.Ordinal))
        {
            return ParseRoll(words[5..]);
        }

        var (size, turn) = words switch
        {
            _ when words.EndsWith(" LANDSCAPE", StringComparison.Ordinal) => (words[..^10], 'L'),
            _ when words.EndsWith(" PORTRAIT", StringComparison.Ordinal) => (words[..^9], 'P'),
            _ => (words, ' '),
        };
        var paper = size is "LEDGER" or "ANSI B" ? Tabloid : size == "ANSI A" ? Letter : All.FirstOrDefault(p => string.Equals(p.Name, size, StringComparison.OrdinalIgnoreCase));
        return paper is null ? null : Turned(paper, turn);
    }

    /// <summary>A piece of a roll: <paramref name="widthMm"/> is the roll's width and the sheet's height, the length is what the drawing needs.</summary>
    public static Paper Roll(double widthMm, double lengthMm) =>
        new($"roll {widthMm.ToString("0.#", CultureInfo.InvariantCulture)} x {lengthMm.ToString("0.#", CultureInfo.InvariantCulture)}", lengthMm, widthMm);

    /// <summary>The size as a title block prints it: 'A2 594 × 420', 'ANSI D 34 × 22 in'.</summary>
    public static string Label(Paper paper)
    {
        ArgumentNullException.ThrowIfNull(paper);
        static string Number(double n) => n.ToString("0.#", CultureInfo.InvariantCulture);
        var size = paper.Name.Split(' ')[0] == "ANSI" ? paper.Name : paper.Name.Split(' ')[0];
        return IsAsme(paper)
            ? $"{size} {Number(paper.WidthMm / Inch)} × {Number(paper.HeightMm / Inch)} in"
            : $"{size} {Number(paper.WidthMm)} × {Number(paper.HeightMm)}";
    }

    internal static bool IsAsme(Paper paper) =>
        paper.Name.StartsWith("ANSI", StringComparison.Ordinal) || paper.Name.StartsWith("Letter", StringComparison.Ordinal) || paper.Name.StartsWith("Tabloid", StringComparison.Ordinal);

    private static Paper Turned(Paper paper, char turn)
    {
        var lies = paper.WidthMm > paper.HeightMm;
        if (turn == ' ' || (turn == 'L') == lies)
        {
            return paper;
        }

        var size = paper.Name.Replace(" landscape", "", StringComparison.Ordinal);
        return new($"{size} {(lies ? "portrait" : "landscape")}", paper.HeightMm, paper.WidthMm);
    }

    private static Paper? ParseRoll(string size)
    {
        var parts = size.Split('X');
        return parts.Length == 2
            && double.TryParse(parts[0], NumberStyles.AllowDecimalPoint | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var width)
            && double.TryParse(parts[1], NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var length)
            && width is >= 100 and <= 2000 && length is >= 100 and <= 50000
            ? Roll(width, length)
            : null;
    }
}
