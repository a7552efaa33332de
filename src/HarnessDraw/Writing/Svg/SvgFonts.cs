using System.Globalization;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>How an SVG names its faces, and how they are put into it.</summary>
internal static class SvgFonts
{
    /// <summary>The family list beginning with the face at <paramref name="first"/>; the rest of the set and two general faces follow.</summary>
    public static string FamilyList(FaceSet faces, int first)
    {
        var names = Enumerable.Range(0, faces.Count)
            .OrderBy(i => i == first ? -1 : i)
            .Select(i => Quoted(faces.Face(FaceWeight.Medium, i).Family));
        return string.Join(", ", names.Append("'DejaVu Sans'").Append("sans-serif"));
    }

    /// <summary>A style element with the faces that the sheet's lettering uses.</summary>
    public static void WriteStyle(SvgXml xml, Sheet sheet, FaceSet faces)
    {
        var used = new SortedSet<(int Index, FaceWeight Weight)>();
        Collect(sheet.Items, faces, used);
        xml.Start("style");
        foreach (var (index, weight) in used)
        {
            var face = faces.Face(weight, index);
            xml.Text($"\n@font-face{{font-family:{Quoted(face.Family)};font-weight:{((int)weight).ToString(CultureInfo.InvariantCulture)};src:url(data:font/ttf;base64,");
            xml.Text(Convert.ToBase64String(face.Bytes.Span));
            xml.Text(")}");
        }

        xml.End();
    }

    // a family name from a user's font file must not end the quotation
    private static string Quoted(string family) => $"'{new string([.. family.Where(c => char.IsLetterOrDigit(c) || c is ' ' or '-')])}'";

    private static void Collect(IEnumerable<Item> items, FaceSet faces, SortedSet<(int Index, FaceWeight Weight)> used)
    {
        foreach (var item in items)
        {
            if (item is GroupItem group)
            {
                Collect(group.Items, faces, used);
            }
            else if (item is TextItem text)
            {
                used.UnionWith(TextMeasure.Runs(text.Text, text.CapHeightMm, text.Weight, faces).Select(r => (r.FaceIndex, text.Weight)));
            }
        }
    }
}
