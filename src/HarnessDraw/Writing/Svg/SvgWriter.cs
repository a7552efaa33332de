using System.Globalization;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>A sheet as an SVG file: user units are millimetres on paper, text stays text, widths of text are fixed.</summary>
public static class SvgWriter
{
    private const string SvgNamespace = "http://www.w3.org/2000/svg";
    private const string LinkNamespace = "http://www.w3.org/1999/xlink";

    /// <summary>The whole file, UTF-8 without a byte order mark, the same bytes for the same sheet.</summary>
    public static byte[] Write(Sheet sheet, SvgOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        options ??= new SvgOptions();
        using var xml = new SvgXml();
        xml.Start("svg");
        WriteRootAttributes(xml, sheet, options);
        xml.Start("title");
        xml.Text(ShownText.Of(sheet.Title));
        xml.End();
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
        xml.Text("\n");
        xml.End();
        xml.Text("\n");
        return xml.ToArray();
    }

    private static void WriteRootAttributes(SvgXml xml, Sheet sheet, SvgOptions options)
    {
        xml.Attribute("xmlns:xlink", LinkNamespace);
        var (width, height) = (SvgNumber.Text(sheet.Paper.WidthMm), SvgNumber.Text(sheet.Paper.HeightMm));
        xml.Attribute("width", width + "mm");
        xml.Attribute("height", height + "mm");
        xml.Attribute("viewBox", $"0 0 {width} {height}");
        xml.Attribute("lang", SvgItemWriter.Safe(sheet.Language));
        xml.Attribute("font-family", SvgFonts.FamilyList(options.Faces, 0));
        xml.Attribute("font-weight", ((int)FaceWeight.Medium).ToString(CultureInfo.InvariantCulture));
        xml.Attribute("fill", "none");
        xml.Attribute("stroke-linejoin", "round");
        xml.Attribute("xmlns", SvgNamespace);
    }
}
