using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Draws one face of a connector: body, latch, key rib, halves, centre bolt and cavities. Positions mirror in the mating view, letters never.</summary>
internal static class FacePainter
{
    public const double LatchMm = 3.2;

    /// <summary>The body's upper left corner is <paramref name="at"/>; the latch stands above it.</summary>
    public static void Paint(Pen pen, ConnectorSubject subject, ConnectorFace face, Point at, bool mating)
    {
        var body = new Box(at.X, at.Y, face.WidthMm, face.HeightMm);
        PaintLatch(pen, body);
        PaintKey(pen, face, body, mating);
        pen.Frame(body, 0.7, Math.Min(4, body.Height / 6), fill: Ink.Paper);
        PaintHalves(pen, face, body);
        var letters = Letters(subject);
        foreach (var cavity in face.Cavities)
        {
            PaintCavity(pen, subject, face, cavity, letters[cavity.Part.Name], new(at.X + face.X(cavity, mating), at.Y + cavity.Centre.Y));
        }
    }

    /// <summary>The letters of every cavity; where exclusive options share one, the first wire and a plus.</summary>
    public static Dictionary<string, CavityLetters> Letters(ConnectorSubject subject)
    {
        var wires = subject.Rows.Where(r => r.Wire is not null).ToLookup(r => r.Cavity, r => r.Wire!.Id, StringComparer.Ordinal);
        return subject.Part.Cavities.ToDictionary(
            c => c.Name,
            c => new CavityLetters(c.Name, wires[c.Name].ToList() is { Count: > 0 } used ? used[0] + (used.Count > 1 ? "+" : "") : null),
            StringComparer.Ordinal);
    }

    private static void PaintCavity(Pen pen, ConnectorSubject subject, ConnectorFace face, FaceCavity cavity, CavityLetters letters, Point centre)
    {
        var row = subject.RowOf(cavity.Part.Name);
        var tag = new Tag { Cavity = $"{subject.Thing.Id}:{cavity.Part.Name}", For = row.Wire?.Id, Title = row.Wire is { } wire ? $"{cavity.Part.Name}: wire {wire.Id}, {WireColour.Parse(wire.Colour).Words}" : $"{cavity.Part.Name}: unused" };
        CavityPainter.Paint(pen, centre, cavity, letters, row.Wire?.Colour, tag, face.ShowsWires);
    }

    private static void PaintLatch(Pen pen, Box body)
    {
        var width = Math.Clamp(body.Width * 0.18, 6, 16);
        pen.Frame(new Box(body.Centre.X - (width / 2), body.Y - LatchMm, width, LatchMm + 1), 0.35, 0.8, fill: Ink.QuietFill);
    }

    private static void PaintKey(Pen pen, ConnectorFace face, Box body, bool mating)
    {
        var side = Mirrored(face.Part.Key, mating);
        var length = Math.Clamp(Math.Min(body.Width, body.Height) * 0.16, 4, 12);
        Box? rib = side switch
        {
            "left" => new Box(body.X - 2, body.Centre.Y - (length / 2), 3, length),
            "right" => new Box(body.Right - 1, body.Centre.Y - (length / 2), 3, length),
            "bottom" => new Box(body.Centre.X - (length / 2), body.Bottom - 1, length, 3),
            _ => null,
        };
        if (rib is { } box)
        {
            pen.Frame(box, 0.35, 0.6, fill: Ink.QuietFill);
        }
    }

    /// <summary>The side of the key as the view shows it.</summary>
    public static string? Mirrored(string? side, bool mating) => (side, mating) switch
    {
        ("left", true) => "right",
        ("right", true) => "left",
        _ => side,
    };

    // two halves above each other: a line between them, the bolt in its middle
    private static void PaintHalves(Pen pen, ConnectorFace face, Box body)
    {
        var split = SplitY(face);
        if (split is { } y)
        {
            pen.Rule(body.X + 0.4, body.Y + y - 0.5, body.Right - 0.4, 0.25);
            pen.Rule(body.X + 0.4, body.Y + y + 0.5, body.Right - 0.4, 0.25);
        }

        if (face.Part.CentreBolt)
        {
            PaintBolt(pen, face, new Point(body.X, body.Y), new Point(face.WidthMm / 2, split ?? (face.HeightMm / 2)));
        }
    }

    private static void PaintBolt(Pen pen, ConnectorFace face, Point body, Point at)
    {
        var clear = face.Cavities.Min(c => Math.Sqrt(((c.Centre.X - at.X) * (c.Centre.X - at.X)) + ((c.Centre.Y - at.Y) * (c.Centre.Y - at.Y))) - c.RadiusMm) - 0.6;
        var radius = Math.Clamp(clear, 1.2, 4.2);
        var centre = body + at;
        pen.Add(new PathItem(Outline.Circle(centre, radius)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 0.35) });
        for (var degrees = 0; degrees < 180; degrees += 60)
        {
            var (dx, dy) = (radius * 0.55 * Math.Cos(degrees * Math.PI / 180), radius * 0.55 * Math.Sin(degrees * Math.PI / 180));
            pen.Add(new PathItem(Outline.Line(centre.X - dx, centre.Y - dy, centre.X + dx, centre.Y + dy)) { Stroke = new(Ink.Black, 0.35) });
        }
    }

    // halves that do not lie above each other are not outlined
    private static double? SplitY(ConnectorFace face)
    {
        var halves = face.Cavities.Where(c => c.Part.Half is not null).GroupBy(c => c.Part.Half!, StringComparer.Ordinal).OrderBy(g => g.Min(c => c.Centre.Y)).ToList();
        if (halves.Count != 2)
        {
            return null;
        }

        var (above, below) = (halves[0].Max(c => c.Centre.Y + c.RadiusMm), halves[1].Min(c => c.Centre.Y - c.RadiusMm));
        return above < below ? (above + below) / 2 : null;
    }
}
