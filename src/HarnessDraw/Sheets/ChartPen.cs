using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Collects items: lines, boxes and lettering with the widths of the style (ISO 128 steps).</summary>
internal sealed class ChartPen(bool blackInk)
{
    private readonly ImmutableArray<Item>.Builder items = ImmutableArray.CreateBuilder<Item>();

    public bool BlackInk => blackInk;

    public void Add(Item item) => items.Add(item);

    public void AddRange(ImmutableArray<Item> more) => items.AddRange(more);

    public GroupItem Group(string name) => new(items.ToImmutable()) { Name = name };

    public void Text(string text, double x, double baseY, double cap, FaceWeight weight = FaceWeight.Medium, TextAnchor anchor = TextAnchor.Start, Rgb? colour = null, Tag? tag = null)
    {
        if (text.Length > 0)
        {
            items.Add(new TextItem(text, new(Math.Round(x, 3), Math.Round(baseY, 3)), cap) { Role = ItemRole.Lettering, Weight = weight, Anchor = anchor, Colour = colour ?? Ink.Black, Tag = tag });
        }
    }

    public void Line(double x1, double y1, double x2, double y2, double width, Rgb? colour = null, ItemRole role = ItemRole.Edge) =>
        items.Add(new PathItem(Outline.Line(x1, y1, x2, y2)) { Role = role, Stroke = new(colour ?? Ink.Black, width) });

    public void Box(Box box, double width, double radius = 0, Rgb? fill = null, Rgb? colour = null, ItemRole role = ItemRole.Edge, Tag? tag = null) =>
        items.Add(new PathItem(Outline.Rectangle(box, radius)) { Role = role, Stroke = width > 0 ? new(colour ?? Ink.Black, width) { RoundJoin = radius > 0 } : null, Fill = fill, Tag = tag });

    public void Circle(Point centre, double radius, double width, Rgb? fill = null, Rgb? colour = null, ItemRole role = ItemRole.Edge, Tag? tag = null) =>
        items.Add(new PathItem(Outline.Circle(centre, radius)) { Role = role, Stroke = width > 0 ? new(colour ?? Ink.Black, width) : null, Fill = fill, Tag = tag });

    public void Polygon(Rgb? fill, double width, ItemRole role, params Point[] points) =>
        items.Add(new PathItem(Outline.Polyline(points, closed: true)) { Role = role, Fill = fill, Stroke = width > 0 ? new(Ink.Black, width) : null });

    // a flag is found from here; a wire is followed at arm's length
    private const double AcrossRoomM = 1.5;

    /// <summary>A dark plate with white lettering, its number in a white disc before it.</summary>
    public void Flag(string? number, string text, Box box, double cap)
    {
        Box(box, 0, 1.2, Ink.Black, role: ItemRole.Plate);
        var x = box.X + 2.6;
        if (number is not null)
        {
            var r = cap * 0.57;
            Circle(new(box.X + 2 + r, box.Centre.Y), r, 0, Ink.Paper, role: ItemRole.Plate);
            Text(number, box.X + 2 + r, box.Centre.Y + (cap * 0.34), cap * (number.Length switch { 1 => 0.68, 2 => 0.48, _ => 0.36 }), FaceWeight.Bold, TextAnchor.Middle);
            x = box.X + 2 + (2 * r) + 1.8;
        }

        // in the middle of its room, which holds the wider face too
        x += TextMeasure.PlanWidth(text, cap, FaceWeight.Bold) / 2;
        items.Add(new TextItem(text, new(Math.Round(x, 3), Math.Round(box.Centre.Y + (cap / 2), 3)), cap) { Role = ItemRole.Lettering, Weight = FaceWeight.Bold, Anchor = TextAnchor.Middle, Colour = Ink.Paper, ReadFromM = AcrossRoomM });
    }

    public static double FlagWidth(string? number, string text, double cap) => (number is null ? 2.6 : 3.8 + (cap * 1.14)) + TextMeasure.PlanWidth(text, cap, FaceWeight.Bold) + 2.8;

    public void Disc(string number, Point centre, double radius)
    {
        Circle(centre, radius, 0, Ink.Black, role: ItemRole.Plate);
        Text(number, centre.X, centre.Y + 1.25, 2.5, FaceWeight.Bold, TextAnchor.Middle, Ink.Paper);
    }

    public void Lozenge(string letter, Point centre, double half, double cap)
    {
        // a low one is drawn wide, or its letter would touch the edges
        var wide = half > 3 ? half : half * 1.6;
        Polygon(Ink.Paper, half > 3 ? 0.5 : 0.3, ItemRole.Plate, new(centre.X, centre.Y - half), new(centre.X + wide, centre.Y), new(centre.X, centre.Y + half), new(centre.X - wide, centre.Y));
        Text(letter, centre.X, centre.Y + (cap / 2), cap, FaceWeight.Bold, TextAnchor.Middle);
    }

    public void Arrow(double x, double y, int dx, int dy)
    {
        const double L = 2.2, H = 0.55;
        Polygon(Ink.Black, 0, ItemRole.Edge, new(x, y), new(x - (dx * L) + (dy * H), y - (dy * L) + (dx * H)), new(x - (dx * L) - (dy * H), y - (dy * L) - (dx * H)));
    }

    /// <summary>
    /// A dimension line with its arrows, and, where asked, the ticks it ends at. One that is not to the drawing's scale carries the zigzag of a broken line near one end, clear of its figure.
    /// </summary>
    public void Dimension(Point from, Point to, bool hasTicks, bool isBroken)
    {
        const double Width = 0.25, Tick = 1.2, Break = 2.6, Half = 0.5, Rise = 0.9;
        var (dx, dy) = (Math.Sign(to.X - from.X), Math.Sign(to.Y - from.Y));
        if (isBroken)
        {
            Point At(double along, double across) => new(from.X + (dx * along) + (dy * across), from.Y + (dy * along) + (dx * across));
            Point[] way = [from, At(Break, 0), At(Break + Half, -Rise), At(Break + (3 * Half), Rise), At(Break + (4 * Half), 0), to];
            items.Add(new PathItem(Outline.Polyline(way, closed: false)) { Role = ItemRole.Edge, Stroke = new(Ink.Black, Width) });
        }
        else
        {
            Line(from.X, from.Y, to.X, to.Y, Width);
        }

        foreach (var end in hasTicks ? [from, to] : Array.Empty<Point>())
        {
            Line(end.X - (Math.Abs(dy) * Tick), end.Y - (Math.Abs(dx) * Tick), end.X + (Math.Abs(dy) * Tick), end.Y + (Math.Abs(dx) * Tick), Width);
        }

        Arrow(from.X, from.Y, -dx, -dy);
        Arrow(to.X, to.Y, dx, dy);
    }

    /// <summary>The ground sign at the end of a lane that comes from the side given.</summary>
    public void Ground(double x, double y, int away)
    {
        Line(x, y - 1.7, x, y + 1.7, 0.7);
        Line(x + (away * 0.95), y - 1.1, x + (away * 0.95), y + 1.1, 0.5);
        Line(x + (away * 1.8), y - 0.5, x + (away * 1.8), y + 0.5, 0.5);
    }
}
