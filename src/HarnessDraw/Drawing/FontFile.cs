using System.Buffers.Binary;

namespace HarnessDraw.Drawing;

/// <summary>The few tables of a TrueType or OpenType file that measuring needs; widths in thousandths are never rounded, they come as parts of an em.</summary>
public sealed class FontFile
{
    private const double LeastCapRatio = 0.66;
    private readonly byte[] data;
    private readonly int hmtx;
    private readonly int metricsCount;
    private readonly int cmap;
    private readonly int cmapFormat;
    private readonly double unitsPerEm;
    private readonly Lazy<TextShaper> shaper;

    /// <summary>Reads the table directory; throws <see cref="InvalidDataException"/> when the bytes are no font this program can measure.</summary>
    public FontFile(byte[] data, string family)
    {
        ArgumentNullException.ThrowIfNull(data);
        this.data = data;
        shaper = new(() => new(this));
        Family = family;
        try
        {
            var head = Table("head"u8);
            var hhea = Table("hhea"u8);
            hmtx = Table("hmtx"u8);
            unitsPerEm = U16(head + 18);
            metricsCount = U16(hhea + 34);
            Ascent = I16(hhea + 4) / unitsPerEm;
            Descent = -I16(hhea + 6) / unitsPerEm;
            (cmap, cmapFormat) = PickCharacterMap(Table("cmap"u8));
            CapRatio = ReadCapRatio();
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw new InvalidDataException("the font file is cut short", e);
        }

        if (unitsPerEm < 16 || metricsCount == 0)
        {
            throw new InvalidDataException("the font file has no usable metrics");
        }
    }

    /// <summary>The family name written into drawings.</summary>
    public string Family { get; }

    /// <summary>Height of capitals as a part of the em (OS/2 sCapHeight).</summary>
    public double CapRatio { get; }

    /// <summary>The units that the face divides an em into.</summary>
    public int UnitsPerEm => (int)unitsPerEm;

    /// <summary>Highest and deepest extent of a line of text as parts of the em, both positive.</summary>
    public double Ascent { get; }

    public double Descent { get; }

    /// <summary>Sets letters that join, stack or run from right to left; made when it is first asked for.</summary>
    internal TextShaper Shaper => shaper.Value;

    /// <summary>The whole file.</summary>
    public ReadOnlyMemory<byte> Bytes => data;

    /// <summary>The glyph of a character, or 0 when the face lacks it.</summary>
    public int Glyph(int codePoint) => cmapFormat == 12 ? GlyphInGroups(codePoint) : GlyphInSegments(codePoint);

    /// <summary>The advance of a glyph in the face's own units.</summary>
    public int AdvanceUnits(int glyph) => U16(hmtx + (4 * Math.Min(glyph, metricsCount - 1)));

    /// <summary>The advance of a glyph as a part of the em.</summary>
    public double Advance(int glyph) => U16(hmtx + (4 * Math.Min(glyph, metricsCount - 1))) / unitsPerEm;

    /// <summary>Looks up every character of the basic plane once, so that a broken file is known before anything is drawn.</summary>
    internal void Probe()
    {
        try
        {
            for (var code = 0; code <= 0xFFFF; code++)
            {
                _ = Advance(Glyph(code));
            }
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw new InvalidDataException("the font file is cut short", e);
        }
    }

    // a face that says its capitals are tiny would be set larger than the room kept for letters that the shipped faces lack, an em of theirs
    private double ReadCapRatio()
    {
        var os2 = Table("OS/2"u8);
        var cap = U16(os2) >= 2 ? I16(os2 + 88) : 0;
        return cap > 0 ? Math.Max(LeastCapRatio, cap / unitsPerEm) : 0.7;
    }

    private (int Offset, int Format) PickCharacterMap(int table)
    {
        var best = (Offset: 0, Format: 0);
        for (var i = 0; i < U16(table + 2); i++)
        {
            var offset = table + (int)U32(table + 8 + (8 * i));
            var format = U16(offset);
            if ((format == 12 || format == 4) && format > best.Format)
            {
                best = (offset, format);
            }
        }

        return best.Format == 0 ? throw new InvalidDataException("the font file has no Unicode character map") : best;
    }

    private int GlyphInSegments(int code)
    {
        if (code > 0xFFFF)
        {
            return 0;
        }

        int twice = U16(cmap + 6), low = 0, high = (twice / 2) - 1;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (U16(cmap + 14 + (2 * middle)) < code)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        var start = U16(cmap + 16 + twice + (2 * low));
        if (code < start || code > U16(cmap + 14 + (2 * low)))
        {
            return 0;
        }

        var delta = U16(cmap + 16 + (2 * twice) + (2 * low));
        var at = cmap + 16 + (3 * twice) + (2 * low);
        var range = U16(at);
        if (range == 0)
        {
            return (code + delta) & 0xFFFF;
        }

        var glyph = U16(at + range + (2 * (code - start)));
        return glyph == 0 ? 0 : (glyph + delta) & 0xFFFF;
    }

    private int GlyphInGroups(int code)
    {
        int low = 0, high = (int)U32(cmap + 12) - 1;
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var group = cmap + 16 + (12 * middle);
            if (code < U32(group))
            {
                high = middle - 1;
            }
            else if (code > U32(group + 4))
            {
                low = middle + 1;
            }
            else
            {
                return (int)(U32(group + 8) + (uint)code - U32(group));
            }
        }

        return 0;
    }

    private int Table(ReadOnlySpan<byte> tag)
    {
        for (var i = 0; i < U16(4); i++)
        {
            var entry = 12 + (16 * i);
            if (data.AsSpan(entry, 4).SequenceEqual(tag))
            {
                return (int)U32(entry + 8);
            }
        }

        throw new InvalidDataException($"the font file has no table '{System.Text.Encoding.ASCII.GetString(tag)}'");
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(data.AsSpan(at, 2));

    private int I16(int at) => BinaryPrimitives.ReadInt16BigEndian(data.AsSpan(at, 2));

    private uint U32(int at) => BinaryPrimitives.ReadUInt32BigEndian(data.AsSpan(at, 4));
}
