using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.Labels;

/// <summary>
/// Labels for every end of every wire, for branches, connectors and fuses, on whole sheets of adhesive A4 or Letter stock: cut along the lines.
/// </summary>
public static class LabelSheets
{
    private const int Columns = 3;
    private const double LineMm = 4.1;

    /// <summary>As many pages as the labels need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => WirePages.Compose(plan, findings, options,
        shown => new(SheetKinds.Labels, "LABELS", "label sheet")
        {
            Aside = $"{shown.Wires.Length * 2} for wire ends, in the order they are put on",
            Caution = "Battery disconnected while you work. Put the label on before the terminal; never under tape or a tie. Readable from the open bonnet.",
        },
        (flow, shown) =>
        {
            flow.Paragraph("Whole adhesive sheets or plain paper under clear sleeve, printed at 100 %; cut along the lines. Ø: bore in mm of the heat-shrink sleeve that slips over the wire and shrinks to half.");
            flow.Y += 2;
            Grid(flow, HarnessLabels.OfWires(shown), "WIRE ENDS");
            Grid(flow, HarnessLabels.OfParts(shown), "BRANCHES, CONNECTORS, FUSES");
        });

    private static void Grid(PageFlow flow, ImmutableArray<HarnessLabel> labels, string words)
    {
        var width = flow.Area.Width / Columns;
        var rows = labels.Chunk(Columns).ToList();
        if (rows.Count == 0)
        {
            return;
        }

        flow.Heading(words, HeightOf(rows[0], width));
        foreach (var row in rows)
        {
            var height = HeightOf(row, width);
            flow.Need(height);
            for (var i = 0; i < row.Length; i++)
            {
                Paint(flow.Pen, row[i], new Box(flow.Area.X + (i * width), flow.Y, width, height));
            }

            flow.Y += height;
        }
    }

    private static void Paint(Pen pen, HarnessLabel label, Box box)
    {
        pen.Frame(box, 0.18);
        var (x, room) = (box.X + 2, box.Width - 4);
        var y = box.Y + 5.2;
        var tag = label.Wire is { } wire ? new Tag { For = wire.Id } : null;
        if (label.Wire is { } own)
        {
            pen.Letters(label.Name, x, y, NameStyle, tag);
            Facts(pen, own, label.Sleeve, x + Pen.Width(label.Name, NameStyle) + 2, box.Right - 2, y, tag);
        }
        else
        {
            foreach (var line in LineBreaker.Lines(label.Name, room, NameStyle))
            {
                pen.Letters(line, x, y, NameStyle);
                y += 5.2;
            }

            y -= 5.2;
        }

        y += 4.6;
        foreach (var line in LineBreaker.Lines(label.Line, room, TextStyle.Bold))
        {
            pen.Letters(line, x, y, TextStyle.Bold, tag);
            y += LineMm;
        }

        foreach (var line in LineBreaker.Lines(label.Under, room))
        {
            pen.Letters(line, x, y, TextStyle.Plain, tag);
            y += LineMm;
        }
    }

    // colour and size stand beside the id as long as they fit; the sleeve at the right edge
    private static void Facts(Pen pen, Wire wire, ShrinkSleeve? sleeve, double x, double right, double y, Tag? tag)
    {
        var bore = sleeve is null ? "" : $"Ø {Shown.Number(sleeve.BeforeMm, 1)}";
        var facts = $"{wire.Colour} {wire.SizeLabel}";
        if (x + 7 + Pen.Width(facts) + 2 + Pen.Width(bore) <= right)
        {
            pen.Swatch(wire.Colour, x, y);
            pen.Letters(facts, x + 7, y, TextStyle.Plain, tag);
        }

        if (bore.Length > 0 && x + Pen.Width(bore) <= right)
        {
            pen.Letters(bore, right, y, TextStyle.Plain.Right, tag);
        }
    }

    private static TextStyle NameStyle => TextStyle.Bold.At(3.5);

    private static double HeightOf(IEnumerable<HarnessLabel> row, double width) => row.Max(l =>
        5.2 + 4.6 + 1.6 + ((LineBreaker.Lines(l.Line, width - 4, TextStyle.Bold).Length + LineBreaker.Lines(l.Under, width - 4).Length - 1) * LineMm)
        + (l.Wire is null ? (LineBreaker.Lines(l.Name, width - 4, NameStyle).Length - 1) * 5.2 : 0));
}
