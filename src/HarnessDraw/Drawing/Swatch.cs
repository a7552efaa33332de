using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>A fat piece of the same lane with two tracer bars: what is learnt in the legend is what is seen in the bundle.</summary>
public static class Swatch
{
    /// <summary>The swatch of a colour in a box, 5.6 x 2.5 mm as a rule; all items are dress of a plate, no text sits on one.</summary>
    public static ImmutableArray<Item> Paint(WireColour colour, Box box, bool blackInk = false)
    {
        ArgumentNullException.ThrowIfNull(colour);
        var items = ImmutableArray.CreateBuilder<Item>(4);
        var frame = Outline.Rectangle(box);
        if (blackInk)
        {
            PaintBlack(items, colour, box);
        }
        else
        {
            items.Add(new PathItem(frame) { Role = ItemRole.Plate, Fill = colour.Base.Ink });
            AddBars(items, colour, box);
        }

        var edge = blackInk ? new Rgb(0, 0, 0) : Ink.Black;
        items.Add(new PathItem(frame) { Role = ItemRole.Edge, Stroke = new(edge, 0.2) { RoundJoin = false } });
        return items.ToImmutable();
    }

    private static void AddBars(ImmutableArray<Item>.Builder items, WireColour colour, Box box)
    {
        if (colour.Tracer is not { } tracer)
        {
            return;
        }

        if (Contrast.Ratio(colour.Base.Ink, tracer.Ink) < 2)
        {
            var rim = Contrast.Ratio(colour.Base.Ink, Ink.Paper) > Contrast.Ratio(colour.Base.Ink, Ink.Black) ? Ink.Paper : Ink.Black;
            items.Add(Bars(box, 0.95, 0.28, rim));
        }

        items.Add(Bars(box, 0.95, 0, tracer.Ink));
    }

    // half the lane's pattern lengths, or a piece of 5.6 mm would not hold one repeat; the tracer stands in the right half
    private static void PaintBlack(ImmutableArray<Item>.Builder items, WireColour colour, Box box)
    {
        var black = new Rgb(0, 0, 0);
        items.Add(new PathItem(Outline.Rectangle(box)) { Role = ItemRole.Plate, Fill = colour.Base.BlackSolid ? black : Ink.Paper });
        if (!colour.Base.BlackDashMm.IsDefaultOrEmpty)
        {
            var y = box.Centre.Y;
            var dash = colour.Base.BlackDashMm.Select(d => d / 2);
            items.Add(new PathItem(Outline.Line(box.X, y, box.Right, y)) { Role = ItemRole.LaneDress, Stroke = new(black, box.Height) { DashMm = [.. dash] } });
        }

        if (colour.Tracer is { } tracer)
        {
            var (from, x, slant) = (box.X + (box.Width * 0.5), box.X + (box.Width * 0.78), box.Height / 5);
            var notch = Outline.Polyline([new(from - slant, box.Bottom), new(box.Right, box.Bottom), new(box.Right, box.Y), new(from + slant, box.Y)], closed: true);
            items.Add(new PathItem(notch) { Role = ItemRole.LaneDress, Fill = Ink.Paper });
            items.Add(Bars(box, tracer.Dark ? [(x - 0.5, x + 0.5)] : [(x - 0.6, x - 0.3), (x + 0.3, x + 0.6)], slant, black));
        }
    }

    private static PathItem Bars(Box box, double widthMm, double growMm, Rgb colour)
    {
        var wide = (widthMm / 2) + growMm;
        return Bars(box, [.. ((ImmutableArray<double>)[0.32, 0.68]).Select(s => box.X + (box.Width * s)).Select(x => (x - wide, x + wide))], box.Height / 2, colour);
    }

    // slanted bars from edge to edge of the box, given by where they cross its middle
    private static PathItem Bars(Box box, ImmutableArray<(double Left, double Right)> bars, double slantMm, Rgb colour)
    {
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        foreach (var (left, right) in bars)
        {
            var slant = Math.Min(slantMm, Math.Min(left - box.X, box.Right - right));
            steps.Add(new PathStep.MoveTo(new(left - slant, box.Bottom)));
            steps.Add(new PathStep.LineTo(new(right - slant, box.Bottom)));
            steps.Add(new PathStep.LineTo(new(right + slant, box.Y)));
            steps.Add(new PathStep.LineTo(new(left + slant, box.Y)));
            steps.Add(new PathStep.Close());
        }

        return new(new(steps.ToImmutable())) { Role = ItemRole.LaneDress, Fill = colour };
    }
}
