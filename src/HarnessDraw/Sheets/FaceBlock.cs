using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>The left side of a connector sheet: title, both faces with their words and pictograms, places in words, caution box.</summary>
internal sealed record FaceBlock(ConnectorSubject Subject, ConnectorFace Face, Box Area, double FaceTopMm, double WordsMm, UnitsShown Units)
{
    private const double LineMm = 4.4;
    private const double BetweenMm = 4;

    public static FaceBlock? Fit(ConnectorSubject subject, Box area, double faceTopMm, UnitsShown units, double? wordsMm = null, bool withWires = true)
    {
        var words = wordsMm ?? area.Width;
        var height = area.Height - faceTopMm - 5 - WordsHeight(subject, words, units) - CautionHeight(subject, words, units);
        var face = new ConnectorFaceFitter(subject.Part, FacePainter.Letters(subject)).Fit(((area.Width - BetweenMm) / 2) - 4.4, height, withWires);
        return face is null ? null : new(subject, face, area, faceTopMm, words, units);
    }

    public static string Title(ConnectorSubject subject)
    {
        var label = subject.Thing.Label.ToUpperInvariant();
        return label.Contains("CONNECTOR", StringComparison.Ordinal) ? label : $"{label} CONNECTOR";
    }

    public void Paint(Pen pen)
    {
        pen.Text(Title(Subject), Area.X, Area.Y + 8.5, Area.Width, TextStyle.Bold.At(7));
        pen.Paragraph(ConnectorWords.Under(Subject), Area.X, Area.Y + 14, Area.Width, lineMm: LineMm, most: 2);
        var column = (Area.Width - BetweenMm) / 2;
        View(pen, Area.X, column, "WIRE-ENTRY SIDE", "as you insert terminals", mating: false);
        View(pen, Area.X + column + BetweenMm, column, "MATING SIDE", "as you probe, halves apart", mating: true);
        var bottom = Area.Y + FaceTopMm + Face.HeightMm + 5;
        var y = Words(pen, bottom);
        Caution(pen, y);
    }

    private void View(Pen pen, double left, double width, string name, string use, bool mating)
    {
        var y = Area.Y + 26;
        var room = width - FacePictogram.WidthMm - 4;
        var head = TextStyle.Bold.At(Pen.Width("WIRE-ENTRY SIDE", TextStyle.Bold.At(5)) <= room ? 5 : 3.5);
        pen.Text(name, left, y, room, head);
        pen.Text(use, left, y + 4.6, width - FacePictogram.WidthMm - 4);
        FacePictogram.Paint(pen, left + width - FacePictogram.WidthMm - 2, y - 1.2, mating);
        var body = left + 2.2;
        var latch = Math.Clamp(Face.WidthMm * 0.18, 6, 16);
        if (body + (Face.WidthMm / 2) - (latch / 2) - 1 - Pen.Width("latch up") >= left)
        {
            pen.Text("latch up", body + (Face.WidthMm / 2) - (latch / 2) - 1, Area.Y + FaceTopMm - 1, 30, TextStyle.Plain.Right);
        }
        else
        {
            pen.Text("latch up", body + (Face.WidthMm / 2) + (latch / 2) + 1, Area.Y + FaceTopMm - 1, 30);
        }

        FacePainter.Paint(pen, Subject, Face, new(body, Area.Y + FaceTopMm), mating);
    }

    private double Words(Pen pen, double top)
    {
        pen.Rule(Area.X, top, Area.X + WordsMm, 0.7);
        pen.Text("IN WORDS", Area.X, top + 6, WordsMm, TextStyle.Bold.At(3.5));
        var y = top + 11.2;
        foreach (var sentence in ConnectorWords.Places(Subject, Units))
        {
            y = pen.Paragraph(sentence, Area.X, y, WordsMm, lineMm: LineMm);
        }

        return y;
    }

    private void Caution(Pen pen, double top)
    {
        var box = new Box(Area.X + 0.5, top, WordsMm - 1, CautionHeight(Subject, WordsMm, Units) - 3);
        pen.Frame(box, 1, 1.5, Ink.Caution);
        CautionSign.Paint(pen, new(box.X + 7, box.Y + 7.2));
        pen.Text("CHECK WHICH SIDE YOU LOOK AT", box.X + 13, box.Y + 9.2, box.Width - 16, TextStyle.Bold.At(5) with { Colour = Ink.Caution });
        var y = box.Y + 15.4;
        foreach (var line in CautionLines(Subject, Units))
        {
            y = pen.Paragraph(line, box.X + 5, y, box.Width - 9, lineMm: LineMm);
        }

        Blanks.Paint(pen, ["Grease", "seal", "tool for removing terminals"], box.X + 5, y + 1, box.Width - 10);
    }

    private static IEnumerable<string> CautionLines(ConnectorSubject subject, UnitsShown units)
    {
        yield return $"Wire-entry side and mating side are mirror images. {ConnectorWords.Live(subject)}";
        if (ConnectorWords.Bolt(subject, units) is { } bolt)
        {
            yield return bolt;
        }

        yield return "Click, tug, look: every terminal. Grease lightly, do not pack. Seal the wire entry with neutral-cure sealant only.";
    }

    private static double WordsHeight(ConnectorSubject subject, double width, UnitsShown units) => 11.2 + (ConnectorWords.Places(subject, units).Sum(s => Lines(s, width)) * LineMm);

    private static double CautionHeight(ConnectorSubject subject, double width, UnitsShown units) => 15.4 + (CautionLines(subject, units).Sum(s => Lines(s, width - 10)) * LineMm) + 4.4 + 3;

    private static int Lines(string text, double width) => Pen.Wrapped(text, width).Length;
}

/// <summary>The triangle with its stroke and dot that stands before a caution.</summary>
internal static class CautionSign
{
    public static void Paint(Pen pen, Point centre)
    {
        pen.Add(new PathItem(Outline.Polyline([new(centre.X, centre.Y - 3.6), new(centre.X + 4, centre.Y + 3), new(centre.X - 4, centre.Y + 3)], closed: true)) { Stroke = new(Ink.Caution, 0.7) });
        pen.Add(new PathItem(Outline.Line(centre.X, centre.Y - 1.2, centre.X, centre.Y + 0.8)) { Stroke = new(Ink.Caution, 0.7) });
        pen.Add(new PathItem(Outline.Circle(new(centre.X, centre.Y + 1.9), 0.4)) { Fill = Ink.Caution });
    }
}
