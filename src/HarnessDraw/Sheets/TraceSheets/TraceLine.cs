using HarnessDraw.Drawing;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>The line of a trace: wires in their colours, everything else in ink with the sign of what it is (IEC 60617 in spirit).</summary>
internal static class TraceLine
{
    private const double RingMm = 2.7;

    public static void PaintStation(Pen pen, double x, double y) =>
        pen.Add(new PathItem(Outline.Circle(new(x, y), RingMm)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 0.9) });

    /// <summary>The hop between two stations, upright or level; signs grow with <paramref name="scale"/>.</summary>
    public static void PaintHop(Pen pen, TraceHop hop, Point from, Point to, int index, double laneMm = 2.6, double scale = 1)
    {
        var line = Outline.Line(from.X, from.Y, to.X, to.Y);
        if (hop is { Wire: { } wire, Colour: { } colour })
        {
            pen.Add(LanePainter.Paint(line, new LaneStyle(WireColour.Parse(colour)) { WidthMm = laneMm, BlackInk = pen.BlackInk, Index = index }, new Tag { Wire = $"{wire}", Title = $"{wire}: {WireColour.Parse(colour).Words}" }));
            return;
        }

        pen.Add(new PathItem(line) { Stroke = new(Ink.Black, 0.7 * scale) { DashMm = Dashes(hop.Kind) } });
        Sign(pen, hop, new Point((from.X + to.X) / 2, (from.Y + to.Y) / 2), scale, level: Math.Abs(to.X - from.X) > Math.Abs(to.Y - from.Y));
    }

    private static System.Collections.Immutable.ImmutableArray<double> Dashes(HopKind kind) => kind switch
    {
        HopKind.Kept => [2.4, 1.2],
        HopKind.Body => [0.8, 1.2],
        HopKind.NotDescribed => [0.8, 2.4],
        _ => [],
    };

    private static void Sign(Pen pen, TraceHop hop, Point at, double scale, bool level)
    {
        Box Along(double width, double length) => level ? new(at.X - (scale * length / 2), at.Y - (scale * width / 2), scale * length, scale * width) : new(at.X - (scale * width / 2), at.Y - (scale * length / 2), scale * width, scale * length);
        switch (hop.Kind)
        {
            case HopKind.Fuse:
                pen.Frame(Along(2.6, 5.2), 0.5 * scale);
                break;
            case HopKind.Contact:
                pen.Frame(Along(2.4, 4), 0.18, colour: Ink.Paper, fill: Ink.Paper);
                var (end, tip) = level ? (new Point(at.X - (2 * scale), at.Y), new Point(at.X + (2 * scale), at.Y - (2.2 * scale))) : (new Point(at.X, at.Y + (2 * scale)), new Point(at.X + (2.2 * scale), at.Y - (2 * scale)));
                pen.Add(new PathItem(Outline.Line(end.X, end.Y, tip.X, tip.Y)) { Stroke = new(Ink.Black, 0.7 * scale) });
                break;
            case HopKind.Load:
                Load(pen, hop.Words, at, scale, Along(4.4, 6.4));
                break;
            default:
                break;
        }
    }

    private static void Load(Pen pen, string words, Point at, double scale, Box box)
    {
        var r = 3.2 * scale;
        var round = words.StartsWith("lamp", StringComparison.Ordinal) || words.StartsWith("motor", StringComparison.Ordinal);
        if (!round)
        {
            pen.Frame(box, 0.5 * scale, fill: Ink.Paper);
            return;
        }

        pen.Add(new PathItem(Outline.Circle(at, r)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 0.5 * scale) });
        if (words.StartsWith("motor", StringComparison.Ordinal))
        {
            pen.Letters("M", at.X, at.Y + (1.25 * scale), TextStyle.Bold.Middle.At(2.5 * scale));
            return;
        }

        var d = r * Math.Sqrt(0.5);
        pen.Add(new PathItem(Outline.Line(at.X - d, at.Y - d, at.X + d, at.Y + d)) { Stroke = new(Ink.Black, 0.5 * scale) });
        pen.Add(new PathItem(Outline.Line(at.X - d, at.Y + d, at.X + d, at.Y - d)) { Stroke = new(Ink.Black, 0.5 * scale) });
    }
}
