using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace HarnessDraw.Tests.Writing;

/// <summary>A PDF as text in which everything can be looked for: the file and what its object streams hold (ISO 32000-1, 7.5.7).</summary>
internal static partial class PdfText
{
    public static string Of(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        var all = new StringBuilder(text);
        foreach (Match head in ObjectStream().Matches(text))
        {
            using var packed = new MemoryStream(pdf, head.Index + head.Length, int.Parse(head.Groups[1].Value, CultureInfo.InvariantCulture));
            using var inflate = new ZLibStream(packed, CompressionMode.Decompress);
            using var reader = new StreamReader(inflate, Encoding.Latin1);
            all.Append(reader.ReadToEnd());
        }

        return all.ToString();
    }

    [GeneratedRegex(@"/Type /ObjStm[^>]*/Length (\d+)>> stream\n", RegexOptions.CultureInvariant)]
    private static partial Regex ObjectStream();
}
