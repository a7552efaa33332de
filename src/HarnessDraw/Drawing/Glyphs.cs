using System.Collections.Immutable;
using System.Text;

namespace HarnessDraw.Drawing;

/// <summary>Which characters can be drawn with the faces at hand.</summary>
public static class Glyphs
{
    /// <summary>The characters of a text that no face has, each once, in code point order; empty when all can be drawn.</summary>
    public static ImmutableArray<string> Missing(string text, FaceSet? faces = null)
    {
        var set = faces ?? FaceSet.Shipped;
        return [.. ShownText.Of(text).EnumerateRunes()
            .Where(r => set.Find(FaceWeight.Medium, r.Value).Glyph == 0)
            .Distinct()
            .OrderBy(r => r.Value)
            .Select(r => r.ToString())];
    }

    /// <summary>A character as a message names it: 'U+3042'.</summary>
    public static string CodePoint(string character)
    {
        ArgumentException.ThrowIfNullOrEmpty(character);
        return Rune.DecodeFromUtf16(character, out var rune, out _) == System.Buffers.OperationStatus.Done ? $"U+{rune.Value:X4}" : "U+FFFD";
    }
}
