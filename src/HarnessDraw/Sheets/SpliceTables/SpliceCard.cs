using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.SpliceTables;

/// <summary>Paints one splice: head, picture of the joint, facts, ruler of its stretch of bundle.</summary>
internal static class SpliceCard
{
    private const double LegMm = 6;
    private const double LineMm = 4.3;
    private const double HeadMm = 9.7;
    private const double RulerMm = 9;
    private const double BarrelMm = 18;
    private const double LaneMm = 10;

    public static double HeightOf(SpliceFacts fact, OptionKeys keys, double widthMm) => TopMm(fact, widthMm) + PictureMm(fact, keys, widthMm) + 3 + (LineBreaker.Lines(PartWords(fact), widthMm).Length * LineMm) + 6 + RulerMm;

    public static void Paint(Pen pen, SpliceFacts fact, OptionKeys keys, string root, Box box)
    {
        Head(pen, fact, root, box);
        Joint(pen, fact, keys, new Box(box.X, box.Y + TopMm(fact, box.Width), box.Width, PictureMm(fact, keys, box.Width)));
        var y = box.Y + TopMm(fact, box.Width) + PictureMm(fact, keys, box.Width) + 5;
        foreach (var line in LineBreaker.Lines(PartWords(fact), box.Width))
        {
            pen.Letters(line, box.X, y, fact.InRange ? TextStyle.Plain : TextStyle.Bold with { Colour = Ink.Caution });
            y += 4.3;
        }

        Ticks(pen, box.X, y + 1.2);
        Ruler(pen, fact, box, box.Bottom - 4.5);
        pen.Rule(box.X, box.Bottom, box.Right, 0.35);
    }

    private static double TopMm(SpliceFacts fact, double widthMm) => HeadMm + (LineBreaker.Lines(WhereWords(fact), widthMm).Length * LineMm);

    // a leg is as high as the words beside it
    private static double LegMmOf(SpliceFacts fact, OptionKeys keys, double widthMm) =>
        fact.SideA.Concat(fact.SideB).Select(l => LegMm + ((There(l, keys, SideMm(widthMm)).Length - 1) * LineMm)).DefaultIfEmpty(LegMm).Max();

    private static double PictureMm(SpliceFacts fact, OptionKeys keys, double widthMm) => Math.Max(1, Math.Max(fact.SideA.Length, fact.SideB.Length)) * LegMmOf(fact, keys, widthMm);

    private static double SideMm(double widthMm) => (widthMm / 2) - (BarrelMm / 2) - LaneMm - 1.5;

    private static ImmutableArray<string> There(SpliceLeg leg, OptionKeys keys, double sideMm) =>
        LineBreaker.Lines(EndText.Words(leg.There), Math.Max(14, sideMm - Pen.Width(IdOf(leg, keys), TextStyle.Bold) - Pen.Width(FactsOf(leg)) - 4));

    private static string IdOf(SpliceLeg leg, OptionKeys keys) => leg.Wire.Id + (keys.KeyOf(leg.Wire.Builds) is { Length: > 0 } mark ? $" ({mark})" : "");

    private static string FactsOf(SpliceLeg leg) => $"{leg.Wire.Colour} {leg.Wire.SizeLabel}";

    private static string WhereWords(SpliceFacts fact)
    {
        var near = fact.NearestSplice is { } splice ? $"; nearest {splice}" : "";
        var length = fact.Segment.LengthMm is { } whole ? $", {LengthWords.Of(whole - fact.Splice.AtMm, fact.Units)} before {fact.Segment.To}" : "";
        return $"{LengthWords.Of(fact.Splice.AtMm, fact.Units)} from {fact.Segment.From}{length}{near}";
    }

    private static void Head(Pen pen, SpliceFacts fact, string root, Box box)
    {
        pen.Letters(fact.Splice.Id, box.X, box.Y + 6.6, TextStyle.Bold.At(5));
        var at = box.X + Pen.Width(fact.Splice.Id, TextStyle.Bold.At(5)) + 4;
        var station = fact.Splice.StationMm is { } mm ? $"{LengthWords.Of(mm, fact.Units)} from the datum" : "station not known: ______ mm from the datum";
        pen.Letters(station, at, box.Y + 6.6, TextStyle.Bold.At(3.5));
        var y = box.Y + 11.6;
        foreach (var line in LineBreaker.Lines(WhereWords(fact), box.Width))
        {
            pen.Letters(line, box.X, y, TextStyle.Plain);
            y += LineMm;
        }

        var circuit = fact.Splice.Circuit;
        if (at + Pen.Width(station, TextStyle.Bold.At(3.5)) + 4 + Pen.Width(circuit) <= box.Right)
        {
            pen.Letters(circuit, box.Right, box.Y + 6.6, TextStyle.Plain.Right);
        }
    }

    // side A enters from the left, side B leaves to the right, as the joint lies on the board with the datum at the left
    private static void Joint(Pen pen, SpliceFacts fact, OptionKeys keys, Box box)
    {
        var barrel = new Box(box.Centre.X - (BarrelMm / 2), box.Y + 0.6, BarrelMm, box.Height - 1.2);
        var leg = LegMmOf(fact, keys, box.Width);
        Legs(pen, fact.SideA, keys, box, barrel, leg, left: true);
        Legs(pen, fact.SideB, keys, box, barrel, leg, left: false);
        pen.Add(new PathItem(Outline.Rectangle(barrel, 1.5)) { Fill = Ink.QuietFill, Stroke = new(Ink.Black, 0.5) });
        foreach (var x in new[] { barrel.X + 5, barrel.Right - 5 })
        {
            pen.Upright(x, barrel.Y + 0.8, barrel.Bottom - 0.8, 0.35);
        }
    }

