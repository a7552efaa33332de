using System.Buffers;
using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.Pages;

/// <summary>Breaks a text into lines between its <see cref="KeptWords"/>; a word wider than a line is broken after a mark, else inside. Nothing is ever left out.</summary>
internal static class LineBreaker
{
    // what of a wider bold face the gap behind a line takes up
    private const double BoldSlackMm = 2;
    private static readonly SearchValues<char> Marks = SearchValues.Create("./-,_|=\u00a0");

    public static ImmutableArray<string> Lines(string text, double widthMm, TextStyle? style = null)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var line = "";
        foreach (var word in KeptWords.Of(ShownText.Of(text), w => Width(w, style) <= widthMm))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (Width(longer, style) <= widthMm)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            line = word;
            while (Width(line, style) > widthMm && line.Length > 1)
            {
                var at = Break(line, widthMm, style);
                lines.Add(line[..at]);
                line = line[at..];
            }
        }

        lines.Add(line);
        return lines.ToImmutable();
    }

    /// <summary>The width that holds the text in one line: long bold lines in a viewer's own bold face too.</summary>
    public static double Width(string text, TextStyle? style = null)
    {
        var planned = Pen.Width(text, style);
        return style?.Weight == FaceWeight.Bold ? Math.Max(planned, (planned * PlanWidths.OwnBoldOverPlanned) - BoldSlackMm) : planned;
    }

    /// <summary>The width below which a word of the text would be broken, never more than <paramref name="mostMm"/>.</summary>
    public static double LongestWord(string text, double mostMm, TextStyle? style = null) =>
        ShownText.Of(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => Math.Min(mostMm, Width(w, style))).DefaultIfEmpty(0).Max();

    private static int Break(string word, double widthMm, TextStyle? style)
    {
        var fits = 1;
        while (fits < word.Length && Width(word[..(fits + 1)], style) <= widthMm)
        {
            fits++;
        }

        var mark = word.AsSpan(0, fits).LastIndexOfAny(Marks);
        var at = mark >= fits / 2 ? mark + 1 : fits;
        return at < word.Length && char.IsLowSurrogate(word[at]) ? Math.Max(1, at - 1) == 1 ? at + 1 : at - 1 : at;
    }
}
