using System.Collections.Immutable;
using System.Runtime.InteropServices;
using HarfBuzzSharp;

namespace HarnessDraw.Drawing;

/// <summary>A glyph of a shaped run: its number in the face, where it stands from the run's start and base line (mm, y downwards), and the first UTF-16 unit it draws.</summary>
public readonly record struct ShapedGlyph(int Glyph, double XMm, double YMm, int From);

/// <summary>Letters of scripts whose signs join, stack or run from right to left, set by HarfBuzz with one face.</summary>
internal sealed class TextShaper : IDisposable
{
    // the font reads the bytes as long as it lives: they are held in place, as bytes handed over by stream are freed at the next collection
    private readonly GCHandle held;
    private readonly Blob blob;
    private readonly Face face;
    private readonly Font font;
    private readonly double unitsPerEm;

    public TextShaper(FontFile file)
    {
        held = GCHandle.Alloc(file.Bytes.ToArray(), GCHandleType.Pinned);
        blob = new Blob(held.AddrOfPinnedObject(), file.Bytes.Length, MemoryMode.ReadOnly);
        face = new Face(blob, 0);
        unitsPerEm = file.UnitsPerEm;
        font = new Font(face);
        font.SetScale(file.UnitsPerEm, file.UnitsPerEm);
        font.SetFunctionsOpenType();
    }

    /// <summary>Gives the bytes back; a face of the program keeps its shaper for the whole run.</summary>
    public void Dispose()
    {
        font.Dispose();
        face.Dispose();
        blob.Dispose();
        held.Free();
    }

    /// <summary>The glyphs of a text in one script and direction, from left to right, and their width for a size of the em in millimetres.</summary>
    public (ImmutableArray<ShapedGlyph> Glyphs, double WidthMm) Shape(string text, bool rightToLeft, double sizeMm)
    {
        using var buffer = new HarfBuzzSharp.Buffer();
        buffer.AddUtf16(text);
        buffer.GuessSegmentProperties();
        buffer.Direction = rightToLeft ? Direction.RightToLeft : Direction.LeftToRight;
        lock (font)
        {
            font.Shape(buffer);
        }

        var (infos, places, unit, at) = (buffer.GlyphInfos, buffer.GlyphPositions, sizeMm / unitsPerEm, 0.0);
        var glyphs = ImmutableArray.CreateBuilder<ShapedGlyph>(infos.Length);
        for (var i = 0; i < infos.Length; i++)
        {
            glyphs.Add(new((int)infos[i].Codepoint, at + (places[i].XOffset * unit), -places[i].YOffset * unit, (int)infos[i].Cluster));
            at += places[i].XAdvance * unit;
        }

        return (glyphs.ToImmutable(), at);
    }
}
