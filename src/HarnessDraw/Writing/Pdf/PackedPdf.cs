using System.Buffers;
using System.Buffers.Binary;
using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace HarnessDraw.Writing.Pdf;

/// <summary>
/// Writes objects as a file whose pages, links and bookmarks lie compressed in object streams (ISO 32000-1, 7.5.7), found by a cross-reference stream (7.5.8). What is a stream stays as it is.
/// </summary>
internal sealed class PackedPdf
{
    // a reader unpacks a whole stream for the first object it wants of it
    private const int Together = 200;
    private readonly ArrayBufferWriter<byte> file = new();
    private readonly SortedDictionary<int, (byte Kind, int Where, ushort Index)> entries = new() { [0] = (0, 0, ushort.MaxValue) };

    public static byte[] Write(PdfObjects objects)
    {
        var packed = new PackedPdf();

        // the second line tells programs that move files that this one is not text (7.5.2)
        packed.Put("%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n");
        foreach (var (number, body) in objects.Bodies.Where(o => IsStream(o.Value)))
        {
            packed.Object(number, body);
        }

        var next = objects.NextNumber;
        foreach (var chunk in objects.Bodies.Where(o => !IsStream(o.Value)).Chunk(Together))
        {
            packed.ObjectStream(next++, chunk);
        }

        packed.CrossReference(next, objects);
        return packed.file.WrittenSpan.ToArray();
    }

    private static bool IsStream(string body) => body.EndsWith("endstream", StringComparison.Ordinal);

    private void Object(int number, string body)
    {
        entries[number] = (1, file.WrittenCount, 0);
        Put(string.Create(CultureInfo.InvariantCulture, $"{number} 0 obj\n{body}\nendobj\n"));
    }

    private void ObjectStream(int number, KeyValuePair<int, string>[] objects)
    {
        var head = new StringBuilder();
        var bodies = new StringBuilder();
        for (var i = 0; i < objects.Length; i++)
        {
            entries[objects[i].Key] = (2, number, (ushort)i);
            head.Append(CultureInfo.InvariantCulture, $"{objects[i].Key} {bodies.Length} ");
            bodies.Append(objects[i].Value).Append('\n');
        }

        Stream(number, string.Create(CultureInfo.InvariantCulture, $"/Type /ObjStm\n/N {objects.Length}\n/First {head.Length}"), Encoding.Latin1.GetBytes($"{head}{bodies}"));
    }

    // each row: its kind, an offset or the stream that holds it, and its place in there
    private void CrossReference(int number, PdfObjects objects)
    {
        var start = file.WrittenCount;
        entries[number] = (1, start, 0);
        var rows = new byte[7 * (number + 1)];
        for (var i = 0; i <= number; i++)
        {
            var (kind, where, index) = entries.GetValueOrDefault(i, entries[0]);
            var row = rows.AsSpan(7 * i);
            row[0] = kind;
            BinaryPrimitives.WriteInt32BigEndian(row[1..], where);
            BinaryPrimitives.WriteUInt16BigEndian(row[5..], index);
        }

        var info = objects.Info is { } about ? $"\n/Info {PdfObjects.Reference(about)}" : "";
        Stream(number, string.Create(CultureInfo.InvariantCulture, $"/Type /XRef\n/Size {number + 1}\n/W [1 4 2]\n/Root {PdfObjects.Reference(objects.Root)}{info}"), rows);
        Put(string.Create(CultureInfo.InvariantCulture, $"startxref\n{start}\n%%EOF\n"));
    }

    private void Stream(int number, string keys, byte[] content)
    {
        using var data = new MemoryStream();
        using (var deflate = new ZLibStream(data, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            deflate.Write(content);
        }

        Object(number, string.Create(CultureInfo.InvariantCulture, $"<<{keys}\n/Filter /FlateDecode\n/Length {data.Length}>> stream\n{Encoding.Latin1.GetString(data.ToArray())}\nendstream"));
    }

    private void Put(string text) => Encoding.Latin1.GetBytes(text, file);
}
