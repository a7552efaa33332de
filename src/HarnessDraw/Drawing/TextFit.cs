using System.Collections.Immutable;
using System.Text;

namespace HarnessDraw.Drawing;

/// <summary>
/// Makes text fit a width in millimetres: lines broken between <see cref="KeptWords"/>, or one line cut with an ellipsis. Widths are planned ones, so
/// a line also fits in the fallback face.
/// </summary>
public static class TextFit
{
    /// <summary>
    /// The text broken into lines no wider than <paramref name="widthMm"/>. A line end in the text starts a line; a word
    /// that is wider than a line is broken inside. Never empty.
    /// </summary>
    public static ImmutableArray<string> Wrap(string text, double widthMm, double capHeightMm, FaceWeight weight = FaceWeight.Medium, FaceSet? faces = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = ImmutableArray.CreateBuilder<string>();
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            WrapParagraph(lines, ShownText.Of(paragraph), widthMm, w => TextMeasure.PlanWidth(w, capHeightMm, weight, faces));
        }

        return lines.ToImmutable();
    }

    /// <summary>The narrowest width in millimetres in which <see cref="Wrap"/> gives no more than <paramref name="lines"/> lines without breaking a word; the widest word when there are fewer words.</summary>
    public static double NarrowestMm(string text, int lines, double capHeightMm, FaceWeight weight = FaceWeight.Medium, FaceSet? faces = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        double[] words = [.. KeptWords.Of(ShownText.Of(text), _ => true).Select(w => TextMeasure.PlanWidth(w, capHeightMm, weight, faces))];
        var space = TextMeasure.PlanWidth(" ", capHeightMm, weight, faces);

        // narrowest[i]: of the words from i on, in the number of lines looked at
        var narrowest = Enumerable.Repeat(double.PositiveInfinity, words.Length).Append(0).ToArray();
        for (var line = 0; line < lines; line++)
        {
            for (var from = 0; from < words.Length; from++)
            {
                var width = -space;
                for (var to = from; to < words.Length; to++)
                {
                    width += space + words[to];
                    narrowest[from] = Math.Min(narrowest[from], Math.Max(width, narrowest[to + 1]));
                }
            }
        }

        return narrowest[0];
    }

    /// <summary>The text, or as much of its beginning as fits with an ellipsis after it.</summary>
    public static string Ellipsis(string text, double widthMm, double capHeightMm, FaceWeight weight = FaceWeight.Medium, FaceSet? faces = null)
    {
        var shown = ShownText.Of(text);
        if (TextMeasure.PlanWidth(shown, capHeightMm, weight, faces) <= widthMm)
        {
            return shown;
        }

        const string Dots = "…";
        var room = widthMm - TextMeasure.PlanWidth(Dots, capHeightMm, weight, faces);
        return shown[..Fitting(shown, room, w => TextMeasure.PlanWidth(w, capHeightMm, weight, faces))].TrimEnd() + Dots;
    }

    private static void WrapParagraph(ImmutableArray<string>.Builder lines, string text, double widthMm, Func<string, double> measure)
    {
        var line = new StringBuilder();
        var lineWidth = 0.0;
        var space = measure(" ");
        foreach (var word in KeptWords.Of(text, w => measure(w) <= widthMm))
        {
            var rest = word;
            var width = measure(rest);
            if (line.Length > 0 && lineWidth + space + width > widthMm)
            {
                EndLine();
            }

            while (line.Length == 0 && width > widthMm && rest.Length > 1)
            {
                var fitting = Math.Max(FirstRune(rest), Fitting(rest, widthMm, measure));
                lines.Add(rest[..fitting]);
                rest = rest[fitting..];
                width = measure(rest);
            }

            lineWidth += (line.Length > 0 ? space : 0) + width;
            line.Append(line.Length > 0 ? " " : "").Append(rest);
        }

        EndLine();

        void EndLine()
        {
            lines.Add(line.ToString());
            line.Clear();
            lineWidth = 0;
        }
    }

    // the most UTF-16 units from the start that fit; never half a surrogate pair
    private static int Fitting(string text, double widthMm, Func<string, double> measure)
    {
        var at = 0;
        var width = 0.0;
        foreach (var rune in text.EnumerateRunes())
        {
            width += measure(rune.ToString());
            if (width > widthMm)
            {
                break;
            }

            at += rune.Utf16SequenceLength;
        }

        return at;
    }

    private static int FirstRune(string text) => char.IsHighSurrogate(text[0]) && text.Length > 1 ? 2 : 1;
}
