using System.Buffers;
using System.Text;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>
/// XML of an SVG file, put straight into UTF-8 bytes: elements, attributes and text one after the other, escaped after XML 1.0 (W3C, fifth edition, 2.2 and 2.4),
/// byte for byte as <see cref="System.Xml.XmlWriter"/> writes it with line ends left alone. Disposing gives the memory back.
/// </summary>
public sealed class SvgXml : IDisposable
{
    private const int PieceChars = 4096;
    private const int BytesPerChar = 6;
    private static readonly SearchValues<char> Plain = SearchValues.Create(Enumerable.Range(' ', 0x7F - ' ').Select(c => (char)c).Except("&<>\"").ToArray());
    private readonly ByteBlocks bytes = new();
    private readonly Stack<string> open = new();
    private bool inTag;

    /// <summary>Begins with the declaration of a UTF-8 file.</summary>
    public SvgXml() => Raw("<?xml version=\"1.0\" encoding=\"utf-8\"?>");

    /// <summary>Begins an element within the one that is open.</summary>
    public void Start(string element)
    {
        CloseTag();
        Raw("<");
        Raw(element);
        open.Push(element);
        inTag = true;
    }

    /// <summary>Ends the innermost element, in short when nothing stands in it.</summary>
    public void End()
    {
        var element = open.Pop();
        if (inTag)
        {
            Raw(" />");
            inTag = false;
            return;
        }

        Raw("</");
        Raw(element);
        Raw(">");
    }

    /// <summary>An attribute of the element just begun; its name may carry a prefix that was declared.</summary>
    /// <exception cref="ArgumentException">The value has a character that no XML file can hold.</exception>
    public void Attribute(string name, ReadOnlySpan<char> value)
    {
        BeginAttribute(name);
        Escaped(value, quoted: true);
        EndAttribute();
    }

    /// <summary>A number as <see cref="SvgNumber"/> writes it.</summary>
    public void Attribute(string name, double value)
    {
        BeginAttribute(name);
        Number(value);
        EndAttribute();
    }

    public void Attribute(string name, Rgb colour)
    {
        BeginAttribute(name);
        Raw("#");
        Convert.TryToHexString([colour.R, colour.G, colour.B], Room(6), out var taken);
        Took(taken);
        EndAttribute();
    }

    /// <summary>Begins an attribute whose value follows as numbers and letters that need no escape.</summary>
    public void BeginAttribute(string name)
    {
        Raw(" ");
        Raw(name);
        Raw("=\"");
    }

    public void EndAttribute() => Raw("\"");

    /// <summary>Text within the open element.</summary>
    /// <exception cref="ArgumentException">The text has a character that no XML file can hold.</exception>
    public void Text(ReadOnlySpan<char> text)
    {
        CloseTag();
        Escaped(text, quoted: false);
    }

    /// <summary>Letters that need no escape, as they are.</summary>
    public void Raw(ReadOnlySpan<char> ascii)
    {
        while (ascii.Length > 0)
        {
            var piece = ascii[..Math.Min(PieceChars, ascii.Length)];
            Ascii.FromUtf16(piece, Room(piece.Length), out var taken);
            Took(taken);
            ascii = ascii[piece.Length..];
        }
    }

    public void Number(double value) => Took(SvgNumber.Format(SvgNumber.Thousandths(value), Room(SvgNumber.MostDigits)));

    /// <summary>Room for so many bytes, which are then told to <see cref="Took"/>.</summary>
    public Span<byte> Room(int length) => bytes.GetSpan(length);

    public void Took(int length) => bytes.Advance(length);

    /// <summary>All that was written.</summary>
    public byte[] ToArray() => bytes.ToArray();

    public void Dispose() => bytes.Dispose();

    private void CloseTag()
    {
        if (inTag)
        {
            Raw(">");
            inTag = false;
        }
    }

    private void Escaped(ReadOnlySpan<char> text, bool quoted)
    {
        while (text.Length > 0)
        {
            var plain = text.IndexOfAnyExcept(Plain);
            Raw(plain < 0 ? text : text[..plain]);
            if (plain < 0)
            {
                return;
            }

            text = text[plain..];
            text = text[EscapeFirst(text, quoted)..];
        }
    }

    // how many characters were taken
    private int EscapeFirst(ReadOnlySpan<char> text, bool quoted)
    {
        switch (text[0])
        {
            case '&':
                Raw("&amp;");
                return 1;
            case '<':
                Raw("&lt;");
                return 1;
            case '>':
                Raw("&gt;");
                return 1;
            case '"' when quoted:
                Raw("&quot;");
                return 1;
        }

        if (Rune.DecodeFromUtf16(text, out var rune, out var taken) != OperationStatus.Done || rune.Value is (< ' ' and not ('\t' or '\n' or '\r')) or 0xFFFE or 0xFFFF)
        {
            throw new ArgumentException($"U+{(int)text[0]:X4} cannot stand in an XML file", nameof(text));
        }

        Took(rune.EncodeToUtf8(Room(BytesPerChar)));
        return taken;
    }
}
