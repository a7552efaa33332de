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

    private static void PaintBlack(ImmutableArray<Item>.Builder items, WireColour colour, Box box)
    {
        var black = new Rgb(0, 0, 0);
        items.Add(new PathItem(Outline.Rectangle(box)) { Role = ItemRole.Plate, Fill = colour.Base.BlackSolid ? black : Ink.Paper });
        if (!colour.Base.BlackDashMm.IsDefaultOrEmpty)
        {
            var y = box.Centre.Y;
            items.Add(new PathItem(Outline.Line(box.X, y, box.Right, y)) { Role = ItemRole.LaneDress, Stroke = new(black, box.Height) { DashMm = colour.Base.BlackDashMm } });
        }

        if (colour.Tracer is { } tracer)
        {
            items.Add(Bars(box, 1.1, 0.3, Ink.Paper));
            items.Add(tracer.Dark ? Bars(box, 0.8, 0, black) : Bars(box, 0.9, -0.3, black, hollow: true));
        }
    }

    // two bars, slanted at 45 degrees like those of the lane; a hollow bar is its two edges
    private static PathItem Bars(Box box, double widthMm, double growMm, Rgb colour, bool hollow = false)
    {
        var half = box.Height / 2;
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        foreach (var share in (ReadOnlySpan<double>)[0.32, 0.68])
        {
            var x = box.X + (box.Width * share);
            var wide = (widthMm / 2) + Math.Max(0, growMm);
            if (hollow)
            {
                Add(steps, box, x - wide, x - wide + 0.25, half);
                Add(steps, box, x + wide - 0.25, x + wide, half);
            }
            else
            {
                Add(steps, box, x - wide, x + wide, half);
            }
        }

        return new(new(steps.ToImmutable())) { Role = ItemRole.LaneDress, Fill = colour };
    }

    private static void Add(ImmutableArray<PathStep>.Builder steps, Box box, double left, double right, double half)
    {
        var slant = Math.Min(half, Math.Min(left - box.X, box.Right - right));
        steps.Add(new PathStep.MoveTo(new(left - slant, box.Bottom)));
        steps.Add(new PathStep.LineTo(new(right - slant, box.Bottom)));
        steps.Add(new PathStep.LineTo(new(right + slant, box.Y)));
        steps.Add(new PathStep.LineTo(new(left + slant, box.Y)));
        steps.Add(new PathStep.Close());
    }
}
