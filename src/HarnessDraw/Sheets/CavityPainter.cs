using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>
/// Draws one cavity: a ring in the wire's base colour, three arcs for its tracer, cavity above wire id in the white middle; an unused one gets four corner ticks.
/// </summary>
internal static class CavityPainter
{
    /// <summary>From the centre to the top of the upper line and to the base of the lower one.</summary>
    public const double TwoLinesUpMm = 2.95;
    public const double TwoLinesDownMm = 2.95;
    private const double ArcDegrees = 44;
    private static readonly Rgb Black = new(0, 0, 0);

    public static void Paint(Pen pen, Point centre, FaceCavity cavity, CavityLetters letters, string? colour, Tag tag, bool showWire)
    {
        if (colour is null)
        {
            PaintUnused(pen, centre, cavity, letters, tag);
            return;
        }

        PaintRing(pen, centre, cavity.RadiusMm, cavity.DiscMm, WireColour.Parse(colour), tag);
        if (showWire && letters.Wire is { } wire)
        {
            pen.Letters(letters.Name, centre.X, centre.Y - TwoLinesUpMm + Pen.CapMm, TextStyle.Bold.Middle, new Tag { Cavity = tag.Cavity });
            pen.Letters(wire, centre.X, centre.Y + TwoLinesDownMm, TextStyle.Plain.Middle, new Tag { For = tag.For });
        }
        else
        {
            pen.Letters(letters.Name, centre.X, centre.Y + 1.25, TextStyle.Bold.Middle, new Tag { Cavity = tag.Cavity });
        }
    }

    /// <summary>The ring alone, as the legend shows it.</summary>
    public static void PaintRing(Pen pen, Point centre, double radius, double disc, WireColour colour, Tag? tag)
    {
        var (middle, width) = ((radius + disc) / 2, radius - disc);
        var circle = Outline.Circle(centre, middle);
        if (pen.BlackInk)
        {
            PaintBlackRing(pen, circle, colour, width);
        }
        else
        {
            pen.Add(new PathItem(circle) { Role = ItemRole.Plate, Stroke = new(colour.Base.Ink, width) });
        }

        if (colour.Tracer is { } tracer)
        {
            foreach (var degrees in (ReadOnlySpan<double>)[-90, 30, 150])
            {
                PaintArc(pen, centre, middle, width, degrees, colour.Base, tracer);
            }
        }

        pen.Add(new PathItem(Outline.Circle(centre, radius)) { Role = ItemRole.Edge, Stroke = new(Ink.Black, 0.25), Tag = tag });
        pen.Add(new PathItem(Outline.Circle(centre, disc)) { Role = ItemRole.Edge, Stroke = new(Ink.Black, 0.18) });
    }

    /// <summary>A circle with four ticks across its corners.</summary>
    public static void PaintTicks(Pen pen, Point centre, double radius, Tag? tag)
    {
        pen.Add(new PathItem(Outline.Circle(centre, radius)) { Role = ItemRole.Edge, Stroke = new(Ink.Black, 0.25), Tag = tag });
        foreach (var degrees in (ReadOnlySpan<double>)[45, 135, 225, 315])
        {
            var (inner, outer) = (On(centre, radius * 0.8, degrees), On(centre, radius, degrees));
            pen.Add(new PathItem(Outline.Line(inner.X, inner.Y, outer.X, outer.Y)) { Role = ItemRole.Edge, Stroke = new(Ink.Black, 0.5) });
        }
    }

    private static void PaintUnused(Pen pen, Point centre, FaceCavity cavity, CavityLetters letters, Tag tag)
    {
        PaintTicks(pen, centre, cavity.RadiusMm, tag);
        pen.Letters(letters.Name, centre.X, centre.Y + 1.25, TextStyle.Bold.Middle, new Tag { Cavity = tag.Cavity });
    }

    private static void PaintBlackRing(Pen pen, Outline circle, WireColour colour, double width)
    {
        pen.Add(new PathItem(circle) { Role = ItemRole.Plate, Stroke = new(Black, width) });
        if (colour.Base.BlackSolid)
        {
            return;
        }

        pen.Add(new PathItem(circle) { Role = ItemRole.Plate, Stroke = new(Ink.Paper, Math.Max(0.1, width - 0.3)) });
        if (!colour.Base.BlackDashMm.IsDefaultOrEmpty)
        {
            pen.Add(new PathItem(circle) { Role = ItemRole.Plate, Stroke = new(Black, Math.Max(0.1, width - 0.3)) { DashMm = colour.Base.BlackDashMm } });
        }
    }

    private static void PaintArc(Pen pen, Point centre, double radius, double width, double degrees, ColourCode first, ColourCode tracer)
    {
        if (pen.BlackInk)
        {
            // a white notch holding a bar for a dark tracer, two thin ones for a pale tracer
            pen.Add(Arc(centre, radius, degrees, ArcDegrees, new(Ink.Paper, width)));
            foreach (var (at, span) in tracer.Dark ? [(0.0, ArcDegrees * 0.6)] : new[] { (-ArcDegrees * 0.26, 7.0), (ArcDegrees * 0.26, 7.0) })
            {
                pen.Add(Arc(centre, radius, degrees + at, span, new(Black, width)));
            }

            return;
        }

        if (Contrast.Ratio(first.Ink, tracer.Ink) < 2)
        {
            var rim = Contrast.Ratio(first.Ink, Ink.Paper) > Contrast.Ratio(first.Ink, Ink.Black) ? Ink.Paper : Ink.Black;
            pen.Add(Arc(centre, radius, degrees, ArcDegrees + (2 * 0.35 / radius * 180 / Math.PI), new(rim, width)));
        }

        pen.Add(Arc(centre, radius, degrees, ArcDegrees, new(tracer.Ink, width)));
    }

    private static PathItem Arc(Point centre, double radius, double degrees, double span, Stroke stroke)
    {
        ImmutableArray<PathStep> steps = [new PathStep.MoveTo(On(centre, radius, degrees - (span / 2))), new PathStep.ArcTo(On(centre, radius, degrees + (span / 2)), radius, true)];
        return new(new(steps)) { Role = ItemRole.Plate, Stroke = stroke };
    }

    private static Point On(Point centre, double radius, double degrees) =>
        new(centre.X + (radius * Math.Cos(degrees * Math.PI / 180)), centre.Y + (radius * Math.Sin(degrees * Math.PI / 180)));
}