    private static void Legs(Pen pen, ImmutableArray<SpliceLeg> legs, OptionKeys keys, Box box, Box barrel, double legMm, bool left)
    {
        var top = box.Y + ((box.Height - (legs.Length * legMm)) / 2);
        for (var i = 0; i < legs.Length; i++)
        {
            var y = top + (i * legMm) + (legMm / 2);
            var (near, far) = left ? (barrel.X, barrel.X - LaneMm) : (barrel.Right, barrel.Right + LaneMm);
            var style = new LaneStyle(WireColour.Parse(legs[i].Wire.Colour)) { WidthMm = legs[i].Wire.AreaMm2 >= 4 ? 1.4 : 1, BlackInk = pen.BlackInk, Index = i };
            pen.Add(LanePainter.Paint(Outline.Line(far, y, near, y), style, new Tag { Wire = legs[i].Wire.Id, Circuit = legs[i].Wire.Circuit }));
            Words(pen, legs[i], keys, left ? new Box(box.X, y, far - box.X - 1.5, 0) : Box.FromEdges(far + 1.5, y, box.Right, y), left);
        }
    }

    private static void Words(Pen pen, SpliceLeg leg, OptionKeys keys, Box room, bool left)
    {
        var tag = new Tag { For = leg.Wire.Id };
        var x = left ? room.Right : room.X;
        foreach (var (text, style) in new[] { (IdOf(leg, keys), TextStyle.Bold), (FactsOf(leg), TextStyle.Plain) })
        {
            pen.Letters(text, x, room.Y + 1.25, left ? style.Right : style, tag);
            x += (left ? -1 : 1) * (Pen.Width(text, style) + 2);
        }

        var there = There(leg, keys, room.Width);
        var y = room.Y + 1.25 - ((there.Length - 1) * LineMm / 2);
        foreach (var line in there)
        {
            pen.Letters(line, x, y, left ? TextStyle.Plain.Quiet.Right : TextStyle.Plain.Quiet, tag);
            y += LineMm;
        }
    }

    private static string PartWords(SpliceFacts fact)
    {
        if (fact.Part is not { } part)
        {
            return $"Together {Shown.Number(fact.TotalMm2, 2)} mm². No splice of the catalogue is chosen: find one that takes it.";
        }

        var range = $"takes {Shown.Number(part.MinTotalMm2, 2)} to {Shown.Number(part.MaxTotalMm2, 2)} mm²";
        var sleeve = fact.Sleeve is { } covering ? $"{covering.Title}, {Shown.Number(fact.SleeveMm)} mm long" : $"{Shown.Number(fact.SleeveMm)} mm long, size by hand";
        return $"{(fact.InRange ? "" : "OUT OF RANGE: ")}{Shown.Units(part.Title)} ({part.Id}), {range}; together {Shown.Number(fact.TotalMm2, 2)} mm². Strip {Shown.Number(part.StripMm, 1)} mm. {(part.Sealed ? "Sealed" : "Not sealed by itself")}. Sleeve: {sleeve}.";
    }

    private static void Ticks(Pen pen, double x, double baseY)
    {
        foreach (var word in new[] { "sleeve on", "stripped", "crimped", "pulled", "shrunk", "at its station" })
        {
            pen.Frame(new Box(x, baseY - 3.1, 3.8, 3.8), 0.25);
            pen.Letters(word, x + 5.2, baseY, TextStyle.Plain);
            x += 5.2 + Pen.Width(word) + 5;
        }
    }

    // the stretch of bundle to one scale: how the splices are staggered is seen at a glance
    private static void Ruler(Pen pen, SpliceFacts fact, Box box, double y)
    {
        if (fact.Segment.LengthMm is not { } lengthMm || lengthMm <= 0)
        {
            return;
        }

        var (from, to) = (fact.Segment.From, fact.Segment.To);
        var words = Pen.Width(from) + Pen.Width(to);
        if (words > box.Width - 40)
        {
            return;
        }

        var line = Box.FromEdges(box.X + Pen.Width(from) + 3, y - 1, box.Right - Pen.Width(to) - 3, y + 1);
        pen.Letters(from, box.X, y + 1.2, TextStyle.Plain);
        pen.Letters(to, box.Right, y + 1.2, TextStyle.Plain.Right);
        pen.Rule(line.X, y, line.Right, 0.35);
        pen.Upright(line.X, y - 1.6, y + 1.6, 0.5);
        pen.Upright(line.Right, y - 1.6, y + 1.6, 0.5);
        foreach (var other in fact.Neighbours)
        {
            pen.Add(new PathItem(Outline.Circle(new(line.X + (other.AtMm / lengthMm * line.Width), y), 1.1)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 0.35) });
        }

        pen.Add(new PathItem(Outline.Circle(new(line.X + (fact.Splice.AtMm / lengthMm * line.Width), y), 1.4)) { Fill = Ink.Black });
    }
}
