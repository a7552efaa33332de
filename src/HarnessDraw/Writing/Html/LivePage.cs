using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Writing.Svg;

namespace HarnessDraw.Writing.Html;

/// <summary>
/// NAME.html: the wall chart and the connector faces as one page that can be searched, pressed and stepped through, with nothing fetched from
/// anywhere. The policy in the file allows its own style and script by their hashes and nothing else.
/// </summary>
public static class LivePage
{
    /// <summary>The whole file, UTF-8 without a mark, LF; the same bytes for the same set.</summary>
    public static byte[] Write(DrawingSet set, DrawOrder order)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentNullException.ThrowIfNull(order);
        var plan = set.Planned.Plan;
        var (style, script) = (PageParts.Style, PageParts.Script);
        var page = PageParts.Fill(name => name switch
        {
            "language" => Text(plan.Harness.Drawing.Language),
            "title" => Text(plan.Harness.Title),
            "vehicle" => Text(plan.Harness.Vehicle),
            "policy" => $"default-src 'none'; script-src '{Hash(script)}'; style-src '{Hash(style)}'; img-src data:; base-uri 'none'; form-action 'none'",
            "style" => style,
            "script" => script,
            "data" => Packed(LivePageData.Of(plan, order.Build)),
            "charts" => Charts(set, order.Faces),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "no part of the page"),
        });
        return new UTF8Encoding(false).GetBytes(page);
    }

    /// <summary>Text of a description inside the page: no character of it can open or close an element or an attribute.</summary>
    internal static string Text(string text) =>
        SvgItemWriter.Safe(text).Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal).Replace("'", "&#39;", StringComparison.Ordinal);

    /// <summary>Deflated, in base64: the table of faults would not fit otherwise.</summary>
    private static string Packed(string text)
    {
        using var packed = new MemoryStream();
        using (var deflate = new DeflateStream(packed, CompressionLevel.SmallestSize))
        {
            deflate.Write(Encoding.UTF8.GetBytes(text));
        }

        return Convert.ToBase64String(packed.ToArray());
    }

    private static string Hash(string content) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(content)));

    private static string Charts(DrawingSet set, FaceSet faces)
    {
        var charts = new StringBuilder();
        var n = 0;
        foreach (var sheet in set.Sheets.Where(s => s.Name is SheetKinds.WallChart or SheetKinds.Connectors).OrderBy(s => s.Name == SheetKinds.WallChart ? 0 : 1).GroupBy(s => s.BlackInk).Take(1).SelectMany(s => s))
        {
            var part = $"s{(++n).ToString(CultureInfo.InvariantCulture)}-";
            var svg = Encoding.UTF8.GetString(SvgWriter.Write(sheet, new SvgOptions { PagePart = part, Faces = faces }));
            var name = (sheet.Name == SheetKinds.WallChart ? "chart" : "faces") + (sheet.Number is { } page ? " " + page.ToString(CultureInfo.InvariantCulture) : "");
            charts.Append(CultureInfo.InvariantCulture, $"<section class=\"drawing\" data-name=\"{name}\" data-heading=\"{Text(sheet.Title)}\">\n");
            charts.Append(svg.AsSpan(svg.IndexOf("<svg", StringComparison.Ordinal))).Append("</section>\n");
        }

        return charts.ToString();
    }
}
