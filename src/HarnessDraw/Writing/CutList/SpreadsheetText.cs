using System.Buffers;
using System.Globalization;
using System.Text.RegularExpressions;

namespace HarnessDraw.Writing.CutList;

/// <summary>
/// Text that survives a spreadsheet. What a spreadsheet would run as a formula (= + - @ and their wide forms at the start) or turn into a number, date or truth value of
/// another look (012, 7E05, 3-4, MAR2, TRUE) gets one underscore in front. Going back is exact: <see cref="Unguard"/> takes that underscore off again.
/// </summary>
public static partial class SpreadsheetText
{
    private const char Mark = '_';

    // what the three patterns can begin with, in either case, besides letters and digits of other scripts
    private static readonly SearchValues<char> ChangedBegins = SearchValues.Create("0123456789.,$(adfjmnostADFJMNOST");

    public static string Guard(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return IsRisky(text.AsSpan().TrimStart(Mark)) ? Mark + text : text;
    }

    /// <summary>The text that <see cref="Guard"/> was given.</summary>
    public static string Unguard(string cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return cell.StartsWith(Mark) && IsRisky(cell.AsSpan().TrimStart(Mark)) ? cell[1..] : cell;
    }

    private static bool IsRisky(ReadOnlySpan<char> text)
    {
        var seen = SkipUnseen(text);
        return seen.Length > 0
            && (IsFormulaStart(seen[0]) || char.IsControl(text[0]) || ((seen[0] > '\u007F' || ChangedBegins.Contains(seen[0])) && IsChanged(seen)));
    }

    /// <summary>True for what a spreadsheet would show as a number, date or truth value of another look.</summary>
    public static bool IsChanged(ReadOnlySpan<char> seen) => ChangedAsNumber().IsMatch(seen) || ChangedAsDate().IsMatch(seen) || ChangedAsWord().IsMatch(seen);

    // blanks and marks without width before a sign do not make it harmless everywhere
    private static ReadOnlySpan<char> SkipUnseen(ReadOnlySpan<char> text)
    {
        var at = 0;
        while (at < text.Length && (char.IsWhiteSpace(text[at]) || char.IsControl(text[at]) || char.GetUnicodeCategory(text[at]) == UnicodeCategory.Format))
        {
            at++;
        }

        return text[at..];
    }

    private static bool IsFormulaStart(char c) => c is '=' or '+' or '-' or '@' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20' or '\u2212';

    [GeneratedRegex(@"^(0\d[\d.,]*|\d+(\.\d+)?[eE][+-]?\d+|\d{12,}|\d[\d.]*\s*%|[$€£]\s*\d.*|\(\d+\)|\d+[ ,.']\d{3}|\d*[.,]\d*0)\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex ChangedAsNumber();

    [GeneratedRegex(@"^(\d{1,4}\s*[-/.:]\s*\d{1,4}([-/.:\s][-/.:\s\d]*([ap]m?)?)?|\d{1,4}[-/. ]?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*([-/. ]?\d{1,4})?|(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[-/. ]?\d{1,4}|\d{1,2}\s*[ap]m?)\s*$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex ChangedAsDate();

    [GeneratedRegex(@"^(true|false)\s*$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex ChangedAsWord();
}
