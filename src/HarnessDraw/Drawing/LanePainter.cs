using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>How a wire's lane is drawn.</summary>
public sealed record LaneStyle(WireColour Colour)
{
    /// <summary>Full width of the lane with its outline left aside, mm: 1.0, heavy wires 1.4, battery leads to 2.0.</summary>
    public double WidthMm { get; init; } = 1.0;

    public bool BlackInk { get; init; }

    /// <summary>Place of the lane among its neighbours: bars of lanes side by side then never line up.</summary>
    public int Index { get; init; }

    /// <summary>A white casing under the lane (where it crosses another), added to its width, mm; 0 for none.</summary>
    public double CasingMm { get; init; }
}

/// <summary>
/// Draws a wire as a lane: outline for pale colours, the one line that carries its tag, tracer bars. In black ink a pattern
/// stands for the base and a notch with one bar (dark) or two strokes (pale) for the tracer; the printed codes carry the meaning.
/// </summary>
public static class LanePainter
{
    private const double BarMm = 1.5;
    private const double PitchMm = 5;
    private const double BlackPitchMm = 7;
    private const double PhaseMm = 1.7;
    private const double RimMm = 0.28;
    private static readonly Rgb Black = new(0, 0, 0);

    /// <summary>The items from bottom to top; exactly one has the role Lane and the tag.</summary>
    public static ImmutableArray<Item> Paint(Outline centreLine, LaneStyle style, Tag? tag = null)
    {
        ArgumentNullException.ThrowIfNull(style);
        var items = ImmutableArray.CreateBuilder<Item>(4);
        if (style.CasingMm > 0)
        {
            items.Add(Dress(centreLine, Ink.Paper, style.WidthMm + style.CasingMm));
        }

        if (style.BlackInk)
        {
            PaintBlack(items, centreLine, style, tag);
        }
        else
        {
            PaintColour(items, centreLine, style, tag);
        }

        return items.ToImmutable();
    }

    private static void PaintColour(ImmutableArray<Item>.Builder items, Outline line, LaneStyle style, Tag? tag)
    {
        var (code, width) = (style.Colour.Base, style.WidthMm);
        var core = code.Outline is null ? width : width - 0.28;
        if (code.Outline is { } outline)
        {
            items.Add(Dress(line, outline, width + 0.1));
        }

        items.Add(new PathItem(line) { Role = ItemRole.Lane, Stroke = new(code.Ink, core), Tag = tag });
        if (style.Colour.Tracer is { } tracer)
        {
            AddTracer(items, line, code, tracer, core / 2, style.Index * PhaseMm);
        }
    }

    private static void AddTracer(ImmutableArray<Item>.Builder items, Outline line, ColourCode code, ColourCode tracer, double half, double phaseMm)
    {
        var clear = (BarMm / 2) + half + RimMm;
        if (Contrast.Ratio(code.Ink, tracer.Ink) < 2)
        {
            var rim = Contrast.Ratio(code.Ink, Ink.Paper) > Contrast.Ratio(code.Ink, Ink.Black) ? Ink.Paper : Ink.Black;
            AddFill(items, TracerBars.Along(line, [((-BarMm / 2) - RimMm, (BarMm / 2) + RimMm)], PitchMm, phaseMm, half, clear), rim);
        }

        AddFill(items, TracerBars.Along(line, [(-BarMm / 2, BarMm / 2)], PitchMm, phaseMm, half, clear), tracer.Ink);
    }

    // lane 0.9 black, core 0.54 white with the pattern: both grow with the lane, the two edges keep 0.18
    private static void PaintBlack(ImmutableArray<Item>.Builder items, Outline line, LaneStyle style, Tag? tag)
    {
        var (code, core) = (style.Colour.Base, style.WidthMm - 0.46);
        items.Add(new PathItem(line) { Role = ItemRole.Lane, Stroke = new(Black, style.WidthMm - 0.1), Tag = tag });
        if (!code.BlackSolid)
        {
            items.Add(Dress(line, Ink.Paper, core));
            if (!code.BlackDashMm.IsDefaultOrEmpty)
            {
                items.Add(new PathItem(line) { Role = ItemRole.LaneDress, Stroke = new(Black, core) { DashMm = code.BlackDashMm } });
            }
        }

        if (style.Colour.Tracer is { } tracer)
        {
            AddBlackTracer(items, line, tracer, core / 2, style.Index * PhaseMm);
        }
    }

    private static void AddBlackTracer(ImmutableArray<Item>.Builder items, Outline line, ColourCode tracer, double half, double phaseMm)
    {
        var clear = 1.15 + half;
        AddFill(items, TracerBars.Along(line, [(-1.15, 1.15)], BlackPitchMm, phaseMm, half, clear), Ink.Paper);
        ImmutableArray<(double, double)> parts = tracer.Dark ? [(-0.5, 0.5)] : [(-0.94, -0.66), (0.66, 0.94)];
        AddFill(items, TracerBars.Along(line, parts, BlackPitchMm, phaseMm, half, clear), Black);
    }

    private static void AddFill(ImmutableArray<Item>.Builder items, Outline outline, Rgb colour)
    {
        if (!outline.Steps.IsEmpty)
        {
            items.Add(new PathItem(outline) { Role = ItemRole.LaneDress, Fill = colour });
        }
    }

    private static PathItem Dress(Outline line, Rgb colour, double widthMm) => new(line) { Role = ItemRole.LaneDress, Stroke = new(colour, widthMm) };
}
