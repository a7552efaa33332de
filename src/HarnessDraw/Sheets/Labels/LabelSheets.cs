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
    private const int LeastColumns = 3;
    private const int MostColumns = 5;
    private const double LineMm = 4.1;
    private const double NameMm = 5.2;

    private const double TopMm = 5.2;

    // what a label can spare at head and foot
    private const double CloserMm = 0.7;

    /// <summary>As many pages as the labels need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => WirePages.Compose(plan, findings, options,
        shown => new(SheetKinds.Labels, "LABELS", "label sheet")
        {
            Aside = $"{shown.Wires.Length * 2} for wire ends, in the order they are put on",
            Caution = "Battery disconnected while you work. Put the label on before the terminal; never under tape or a tie. Readable where it hangs.",
        },
        (flow, shown) =>
        {
            flow.Paragraph("Whole adhesive sheets or plain paper under clear sleeve, printed at 100 %; cut along the lines. Ø: bore in mm of the heat-shrink sleeve that slips over the wire and shrinks to half.");
            flow.Gap(2);
            Grid(flow, HarnessLabels.OfWires(shown), "WIRE ENDS");
            Grid(flow, HarnessLabels.OfParts(shown), "BRANCHES, CONNECTORS");
            Grid(flow, HarnessLabels.OfFuses(shown), "FUSES");
        });

    private static void Grid(PageFlow flow, ImmutableArray<HarnessLabel> labels, string words)
    {
        if (labels.IsEmpty)
        {
            return;
        }

        // more beside each other where none needs more room
        var columns = Math.Clamp((int)(flow.Area.Width / (labels.Max(WantedMm) + 4)), LeastColumns, MostColumns);
        var width = flow.Area.Width / columns;
        var rows = labels.Chunk(columns).ToList();

        flow.Heading(words, HeightOf(rows[0], width));
        foreach (var row in rows)
        {
            var height = HeightOf(row, width);
            flow.Piece(new PagePiece(new PagePart(height, height - CloserMm, (pen, y, closer) =>
            {
                var less = closer ? CloserMm : 0;
                for (var i = 0; i < row.Length; i++)
                {
                    Paint(pen, row[i], new Box(flow.Area.X + (i * width), y, width, height - less), TopMm - (less / 2));
                }
            })));
        }
    }

    private static void Paint(Pen pen, HarnessLabel label, Box box, double topMm)
    {
        pen.Frame(box, 0.18);
        var (x, room) = (box.X + 2, box.Width - 4);
        var y = box.Y + topMm;
        var tag = label.Wire is { } wire ? new Tag { For = wire.Id } : null;
        foreach (var line in LineBreaker.Lines(label.Name, room, NameStyle))
        {
            pen.Letters(line, x, y, NameStyle, tag);
            y += NameMm;
        }

        if (label.Wire is { } own)
        {
            // colour and size beside the id where both fit, else in a line of their own
            var beside = FactsBeside(label, room);
            y -= beside ? NameMm : 0;
            var at = beside ? x + Pen.Width(label.Name, NameStyle) + 2 : x;
            pen.Swatch(own.Colour, at, y);
            pen.Letters(Facts(own), at + 7, y, TextStyle.Plain, tag);
            y += NameMm;
        }

        y -= 0.6;
        var bore = Bore(label);
        pen.Letters(bore, box.Right - 2, y, TextStyle.Plain.Right, tag);
        foreach (var line in LineBreaker.Lines(label.Line, LineRoom(label, room), TextStyle.Bold))
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

    private static string Facts(Wire wire) => $"{wire.Colour} {wire.SizeLabel}";

    private static string Bore(HarnessLabel label) => label.Sleeve is { } sleeve ? $"Ø {Shown.Number(sleeve.BeforeMm, 1)}" : "";

    private static double LineRoom(HarnessLabel label, double room) => label.Sleeve is null ? room : room - Pen.Width(Bore(label)) - 2;

    private static bool FactsBeside(HarnessLabel label, double room) => label.Wire is { } wire && Pen.Width(label.Name, NameStyle) + 9 + Pen.Width(Facts(wire)) <= room;

    private static double WantedMm(HarnessLabel label) => Math.Max(
        Pen.Width(label.Name, NameStyle) + (label.Wire is { } wire ? 9 + Pen.Width(Facts(wire)) : 0),
        Math.Max(Pen.Width(label.Line, TextStyle.Bold) + (label.Sleeve is null ? 0 : Pen.Width(Bore(label)) + 2), Pen.Width(label.Under))) + 0.1;

    private static TextStyle NameStyle => TextStyle.Bold.At(3.5);

    private static double HeightOf(IEnumerable<HarnessLabel> row, double width) => row.Max(l => HeightOf(l, width - 4));

    private static double HeightOf(HarnessLabel label, double room) =>
        11.5 + ((LineBreaker.Lines(label.Name, room, NameStyle).Length - 1 + (label.Wire is null || FactsBeside(label, room) ? 0 : 1)) * NameMm)
        + ((LineBreaker.Lines(label.Line, LineRoom(label, room), TextStyle.Bold).Length + LineBreaker.Lines(label.Under, room).Length - 1) * LineMm);
}
