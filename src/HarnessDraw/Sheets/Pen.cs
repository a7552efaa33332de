using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Puts lettering, rules, boxes and swatches on a sheet in the order given; every text it sets fits the width it is told.</summary>
internal sealed class Pen
{
    public const double CapMm = 2.5;
    private readonly ImmutableArray<Item>.Builder items = ImmutableArray.CreateBuilder<Item>();

    public Pen(bool blackInk) => BlackInk = blackInk;

    public bool BlackInk { get; }

    public ImmutableArray<Item> Items => items.ToImmutable();

    public void Add(Item item) => items.Add(item);

    public void Add(IEnumerable<Item> more) => items.AddRange(more);

    /// <summary>One line of text on its base line, cut with an ellipsis where it is wider than <paramref name="widthMm"/>.</summary>
    public void Text(string text, double x, double baseY, double widthMm, TextStyle? style = null, Tag? tag = null)
    {
        style ??= TextStyle.Plain;
        var shown = Shortened(text, widthMm, style);
        if (shown.Length > 0)
        {
            items.Add(new TextItem(shown, new(x, baseY), style.CapMm) { Role = ItemRole.Lettering, Weight = style.Weight, Anchor = style.Anchor, Colour = style.Colour, Tag = tag });
        }
    }

    /// <summary>Lines broken at spaces, <paramref name="lineMm"/> apart, at most <paramref name="most"/>; gives the base line after the last.</summary>
    public double Paragraph(string text, double x, double baseY, double widthMm, TextStyle? style = null, double lineMm = 5, int most = int.MaxValue)
    {
        style ??= TextStyle.Plain;
        var lines = Wrapped(text, widthMm, style);
        for (var i = 0; i < lines.Length && i < most; i++)
        {
            var last = i == most - 1 && lines.Length > most;
            Text(last ? $"{lines[i]} {string.Join(' ', lines.Skip(i + 1))}" : lines[i], x, baseY, widthMm, style);
            baseY += lineMm;
        }

        return baseY;
    }

    /// <summary>A level rule whose caps stay within its ends.</summary>
    public void Rule(double x1, double y, double x2, double widthMm, Rgb? colour = null) =>
        items.Add(new PathItem(Outline.Line(x1 + (widthMm / 2), y, x2 - (widthMm / 2), y)) { Stroke = new(colour ?? Ink.Black, widthMm) });

    public void Upright(double x, double y1, double y2, double widthMm) =>
        items.Add(new PathItem(Outline.Line(x, y1, x, y2)) { Stroke = new(Ink.Black, widthMm) });

    public void Frame(Box box, double widthMm, double radius = 0, Rgb? colour = null, Rgb? fill = null) =>
        items.Add(new PathItem(Outline.Rectangle(box, radius)) { Stroke = new(colour ?? Ink.Black, widthMm), Fill = fill });

    /// <summary>A tint that text may stand on.</summary>
    public void Tint(Box box) => items.Add(new PathItem(Outline.Rectangle(box)) { Role = ItemRole.Backdrop, Fill = Ink.QuietFill });

    /// <summary>The swatch of a wire colour, 5.6 x 2.5, standing on the base line of its row.</summary>
    public void Swatch(string colour, double x, double baseY) =>
        items.AddRange(Drawing.Swatch.Paint(WireColour.Parse(colour), new Box(x, baseY - CapMm, 5.6, CapMm), BlackInk));

    /// <summary>One line of text that is known to fit, set as it is.</summary>
    public void Letters(string text, double x, double baseY, TextStyle style, Tag? tag = null) =>
        items.Add(new TextItem(text, new(x, baseY), style.CapMm) { Role = ItemRole.Lettering, Weight = style.Weight, Anchor = style.Anchor, Colour = style.Colour, Tag = tag });

    /// <summary>The text in lines no wider than <paramref name="widthMm"/>, broken at spaces; a word wider than a line is broken inside.</summary>
    public static ImmutableArray<string> Wrapped(string text, double widthMm, TextStyle? style = null)
    {
        style ??= TextStyle.Plain;
        return TextFit.Wrap(text, widthMm, style.CapMm, style.Weight);
    }

    /// <summary>The text, or as much of its beginning as fits with an ellipsis after it.</summary>
    public static string Shortened(string text, double widthMm, TextStyle? style = null)
    {
        var shown = ShownText.Of(text);
        if (Width(shown, style) <= widthMm)
        {
            return shown;
        }

        var (fits, tooLong) = (0, shown.Length);
        while (tooLong - fits > 1)
        {
            var middle = (fits + tooLong) / 2;
            (fits, tooLong) = Width(Cut(shown, middle), style) <= widthMm ? (middle, tooLong) : (fits, middle);
        }

        return fits == 0 ? "" : Cut(shown, fits);
    }

    // never half a surrogate pair
    private static string Cut(string text, int length) =>
        string.Concat(text.AsSpan(0, char.IsHighSurrogate(text[length - 1]) ? length - 1 : length).TrimEnd(), "…");

    /// <summary>The width to keep free for a text: it also holds in the face that a viewer without ours takes.</summary>
    public static double Width(string text, TextStyle? style = null)
    {
        style ??= TextStyle.Plain;
        return TextMeasure.PlanWidth(text, style.CapMm, style.Weight);
    }

    /// <summary>The width of a text as it is drawn, for letters in a ring.</summary>
    public static double DrawnWidth(string text, TextStyle? style = null)
    {
        style ??= TextStyle.Plain;
        return TextMeasure.Width(text, style.CapMm, style.Weight);
    }
}

/// <summary>How a text is set: cap height in mm, weight, colour and where its anchor lies.</summary>
internal sealed record TextStyle
{
    public static TextStyle Plain { get; } = new();
    public static TextStyle Bold { get; } = new() { Weight = FaceWeight.Bold };

    public double CapMm { get; init; } = Pen.CapMm;
    public FaceWeight Weight { get; init; } = FaceWeight.Medium;
    public Rgb Colour { get; init; } = Ink.Black;
    public TextAnchor Anchor { get; init; }

    public TextStyle Quiet => this with { Colour = Ink.Secondary };
    public TextStyle Right => this with { Anchor = TextAnchor.End };
    public TextStyle Middle => this with { Anchor = TextAnchor.Middle };

    public TextStyle At(double capMm) => this with { CapMm = capMm };
}
