using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <content>Texts: one element each, of fixed width; a text in two faces has a span a face.</content>
internal sealed partial class SvgItemWriter
{
    // a title beside, not inside, the text: some readers take every character inside a text for lettering
    private void WriteText(TextItem text)
    {
        var titled = text.Tag?.Title is not null;
        if (titled)
        {
            Start("g");
            WriteTitle(text.Tag);
        }

        var runs = TextMeasure.Runs(text.Text, text.CapHeightMm, text.Weight, options.Faces);
        var width = runs.Sum(r => r.WidthMm);
        Start("text");
        WriteTag(text.Tag);
        Number("x", text.At.X);
        Number("y", text.At.Y);
        if (text.Anchor != TextAnchor.Start)
        {
            xml.WriteAttributeString("text-anchor", text.Anchor == TextAnchor.End ? "end" : "middle");
        }

        if (text.TurnDegrees != 0)
        {
            xml.WriteAttributeString("transform", $"rotate({SvgNumber.Text(text.TurnDegrees)} {SvgNumber.Text(text.At.X)} {SvgNumber.Text(text.At.Y)})");
        }

        if (text.Weight != FaceWeight.Medium)
        {
            xml.WriteAttributeString("font-weight", ((int)text.Weight).ToString(CultureInfo.InvariantCulture));
        }

        // a page says once for all its texts what they have in common
        var inPage = options.PagePart is not null;
        if (!inPage || text.Colour != Ink.Black)
        {
            xml.WriteAttributeString("fill", text.Colour.ToString());
        }

        if (width > 0)
        {
            Number("textLength", width);
            if (!inPage)
            {
                xml.WriteAttributeString("lengthAdjust", "spacingAndGlyphs");
            }
        }

        if (NeedsSpaces(runs))
        {
            xml.WriteAttributeString("xml", "space", null, "preserve");
        }

        // the size of the first face stands at the text, for readers that do not look into spans
        var first = options.Faces.Face(text.Weight, 0);
        Number("font-size", runs.Length == 1 ? runs[0].SizeMm : text.CapHeightMm / first.CapRatio);
        if (runs.Length == 1)
        {
            WriteFace(runs[0]);
            xml.WriteString(runs[0].Text);
        }
        else
        {
            WriteSpans(runs);
        }

        xml.WriteEndElement();
        if (titled)
        {
            xml.WriteEndElement();
        }
    }

    // the spans flow on from each other: with places of their own they would be texts of their own to many readers
    private void WriteSpans(ImmutableArray<TextRun> runs)
    {
        foreach (var run in runs)
        {
            Start("tspan");
            WriteFace(run);
            if (run.FaceIndex > 0)
            {
                Number("font-size", run.SizeMm);
            }

            xml.WriteString(run.Text);
            xml.WriteEndElement();
        }
    }

    private void WriteFace(TextRun run)
    {
        if (run.FaceIndex > 0)
        {
            xml.WriteAttributeString("font-family", SvgFonts.FamilyList(options.Faces, run.FaceIndex));
        }
    }

    // a space at the end of a span is one within the text, but some readers trim every span
    private static bool NeedsSpaces(ImmutableArray<TextRun> runs)
    {
        foreach (var run in runs)
        {
            if (run.Text.StartsWith(' ') || run.Text.EndsWith(' ') || run.Text.Contains("  ", StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }
}
