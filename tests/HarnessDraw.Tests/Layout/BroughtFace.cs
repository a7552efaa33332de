using System.Buffers.Binary;
using HarnessDraw.Drawing;

namespace HarnessDraw.Tests.Layout;

/// <summary>
/// A small face made for a test: the outlines of a shipped one under a character map of its own (OpenType 'cmap', format 12), so that every character asked for is drawn by a
/// glyph of its own: a Cyrillic letter, at most 32 of them.
/// </summary>
internal static class BroughtFace
{
    private const char First = 'А';
    private const int Most = 32;

    public static FontFile Of(string characters)
    {
        var source = FaceSet.Shipped.Face(FaceWeight.Medium, 1);
        int[] codes = [.. characters.EnumerateRunes().Select(r => r.Value).Distinct().Order()];
        Assert.InRange(codes.Length, 1, Most);
        return new(WithMap(source.Bytes.Span, codes, [.. codes.Select((_, i) => source.Glyph(First + i))]), "Brought Face");
    }

    private static byte[] WithMap(ReadOnlySpan<byte> font, int[] codes, int[] glyphs)
    {
        var map = Map(codes, glyphs);
        var count = BinaryPrimitives.ReadUInt16BigEndian(font[4..]);
        var head = font[..(12 + (16 * count))].ToArray();
        var body = new List<byte>();
        for (var i = 0; i < count; i++)
        {
            var entry = head.AsSpan(12 + (16 * i), 16);
            var (offset, length) = ((int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]), (int)BinaryPrimitives.ReadUInt32BigEndian(entry[12..]));
            var table = entry[..4].SequenceEqual("cmap"u8) ? map : font.Slice(offset, length).ToArray();
            BinaryPrimitives.WriteUInt32BigEndian(entry[8..], (uint)(head.Length + body.Count));
            BinaryPrimitives.WriteUInt32BigEndian(entry[12..], (uint)table.Length);
            body.AddRange(table);
            while (body.Count % 4 != 0)
            {
                body.Add(0);
            }
        }

        return [.. head, .. body];
    }

    // one subtable for platform 3, encoding 10: a group a character
    private static byte[] Map(int[] codes, int[] glyphs)
    {
        var table = new byte[12 + 16 + (12 * codes.Length)];
        Write16(2, 1);
        Write16(4, 3);
        Write16(6, 10);
        Write32(8, 12);
        Write16(12, 12);
        Write32(16, table.Length - 12);
        Write32(24, codes.Length);
        for (var i = 0; i < codes.Length; i++)
        {
            Write32(28 + (12 * i), codes[i]);
            Write32(32 + (12 * i), codes[i]);
            Write32(36 + (12 * i), glyphs[i]);
        }

        return table;

        void Write16(int at, int value) => BinaryPrimitives.WriteUInt16BigEndian(table.AsSpan(at), (ushort)value);

        void Write32(int at, int value) => BinaryPrimitives.WriteUInt32BigEndian(table.AsSpan(at), (uint)value);
    }
}
