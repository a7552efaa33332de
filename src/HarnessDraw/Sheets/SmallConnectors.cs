using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Pages of small connectors: a block each, name above, both faces on the left, the table on the right.</summary>
internal static class SmallConnectors
{
    private const double HeadlineMm = 14;
    private const double LeastFaceMm = 33;
    private const double FaceStepMm = 3;
    private const double LeastWidthMm = 236;
    private const double BodyTopMm = 18.5;
    private const double RowMm = 5.2;
    private const double NoteMm = 4.4;
    private const double AfterMm = 5;

    public static IEnumerable<ConnectorPage> Pages(ImmutableArray<ConnectorSubject> subjects, ConnectorKeys keys, TitleBlock block, SheetOptions options)
    {
        if (subjects.IsEmpty)
        {
            return [];
        }

        var paper = options.Paper is { } asked && asked.WidthMm >= asked.HeightMm ? asked : options.Paper is { } upright ? PaperSizes.Find($"{upright.Name.Split(' ')[0]} landscape") ?? upright : PaperSizes.A4Landscape;
        var frame = Frame.Compose(paper, block, ConnectorPage.FrameOf);
        var inner = frame.Border.Frame.Grow(-4);
        var columns = Math.Max(1, (int)((inner.Width + 8) / (LeastWidthMm + 8)));
        var width = (inner.Width - (8 * (columns - 1))) / columns;
        var pages = Fill([.. subjects.Select(s => Measure(s, keys, width))], columns, inner.Y + HeadlineMm, frame.TitleBox.Y - 2);
        return pages.Select((page, i) => Page(page, i, pages.Count, keys, options, paper, frame, inner, width));
    }

    private static ConnectorPage Page(List<Placed> blocks, int index, int count, ConnectorKeys keys, SheetOptions options, Paper paper, FrameLayout frame, Box inner, double width)
    {
        var pen = new Pen(options.BlackInk);
        pen.Text("PIN-OUT OF SMALL CONNECTORS", inner.X, inner.Y + 8, inner.Width * 0.6, TextStyle.Bold.At(5));
        pen.Text("Check which side you look at: the views are mirror images.", inner.Right, inner.Y + 8, inner.Width * 0.48, TextStyle.Bold.Right with { Colour = Ink.Caution });
        foreach (var placed in blocks)
        {
            Paint(pen, placed.Block, keys, inner.X + (placed.Column * (width + 8)), placed.Y, width);
        }

        Notes(pen, keys, blocks, Box.FromEdges(frame.Border.Frame.X, frame.Border.Frame.Bottom - 30, frame.TitleBox.X, frame.Border.Frame.Bottom));
        return new(count > 1 ? $"Small connectors, {index + 1} of {count}" : "Small connectors", paper, pen.Items);
    }

    private static void Paint(Pen pen, Block block, ConnectorKeys keys, double left, double top, double width)
    {
        var subject = block.Subject;
        pen.Rule(left, top, left + width, 0.5);
        var name = subject.Thing.SideMark is { } mark ? $"{subject.Thing.Label}  {mark}" : subject.Thing.Label;
        var head = TextStyle.Bold.At(5);
        pen.Text(name, left, top + 7.5, width * 0.4, head);
        var from = left + Math.Min(width * 0.4, Pen.Width(name, head)) + 4;
        pen.Text(ConnectorWords.Under(subject), from, top + 7.5, left + width - from);
        var faceMm = block.FaceMm;
        foreach (var (mating, words, at) in new[] { (false, "wire-entry side", left), (true, "mating side", left + faceMm + 3) })
        {
            pen.Text(words, at, top + 13, faceMm, TextStyle.Bold);
            if (block.Face is { } face)
            {
                FacePainter.Paint(pen, subject, face, new(at + ((faceMm - face.WidthMm) / 2), top + BodyTopMm), mating);
            }
        }

        var tableLeft = left + TableAt(faceMm);
        new ConnectorTable(subject, keys.Terminals, keys.Options, tableLeft, left + width - tableLeft).Paint(pen, subject.Rows, top + 9.4, RowMm);
    }

    private static double TableAt(double faceMm) => (2 * faceMm) + 8;

    private static void Notes(Pen pen, ConnectorKeys keys, List<Placed> blocks, Box box)
    {
        pen.Rule(box.X + 0.35, box.Y, box.Right - 0.35, 0.7);
        var rows = blocks.SelectMany(b => b.Block.Subject.Rows).ToList();
        var (y, left, width) = (box.Y + 5, box.X + 4, box.Width - 8);
        ImmutableArray<string> notes =
        [
            "Battery off. Views with the latch up.",
            .. keys.Explained(blocks[0].Block.Subject, rows).Reverse(),
            "Volts: to the grounded pole, mated, loaded; RUN with the circuit at work.",
            "Bold OFF: live with the key off. –: not known.",
        ];
        foreach (var note in notes)
        {
            y = pen.Paragraph(note, left, y, width, lineMm: NoteMm, most: Math.Max(0, (int)Math.Floor((box.Bottom - 2 - y) / NoteMm) + 1));
        }
    }

    private static Block Measure(ConnectorSubject subject, ConnectorKeys keys, double width)
    {
        var (face, faceMm) = FaceOf(subject, width - new ConnectorTable(subject, keys.Terminals, keys.Options, 0, width).LeastWidthMm);
        var table = 9.4 + ConnectorTable.HeadMm + (subject.Rows.Length * RowMm);
        return new(subject, face, faceMm, Math.Max(table, BodyTopMm + (face?.HeightMm ?? 8) + 2.5) + AfterMm);
    }

    // the smallest face that holds the wire ids; without room for them the cavity names alone
    private static (ConnectorFace? Face, double FaceMm) FaceOf(ConnectorSubject subject, double roomMm)
    {
        var letters = FacePainter.Letters(subject);
        foreach (var withWires in new[] { true, false })
        {
            for (var faceMm = LeastFaceMm; TableAt(faceMm) <= roomMm; faceMm += FaceStepMm)
            {
                if (ConnectorFaceFitter.Fit(subject.Part, letters, faceMm - 5, 60, withWires) is { } face)
                {
                    return (face, faceMm);
                }
            }
        }

        return (null, LeastFaceMm);
    }

    // blocks in order, column after column
    private static List<List<Placed>> Fill(ImmutableArray<Block> blocks, int columns, double top, double bottom)
    {
        List<List<Placed>> pages = [[]];
        var (column, y) = (0, top);
        foreach (var block in blocks)
        {
            if (y > top && y + block.HeightMm - AfterMm > bottom)
            {
                (column, y) = (column + 1, top);
            }

            if (column == columns)
            {
                pages.Add([]);
                column = 0;
            }

            pages[^1].Add(new(block, column, y));
            y += block.HeightMm;
        }

        return pages;
    }

    private sealed record Block(ConnectorSubject Subject, ConnectorFace? Face, double FaceMm, double HeightMm);

    private sealed record Placed(Block Block, int Column, double Y);
}
