using System.Globalization;
using System.Text;
using System.Xml;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>Writes the items of one sheet; holds what must be unique within the file (ids).</summary>
internal sealed partial class SvgItemWriter(XmlWriter xml, SvgOptions options)
{
    private readonly StringBuilder work = new();
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);
    private int clips;

    public void WriteAll(IEnumerable<Item> items)
    {
        foreach (var item in items)
        {
            Write(item);
        }
    }

    /// <summary>The sheet of paper: a viewer with a dark ground would show black on black without it.</summary>
    public void WritePaper(Paper paper)
    {
        xml.WriteWhitespace("\n");
        Start("rect");
        xml.WriteAttributeString("id", Id("paper"));
        WriteBox(new(0, 0, paper.WidthMm, paper.HeightMm));
        xml.WriteAttributeString("fill", "#fff");
        xml.WriteEndElement();
    }

    /// <summary>Text made fit for XML: control characters and lone surrogates replaced; all else is the XML writer's to escape.</summary>
    public static string Safe(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] < ' ' || text[i] > 0x7E)
            {
                return SafeSlow(text);
            }
        }

        return text;
    }

    private static string SafeSlow(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            var c = rune.Value;
            var bad = (c < ' ' && c is not ('\n' or '\r' or '\t')) || c is (>= 0x7F and < 0xA0) or 0xFFFE or 0xFFFF;
            safe.Append(bad ? Rune.ReplacementChar : rune);
        }

        return safe.ToString();
    }

    private void Write(Item item)
    {
        xml.WriteWhitespace("\n");
        switch (item)
        {
            case GroupItem group:
                WriteGroup(group);
                break;
            case PathItem path:
                WritePath(path);
                break;
            case TextItem text:
                WriteText(text);
                break;
            case ImageItem image:
                WriteImage(image);
                break;
            case LinkItem link:
                WriteLink(link);
                break;
        }
    }

    private void WriteGroup(GroupItem group)
    {
        Start("g");
        if (group.Name is not null)
        {
            xml.WriteAttributeString("id", Id(group.Name));
        }

        WriteTransform(group);
        string? clip = null;
        if (group.Clip is not null)
        {
            clip = Id("clip-" + (++clips).ToString(CultureInfo.InvariantCulture));
            xml.WriteAttributeString("clip-path", $"url(#{clip})");
        }

        WriteTag(group.Tag);
        WriteTitle(group.Tag);
        if (group.Clip is { } box)
        {
            WriteClip(clip!, box);
        }

        WriteAll(group.Items);
        xml.WriteWhitespace("\n");
        xml.WriteEndElement();
    }

    private void WriteTransform(GroupItem group)
    {
        work.Clear();
        if (group.MoveXMm != 0 || group.MoveYMm != 0)
        {
            work.Append("translate(").AppendNumber(group.MoveXMm).Append(' ').AppendNumber(group.MoveYMm).Append(')');
        }

        if (group.TurnDegrees != 0)
        {
            work.Append("rotate(").AppendNumber(group.TurnDegrees).Append(')');
        }

        if (group.Scale != 1)
        {
            // six digits: three would shift the far end of a scaled group
            work.Append("scale(").Append(group.Scale.ToString("0.######", CultureInfo.InvariantCulture)).Append(')');
        }

        if (work.Length > 0)
        {
            xml.WriteAttributeString("transform", work.ToString());
        }
    }

    private void WriteClip(string id, Box box)
    {
        Start("clipPath");
        xml.WriteAttributeString("id", id);
        Start("rect");
        WriteBox(box);
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private void WritePath(PathItem path)
    {
        Start("path");
        WriteTag(path.Tag);
        xml.WriteAttributeString("d", SvgPath.Of(path.Outline, work));
        if (path.Fill is { } fill)
        {
            xml.WriteAttributeString("fill", fill.ToString());
        }

        if (path.Stroke is { } stroke)
        {
            WriteStroke(stroke);
        }

        WriteTitle(path.Tag);
        xml.WriteEndElement();
    }

    private void WriteStroke(Stroke stroke)
    {
        xml.WriteAttributeString("stroke", stroke.Colour.ToString());
        Number("stroke-width", stroke.WidthMm);
        if (!stroke.DashMm.IsDefaultOrEmpty)
        {
            xml.WriteAttributeString("stroke-dasharray", string.Join(' ', stroke.DashMm.Select(SvgNumber.Text)));
            if (stroke.DashPhaseMm != 0)
            {
                Number("stroke-dashoffset", stroke.DashPhaseMm);
            }
        }

        if (stroke.RoundCap)
        {
            xml.WriteAttributeString("stroke-linecap", "round");
        }

        if (!stroke.RoundJoin)
        {
            xml.WriteAttributeString("stroke-linejoin", "miter");
        }
    }

    private void WriteImage(ImageItem image)
    {
        Start("image");
        WriteTag(image.Tag);
        WriteBox(image.Box);
        xml.WriteAttributeString("preserveAspectRatio", "none");
        xml.WriteAttributeString("href", SvgWriter.LinkNamespace, "data:image/png;base64," + Convert.ToBase64String(image.Png.AsSpan()));
        WriteTitle(image.Tag);
        xml.WriteEndElement();
    }

    private void WriteLink(LinkItem link)
    {
        var target = LinkTarget(link.Target);
        if (target is null)
        {
            return;
        }

        Start("a");
        xml.WriteAttributeString("href", SvgWriter.LinkNamespace, target);
        WriteTitle(link.Tag);
        Start("rect");
        WriteBox(link.Box);
        xml.WriteAttributeString("pointer-events", "all");
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    // only a place in this file or a file the caller names: no text of a description ever becomes an address
    private string? LinkTarget(string target)
    {
        var hash = target.IndexOf('#', StringComparison.Ordinal);
        var (file, place) = hash < 0 ? (target, "") : (target[..hash], "#" + options.PagePart + PlainId(target[(hash + 1)..]));
        if (file.Length == 0)
        {
            return place.Length > 1 ? place : null;
        }

        return options.LinkedFile?.Invoke(file) is { } found ? Uri.EscapeDataString(found) + place : null;
    }

    private void WriteTag(Tag? tag)
    {
        if (tag is null)
        {
            return;
        }

        Named("data-wire", tag.Wire);
        Named("data-circuit", tag.Circuit);
        Named("data-for", tag.For);
        Named("data-cavity", tag.Cavity);
        Named("data-segment", tag.Segment);
        if (options.PagePart is not null)
        {
            Named("data-load", tag.Load);
            Named("data-fuse", tag.Fuse);
        }
    }

    private void WriteTitle(Tag? tag)
    {
        if (tag?.Title is { } title)
        {
            xml.WriteElementString("title", SvgWriter.SvgNamespace, Safe(title));
        }
    }

    private void WriteBox(Box box)
    {
        Number("x", box.X);
        Number("y", box.Y);
        Number("width", box.Width);
        Number("height", box.Height);
    }

    private string Id(string name)
    {
        var plain = options.PagePart + PlainId(name);
        var id = plain;
        for (var n = 2; !ids.Add(id); n++)
        {
            id = plain + "-" + n.ToString(CultureInfo.InvariantCulture);
        }

        return id;
    }

    private static string PlainId(string name)
    {
        var plain = new string([.. name.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.' ? c : '-')]);
        return plain.Length > 0 && char.IsAsciiLetter(plain[0]) ? plain : "n" + plain;
    }

    private void Start(string element) => xml.WriteStartElement(element, SvgWriter.SvgNamespace);

    private void Number(string name, double value) => xml.WriteAttributeString(name, SvgNumber.Text(value));

    private void Named(string name, string? value)
    {
        if (value is not null)
        {
            xml.WriteAttributeString(name, Safe(value));
        }
    }
}
