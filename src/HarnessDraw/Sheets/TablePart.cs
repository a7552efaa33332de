using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>The right side of a connector sheet: head, table, what its signs mean, the line to sign, how a ring is read.</summary>
internal static class TablePart
{
    /// <summary>From the top of the area to the first row, mm.</summary>
    public const double AboveMm = 10 + ConnectorTable.HeadMm;
    private const double NoteMm = 4.4;

    /// <summary>What the notes and the line to sign need below the last row, mm.</summary>
    public static double BelowMm(ConnectorSubject subject, ConnectorKeys keys, IEnumerable<ConnectorRow> rows, double widthMm) =>
        5 + (NotesOf(subject, keys, rows).Sum(n => Pen.Wrapped(n, widthMm).Length) * NoteMm) + 4;

    public static void Paint(Pen pen, ConnectorTable table, ConnectorSubject subject, ConnectorKeys keys, ImmutableArray<ConnectorLine> lines, Box area, bool goesOn)
    {
        pen.Rule(area.X, area.Y + 1, area.Right, 0.7);
        pen.Text(goesOn ? "CAVITIES AND EXPECTED VOLTS, continued" : "CAVITIES AND EXPECTED VOLTS", area.X, area.Y + 7.5, area.Width, TextStyle.Bold.At(3.5));
        table.PaintHead(pen, area.Y + 10);
        var y = table.PaintLines(pen, lines, area.Y + AboveMm) + 5;
        foreach (var note in NotesOf(subject, keys, lines.SelectMany(l => l.Rows)))
        {
            y = pen.Paragraph(note, area.X, y, area.Width, lineMm: NoteMm, most: Math.Max(0, (int)((area.Bottom - 4 - y) / NoteMm) + 1));
        }

        if (y + 3 < area.Bottom)
        {
            Blanks.Paint(pen, ["All pinned", "all tugged", "all locked", "by", "date"], area.X, y + 1.5, area.Width);
        }

        if (y + 24 < area.Bottom)
        {
            Legend(pen, new Box(area.X, y + 8, area.Width, 14));
        }
        else if (y + 9 < area.Bottom)
        {
            pen.Text(Rings, area.X, y + 8, area.Width);
        }
    }

    /// <summary>What the faces show, in words.</summary>
    public const string Rings = "Ring: base colour. Arcs: tracer. Ticks: no wire.";

    private static IEnumerable<string> NotesOf(ConnectorSubject subject, ConnectorKeys keys, IEnumerable<ConnectorRow> rows)
    {
        var sizes = subject.Part.Cavities.Select(c => c.Size).Distinct(StringComparer.Ordinal).OrderBy(ContactSize.Mm).ToList();
        return
        [
            .. keys.Explained(rows),
            "Volts to the grounded pole, mated, loaded, run with the circuit at work. Bold under off: live with the key off. –: not known. " +
            $"Dot: cavity {string.Join(", ", sizes)} mm. A: the most in any state.",
        ];
    }

    private static void Legend(Pen pen, Box box)
    {
        pen.Rule(box.X, box.Y, box.Right, 0.35);
        var (y, third) = (box.Y + 8, box.Width / 3);
        var plain = WireColour.Parse("GN");
        CavityPainter.PaintRing(pen, new(box.X + 5, y), 4.6, 3.4, plain, null);
        pen.Text("ring: base colour", box.X + 12, y + 1.25, third - 13);
        CavityPainter.PaintRing(pen, new(box.X + third + 5, y), 4.6, 3.4, WireColour.Parse("GN/WH"), null);
        pen.Text("arcs: tracer", box.X + third + 12, y + 1.25, third - 13);
        CavityPainter.PaintTicks(pen, new(box.X + (2 * third) + 5, y), 4.6, null);
        pen.Text("ticks: no wire", box.X + (2 * third) + 12, y + 1.25, third - 13);
    }
}

/// <summary>Words with a line after each to write on.</summary>
internal static class Blanks
{
    public static void Paint(Pen pen, IReadOnlyList<string> words, double x, double baseY, double widthMm)
    {
        var text = words.Sum(w => Pen.Width(w));
        var line = Math.Min(16, ((widthMm - text) / words.Count) - 4);
        foreach (var word in words)
        {
            pen.Text(word, x, baseY, widthMm);
            x += Pen.Width(word) + 1.2;
            pen.Rule(x, baseY + 0.6, x + line, 0.25);
            x += line + 2.8;
        }
    }
}
