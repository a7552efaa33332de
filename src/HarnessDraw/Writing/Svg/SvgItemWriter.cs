using System.Globalization;
using System.Text;
using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>Writes the items of one sheet; holds what must be unique within the file (ids).</summary>
internal sealed partial class SvgItemWriter(SvgXml xml, SvgOptions options)
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
        xml.Text("\n");
        xml.Start("rect");
        xml.Attribute("id", Id("paper"));
        WriteBox(new(0, 0, paper.WidthMm, paper.HeightMm));
        xml.Attribute("fill", "#fff");
        xml.End();
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
        xml.Text("\n");
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
        xml.Start("g");
        if (group.Name is not null)
        {
            xml.Attribute("id", Id(group.Name));
        }

        WriteTransform(group);
        string? clip = null;
        if (group.Clip is not null)
        {
            clip = Id("clip-" + (++clips).ToString(CultureInfo.InvariantCulture));
            xml.Attribute("clip-path", $"url(#{clip})");
        }

        WriteTag(group.Tag);
        WriteTitle(group.Tag);
        if (group.Clip is { } box)
        {
            WriteClip(clip!, box);
        }

        WriteAll(group.Items);
        xml.Text("\n");
        xml.End();
    }

    private void WriteTransform(GroupItem group)
    {
        work.Clear();
        if (group.MoveXMm != 0 || group.MoveYMm != 0)
        {
            work.Append("translate(").Append(SvgNumber.Text(group.MoveXMm)).Append(' ').Append(SvgNumber.Text(group.MoveYMm)).Append(')');
        }

        if (group.TurnDegrees != 0)
        {
            work.Append("rotate(").Append(SvgNumber.Text(group.TurnDegrees)).Append(')');
        }

        if (group.Scale != 1)
        {
            // six digits: three would shift the far end of a scaled group
            work.Append("scale(").Append(group.Scale.ToString("0.######", CultureInfo.InvariantCulture)).Append(')');
        }

        if (work.Length > 0)
        {
            xml.Attribute("transform", work.ToString());
        }
    }

    private void WriteClip(string id, Box box)
    {
        xml.Start("clipPath");
        xml.Attribute("id", id);
        xml.Start("rect");
        WriteBox(box);
        xml.End();
        xml.End();
    }

    private void WritePath(PathItem path)
    {
        xml.Start("path");
        WriteTag(path.Tag);
        xml.BeginAttribute("d");
        SvgPath.Write(path.Outline, xml);
        xml.EndAttribute();
        if (path.Fill is { } fill)
        {
            xml.Attribute("fill", fill);
        }

        if (path.Stroke is { } stroke)
        {
            WriteStroke(stroke);
        }

        WriteTitle(path.Tag);
        xml.End();
    }

    private void WriteStroke(Stroke stroke)
    {
        xml.Attribute("stroke", stroke.Colour);
        xml.Attribute("stroke-width", stroke.WidthMm);
        if (!stroke.DashMm.IsDefaultOrEmpty)
        {
            xml.Attribute("stroke-dasharray", string.Join(' ', stroke.DashMm.Select(SvgNumber.Text)));
            if (stroke.DashPhaseMm != 0)
            {
                xml.Attribute("stroke-dashoffset", stroke.DashPhaseMm);
            }
        }

        if (stroke.RoundCap)
        {
            xml.Attribute("stroke-linecap", "round");
        }

        if (!stroke.RoundJoin)
        {
            xml.Attribute("stroke-linejoin", "miter");
        }
    }

    private void WriteImage(ImageItem image)
    {
        xml.Start("image");
        WriteTag(image.Tag);
        WriteBox(image.Box);
        xml.Attribute("preserveAspectRatio", "none");
        xml.Attribute("xlink:href", "data:image/png;base64," + Convert.ToBase64String(image.Png.AsSpan()));
        WriteTitle(image.Tag);
        xml.End();
    }

    private void WriteLink(LinkItem link)
    {
        var target = LinkTarget(link.Target);
        if (target is null)
        {
            return;
        }

        xml.Start("a");
        xml.Attribute("xlink:href", target);
        WriteTitle(link.Tag);
        xml.Start("rect");
        WriteBox(link.Box);
        xml.Attribute("pointer-events", "all");
        xml.End();
        xml.End();
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
            xml.Start("title");
            xml.Text(Safe(title));
            xml.End();
        }
    }

    private void WriteBox(Box box)
    {
        xml.Attribute("x", box.X);
        xml.Attribute("y", box.Y);
        xml.Attribute("width", box.Width);
        xml.Attribute("height", box.Height);
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

    private void Named(string name, string? value)
    {
        if (value is not null)
        {
            xml.Attribute(name, Safe(value));
        }
    }
}
