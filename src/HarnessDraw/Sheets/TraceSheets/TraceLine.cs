using HarnessDraw.Drawing;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>The line of a trace: wires in their colours, everything else in ink with the sign of what it is (IEC 60617 in spirit).</summary>
internal static class TraceLine
{
    private const double RingMm = 2.7;

    public static void PaintStation(Pen pen, double x, double y) =>
        pen.Add(new PathItem(Outline.Circle(new(x, y), RingMm)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 0.9) });

    public static void PaintHop(Pen pen, TraceHop hop, double x, double fromY, double toY, int index)
    {
        var line = Outline.Line(x, fromY, x, toY);
        if (hop is { Wire: { } wire, Colour: { } colour })
        {
            pen.Add(LanePainter.Paint(line, new LaneStyle(WireColour.Parse(colour)) { WidthMm = 2.6, BlackInk = pen.BlackInk, Index = index }, new Tag { Wire = $"{wire}", Title = $"{wire}: {WireColour.Parse(colour).Words}" }));
            return;
        }

        pen.Add(new PathItem(line) { Stroke = new(Ink.Black, 0.7) { DashMm = Dashes(hop.Kind) } });
        Sign(pen, hop, new Point(x, (fromY + toY) / 2));
    }

    private static System.Collections.Immutable.ImmutableArray<double> Dashes(HopKind kind) => kind switch
    {
        HopKind.Kept => [2.4, 1.2],
        HopKind.Body => [0.8, 1.2],
        HopKind.NotDescribed => [0.8, 2.4],
        _ => [],
    };

    private static void Sign(Pen pen, TraceHop hop, Point at)
    {
        switch (hop.Kind)
        {
            case HopKind.Fuse:
                pen.Frame(new Box(at.X - 1.3, at.Y - 2.6, 2.6, 5.2), 0.5);
                break;
            case HopKind.Contact:
                pen.Frame(new Box(at.X - 1.2, at.Y - 2, 2.4, 4), 0.18, colour: Ink.Paper, fill: Ink.Paper);
                pen.Add(new PathItem(Outline.Line(at.X, at.Y + 2, at.X + 2.2, at.Y - 2)) { Stroke = new(Ink.Black, 0.7) });
                break;
            case HopKind.Load:
                Load(pen, hop.Words, at);
                break;
            default:
                break;
        }
    }

    private static void Load(Pen pen, string words, Point at)
    {
        const double R = 3.2;
        var round = words.StartsWith("lamp", StringComparison.Ordinal) || words.StartsWith("motor", StringComparison.Ordinal);
        if (!round)
        {
            pen.Frame(new Box(at.X - 2.2, at.Y - R, 4.4, 2 * R), 0.5, fill: Ink.Paper);
            return;
        }

        pen.Add(new PathItem(Outline.Circle(at, R)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 0.5) });
        if (words.StartsWith("motor", StringComparison.Ordinal))
        {
            pen.Letters("M", at.X, at.Y + 1.25, TextStyle.Bold.Middle);
            return;
        }

        var d = R * Math.Sqrt(0.5);
        pen.Add(new PathItem(Outline.Line(at.X - d, at.Y - d, at.X + d, at.Y + d)) { Stroke = new(Ink.Black, 0.5) });
        pen.Add(new PathItem(Outline.Line(at.X - d, at.Y + d, at.X + d, at.Y - d)) { Stroke = new(Ink.Black, 0.5) });
    }
}
