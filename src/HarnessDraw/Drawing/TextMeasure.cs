using System.Collections.Immutable;
using System.Text;

namespace HarnessDraw.Drawing;

/// <summary>A stretch of one text in one face. <paramref name="OffsetMm"/> counts from the start of the text; sizes in millimetres.</summary>
public readonly record struct TextRun(string Text, FontFile Face, int FaceIndex, double SizeMm, double OffsetMm, double WidthMm)
{
    /// <summary>Set glyph by glyph where the script joins, stacks or runs from right to left; default: one glyph a character, side by side.</summary>
    public ImmutableArray<ShapedGlyph> Glyphs { get; init; }
}

/// <summary>
/// Widths of lettering in millimetres for a height of capitals. No kerning and no ligatures (the faces carry none), so a width
/// is the sum of the advances, in every writer; only scripts that join, stack or run from right to left are shaped. The font size is the
/// cap height over the face's cap ratio.
/// </summary>
public static class TextMeasure
{
    /// <summary>How far a letter reaches below the base line, as a part of the cap height.</summary>
    public const double DescentPerCap = 0.32;

    /// <summary>How far an accented capital or a bracket reaches above the base line, as a part of the cap height.</summary>
    public const double AscentPerCap = 1.12;

    /// <summary>The width of one line in millimetres.</summary>
    public static double Width(string text, double capHeightMm, FaceWeight weight = FaceWeight.Medium, FaceSet? faces = null)
    {
        var set = faces ?? FaceSet.Shipped;
        var shown = ShownText.Of(text);
        if (IsComplex(shown))
        {
            return ShapedRuns(shown, capHeightMm, weight, set).Sum(r => r.WidthMm);
        }

        double caps = 0;
        var current = -1;
        foreach (var rune in shown.EnumerateRunes())
        {
            var letter = Find(set, weight, rune.Value, current);
            current = letter.Face;
            caps += letter.Advance;
        }

        return caps * capHeightMm;
    }

    /// <summary>
    /// The width to keep free for one line: the wider of the shipped faces and DejaVu Sans at the same size, which a viewer
    /// without our faces takes. Draw with <see cref="Width"/>, place with this.
    /// </summary>
    public static double PlanWidth(string text, double capHeightMm, FaceWeight weight = FaceWeight.Medium, FaceSet? faces = null)
    {
        var set = faces ?? FaceSet.Shipped;
        var (own, fallback, current) = (0.0, 0.0, -1);
        foreach (var rune in ShownText.Of(text).EnumerateRunes())
        {
            var letter = Find(set, weight, rune.Value, current);
            current = letter.Face;
            own += letter.Advance;
            fallback += letter.PlanAdvance;
        }

        return Math.Max(own, fallback) * capHeightMm;
    }

    /// <summary>The text cut into runs of one face (and, where it matters, one direction) each, in reading order, as every writer draws it.</summary>
    public static ImmutableArray<TextRun> Runs(string text, double capHeightMm, FaceWeight weight = FaceWeight.Medium, FaceSet? faces = null)
    {
        var set = faces ?? FaceSet.Shipped;
        var shown = ShownText.Of(text);
        if (IsComplex(shown))
        {
            return ShapedRuns(shown, capHeightMm, weight, set);
        }

        var runs = ImmutableArray.CreateBuilder<TextRun>(1);
        int start = 0, at = 0, current = -1;
        double offset = 0, width = 0;
        foreach (var rune in shown.EnumerateRunes())
        {
            var letter = Find(set, weight, rune.Value, current);
            if (letter.Face != current && current >= 0)
            {
                Close(at);
            }

            current = letter.Face;
            width += letter.Advance * capHeightMm;
            at += rune.Utf16SequenceLength;
        }

        if (at > start)
        {
            Close(at);
        }

        return runs.ToImmutable();

        void Close(int end)
        {
            var face = set.Face(weight, current);
            runs.Add(new(shown[start..end], face, current, capHeightMm / face.CapRatio, offset, width));
            (start, offset, width) = (end, offset + width, 0);
        }
    }

    private static bool IsComplex(string shown) => !Ascii.IsValid(shown) && ScriptRuns.AnyComplex(shown);

    // a run is a stretch of one face and one direction; offsets are from left to right whatever the reading order
    private static ImmutableArray<TextRun> ShapedRuns(string shown, double capHeightMm, FaceWeight weight, FaceSet set)
    {
        Rune[] runes = [.. shown.EnumerateRunes()];
        var levels = ScriptRuns.Levels(runes);
        var runs = ImmutableArray.CreateBuilder<TextRun>();
        var runLevels = new List<int>();
        int start = 0, at = 0, current = -1;
        for (var i = 0; i < runes.Length; i++)
        {
            var face = Find(set, weight, runes[i].Value, current).Face;
            if (i > 0 && (face != current || levels[i] != levels[i - 1]))
            {
                Close(at, levels[i - 1]);
            }

            current = face;
            at += runes[i].Utf16SequenceLength;
        }

        Close(at, levels[^1]);
        var offset = 0.0;
        foreach (var place in ScriptRuns.LeftToRight(runLevels.ToArray()))
        {
            runs[place] = runs[place] with { OffsetMm = offset };
            offset += runs[place].WidthMm;
        }

        return runs.ToImmutable();

        void Close(int end, int level)
        {
            var face = set.Face(weight, current);
            var (glyphs, width) = face.Shaper.Shape(shown[start..end], level == 1, capHeightMm / face.CapRatio);
            runs.Add(new(shown[start..end], face, current, capHeightMm / face.CapRatio, 0, width) { Glyphs = glyphs });
            runLevels.Add(level);
            start = end;
        }
    }

    /// <summary>The box of a text item in the coordinates it is placed in, before any turn: ascent and descent included.</summary>
    public static Box Bounds(TextItem text, FaceSet? faces = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        var width = Width(text.Text, text.CapHeightMm, text.Weight, faces);
        var left = StartX(text, width);
        return Box.FromEdges(left, text.At.Y - text.CapHeightMm, left + width, text.At.Y + (text.CapHeightMm * DescentPerCap));
    }

    /// <summary>Where a text of a known width begins, from its anchor.</summary>
    public static double StartX(TextItem text, double widthMm)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Anchor switch
        {
            TextAnchor.Middle => text.At.X - (widthMm / 2),
            TextAnchor.End => text.At.X - widthMm,
            _ => text.At.X,
        };
    }

    // a space stays in the face of the letters before it, or a Greek or Cyrillic sentence would be one run a word
    private static Letter Find(FaceSet set, FaceWeight weight, int codePoint, int current) =>
        codePoint == ' ' && current > 0 && set.Face(weight, current).Glyph(' ') is > 0 and var space
            ? set.LetterOf(weight, current, ' ', space)
            : set.LetterOf(weight, codePoint);
}
