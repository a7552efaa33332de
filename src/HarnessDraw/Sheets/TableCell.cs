using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>A piece of a line in a table cell.</summary>
internal abstract record CellPart
{
    public abstract double WidthMm { get; }

    public abstract void Paint(Pen pen, double left, double baseY);
}

/// <summary>Lettering in a cell.</summary>
internal sealed record CellText(string Text, TextStyle Style, Tag? Tag = null) : CellPart
{
    public override double WidthMm => Pen.Width(Text, Style);

    public override void Paint(Pen pen, double left, double baseY)
    {
        var x = Style.Anchor switch { TextAnchor.End => left + WidthMm, TextAnchor.Middle => left + (WidthMm / 2), _ => left };
        pen.Text(Text, x, baseY, WidthMm + 0.01, Style, Tag);
    }
}

/// <summary>The swatch of a wire colour in a cell.</summary>
internal sealed record CellSwatch(string Colour) : CellPart
{
    public override double WidthMm => 5.6;

    public override void Paint(Pen pen, double left, double baseY) => pen.Swatch(Colour, left, baseY);
}

/// <summary>A dot in a cell; hollow where nothing is fitted.</summary>
internal sealed record CellDot(double RadiusMm, bool Filled) : CellPart
{
    public override double WidthMm => 4.4;

    public override void Paint(Pen pen, double left, double baseY)
    {
        var dot = Outline.Circle(new(left + 2.2, baseY - 1.25), RadiusMm);
        pen.Add(Filled ? new PathItem(dot) { Fill = Ink.Black } : new PathItem(dot) { Stroke = new(Ink.Black, 0.25) });
    }
}

/// <summary>An empty box in a cell, to tick or to write in.</summary>
internal sealed record CellBox(double BoxWidthMm, double HeightMm) : CellPart
{
    public override double WidthMm => BoxWidthMm;

    public override void Paint(Pen pen, double left, double baseY) => pen.Frame(new Box(left, baseY - 1.25 - (HeightMm / 2), BoxWidthMm, HeightMm), 0.25);
}

/// <summary>One line of a cell: its parts from left to right, a gap between them.</summary>
internal sealed record CellLine(ImmutableArray<CellPart> Parts)
{
    public const double GapMm = 1.3;

    public double WidthMm => Parts.IsEmpty ? 0 : Parts.Sum(p => p.WidthMm) + (GapMm * (Parts.Length - 1));

    public void Paint(Pen pen, double left, double baseY)
    {
        foreach (var part in Parts)
        {
            part.Paint(pen, left, baseY);
            left += part.WidthMm + GapMm;
        }
    }
}

/// <summary>What stands in one cell, line under line.</summary>
internal sealed record TableCell(ImmutableArray<CellLine> Lines)
{
    private const int MostLines = 12;

    public static TableCell Empty { get; } = new(ImmutableArray<CellLine>.Empty);

    public double WidthMm => Lines.IsEmpty ? 0 : Lines.Max(l => l.WidthMm);

    public static TableCell Of(params ReadOnlySpan<CellPart> parts) => new([new CellLine([.. parts])]);

    public static TableCell Words(string text, TextStyle? style = null, Tag? tag = null) =>
        text.Length == 0 ? Empty : Of(new CellText(text, style ?? TextStyle.Plain, tag));

    /// <summary>The text in as many lines as the width asks for; a text beyond all measure ends in an ellipsis.</summary>
    public static TableCell Wrapped(string text, double widthMm, TextStyle? style = null)
    {
        if (text.Length == 0)
        {
            return Empty;
        }

        var lines = Pen.Wrapped(text, widthMm, style);
        if (lines.Length > MostLines)
        {
            lines = [.. lines.Take(MostLines - 1), Pen.Shortened($"{lines[MostLines - 1]} {lines[MostLines]}", widthMm, style)];
        }

        return new(ImmutableArray.CreateRange(lines, l => new CellLine([new CellText(l, style ?? TextStyle.Plain)])));
    }

    /// <summary>This cell with another under it.</summary>
    public TableCell Above(TableCell below) => new([.. Lines, .. below.Lines]);

    /// <summary>The width of the longest word, but no more than <paramref name="mostMm"/>: what a wrapped text must have.</summary>
    public static double LongestWordMm(string text, TextStyle? style = null, double mostMm = 30) =>
        Math.Min(mostMm, ShownText.Of(text).Split(' ').Max(w => Pen.Width(w, style)) + 0.01);
}
