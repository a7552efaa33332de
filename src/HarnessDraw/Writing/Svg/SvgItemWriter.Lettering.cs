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
            xml.Start("g");
            WriteTitle(text.Tag);
        }

        var runs = TextMeasure.Runs(text.Text, text.CapHeightMm, text.Weight, options.Faces);
        var width = runs.Sum(r => r.WidthMm);
        xml.Start("text");
        WriteTag(text.Tag);
        xml.Attribute("x", text.At.X);
        xml.Attribute("y", text.At.Y);
        if (text.Anchor != TextAnchor.Start)
        {
            xml.Attribute("text-anchor", text.Anchor == TextAnchor.End ? "end" : "middle");
        }

        if (text.TurnDegrees != 0)
        {
            xml.Attribute("transform", $"rotate({SvgNumber.Text(text.TurnDegrees)} {SvgNumber.Text(text.At.X)} {SvgNumber.Text(text.At.Y)})");
        }

        if (text.Weight != FaceWeight.Medium)
        {
            xml.Attribute("font-weight", ((int)text.Weight).ToString(CultureInfo.InvariantCulture));
        }

        // a page says once for all its texts what they have in common
        var inPage = options.PagePart is not null;
        if (!inPage || text.Colour != Ink.Black)
        {
            xml.Attribute("fill", text.Colour);
        }

        if (width > 0)
        {
            xml.Attribute("textLength", width);
            if (!inPage)
            {
                xml.Attribute("lengthAdjust", "spacingAndGlyphs");
            }
        }

        if (NeedsSpaces(runs))
        {
            xml.Attribute("xml:space", "preserve");
        }

        // the size of the first face stands at the text, for readers that do not look into spans
        var first = options.Faces.Face(text.Weight, 0);
        xml.Attribute("font-size", runs.Length == 1 ? runs[0].SizeMm : text.CapHeightMm / first.CapRatio);
        if (runs.Length == 1)
        {
            WriteFace(runs[0]);
            xml.Text(runs[0].Text);
        }
        else
        {
            WriteSpans(runs);
        }

        xml.End();
        if (titled)
        {
            xml.End();
        }
    }

    // the spans flow on from each other: with places of their own they would be texts of their own to many readers
    private void WriteSpans(ImmutableArray<TextRun> runs)
    {
        foreach (var run in runs)
        {
            xml.Start("tspan");
            WriteFace(run);
            if (run.FaceIndex > 0)
            {
                xml.Attribute("font-size", run.SizeMm);
            }

            xml.Text(run.Text);
            xml.End();
        }
    }

    private void WriteFace(TextRun run)
    {
        if (run.FaceIndex > 0)
        {
            xml.Attribute("font-family", SvgFonts.FamilyList(options.Faces, run.FaceIndex));
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
