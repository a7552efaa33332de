using System.Globalization;
using System.Text;
using System.Xml;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>A sheet as an SVG file: user units are millimetres on paper, text stays text, widths of text are fixed.</summary>
public static class SvgWriter
{
    internal const string SvgNamespace = "http://www.w3.org/2000/svg";
    internal const string LinkNamespace = "http://www.w3.org/1999/xlink";

    /// <summary>The whole file, UTF-8 without a byte order mark, the same bytes for the same sheet.</summary>
    public static byte[] Write(Sheet sheet, SvgOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        options ??= new SvgOptions();
        using var stream = new MemoryStream(64 * 1024);
        var settings = new XmlWriterSettings { Encoding = new UTF8Encoding(false), NewLineChars = "\n", NewLineHandling = NewLineHandling.None };
        using (var xml = XmlWriter.Create(stream, settings))
        {
            xml.WriteStartElement("svg", SvgNamespace);
            WriteRootAttributes(xml, sheet, options);
            xml.WriteElementString("title", SvgNamespace, ShownText.Of(sheet.Title));
            if (options.EmbedFonts)
            {
                SvgFonts.WriteStyle(xml, sheet, options.Faces);
            }

            var writer = new SvgItemWriter(xml, options);
            if (options.PagePart is null)
            {
                // a page for a browser has its own paper
                writer.WritePaper(sheet.Paper);
            }

            writer.WriteAll(sheet.Items);
            xml.WriteWhitespace("\n");
            xml.WriteEndElement();
            xml.WriteWhitespace("\n");
        }

        return stream.ToArray();
    }

    private static void WriteRootAttributes(XmlWriter xml, Sheet sheet, SvgOptions options)
    {
        xml.WriteAttributeString("xmlns", "xlink", null, LinkNamespace);
        var (width, height) = (SvgNumber.Text(sheet.Paper.WidthMm), SvgNumber.Text(sheet.Paper.HeightMm));
        xml.WriteAttributeString("width", width + "mm");
        xml.WriteAttributeString("height", height + "mm");
        xml.WriteAttributeString("viewBox", $"0 0 {width} {height}");
        xml.WriteAttributeString("lang", SvgItemWriter.Safe(sheet.Language));
        xml.WriteAttributeString("font-family", SvgFonts.FamilyList(options.Faces, 0));
        xml.WriteAttributeString("font-weight", ((int)FaceWeight.Medium).ToString(CultureInfo.InvariantCulture));
        xml.WriteAttributeString("fill", "none");
        xml.WriteAttributeString("stroke-linejoin", "round");
    }
}
