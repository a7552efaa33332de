using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Pages of small connectors, ordered by place: blocks column after column, one table head a column.</summary>
internal static class SmallConnectors
{
    private const double HeadlineMm = 15;
    private const double BetweenMm = 6;
    private const double RowMm = 5.2;
    private const double NoteMm = 4.4;
    private const double LeastWordsMm = 26;
    private const int NextFew = 6;
    private const double LeastShare = 0.25;
    private const double StepMm = 3;
    private const double MostFreeMm = 60;
    private const string Caution = "Battery off. Check which side you look at.";
    private const string Reading = ShortReading + " Volts to the grounded pole, mated, loaded, run with the circuit at work; bold under off: live with the key off; –: not known.";
    private const string ShortReading = "The two views of a connector are mirror images, latch up.";

    /// <summary>On the paper asked for, else on A4 where one page holds all, else on A3.</summary>
    public static ImmutableArray<ConnectorPage> Pages(ImmutableArray<ConnectorSubject> subjects, ConnectorKeys keys, TitleBlock block, SheetOptions options)
    {
        if (subjects.IsEmpty)
        {
            return [];
        }

        ImmutableArray<ConnectorSubject> ordered = [.. subjects.OrderBy(s => s.Thing.Place, StringComparer.Ordinal).ThenBy(s => s.Thing.Id, StringComparer.Ordinal).ThenBy(s => s.Side)];
        IReadOnlyList<ConnectorRow> rows = [.. ordered.SelectMany(s => s.Rows)];
        var table = new ConnectorTable(new ConnectorColumns(keys, rows).Stacked(), rows, 0, 400, RowMm);
        var small = new Setting(Lying(options.Paper ?? PaperSizes.A4Landscape), ordered, table, keys, block, options);
        return (options.Paper is not null || small.Count == 1 ? small : new(PaperSizes.A3, ordered, table, keys, block, options)).Pages();
    }

    private static Paper Lying(Paper paper) =>
        paper.WidthMm >= paper.HeightMm ? paper : PaperSizes.Find($"{paper.Name.Split(' ')[0]} landscape") ?? paper;

    /// <summary>The blocks set on one kind of paper.</summary>
    private sealed class Setting
    {
        private readonly Paper paper;
        private readonly ConnectorKeys keys;
        private readonly SheetOptions options;
        private readonly FrameLayout frame;
        private readonly Box inner;
        private readonly double width;
        private readonly int columns;
        private readonly ImmutableArray<ConnectorTable> tables;
        private readonly ImmutableArray<SmallBlock> blocks;
        private readonly List<List<Placed>> pages;

        /// <param name="paper">The paper, lying.</param>
        /// <param name="subjects">Sides of connectors in their order.</param>
        /// <param name="table">All their rows, measured.</param>
        /// <param name="keys">Marks and what they stand for.</param>
        /// <param name="block">The title block.</param>
        /// <param name="options">How the sheets are drawn.</param>
        public Setting(Paper paper, ImmutableArray<ConnectorSubject> subjects, ConnectorTable table, ConnectorKeys keys, TitleBlock block, SheetOptions options)
        {
            (this.paper, this.keys, this.options) = (paper, keys, options);
            frame = Frame.Compose(paper, block, ConnectorPage.FrameOf);
            inner = frame.Border.Frame.Grow(-3);

            // what one column must have; less would break words
            var leastMm = SmallBlock.FacesMm + SmallBlock.TableGapMm + Math.Max(LeastWordsMm, table.LeastWidthMm);
            columns = Math.Max(1, (int)((inner.Width + BetweenMm) / (leastMm + BetweenMm)));
            width = (inner.Width - (BetweenMm * (columns - 1))) / columns;
            const double Before = SmallBlock.FacesMm + SmallBlock.TableGapMm;
            tables = [.. Enumerable.Range(0, columns).Select(c => table.At(Left(c) + Before, width - Before))];
            blocks = [.. subjects.Select(s => SmallBlock.Of(s, tables[0], width))];
            pages = Filled();
        }

        /// <summary>How many pages the blocks take.</summary>
        public int Count => pages.Count;

        public ImmutableArray<ConnectorPage> Pages() => [.. pages.Select((page, i) => Page(page, i, pages.Count))];

        private double Left(int column) => inner.X + (column * (width + BetweenMm));

        private ConnectorPage Page(List<Placed> placed, int index, int count)
        {
            var pen = new Pen(options.BlackInk);
            var name = TextStyle.Bold.At(5);
            pen.Text("PIN-OUT OF SMALL CONNECTORS", inner.X, inner.Y + 5.5, inner.Width, name);
            var after = inner.X + Pen.Width("PIN-OUT OF SMALL CONNECTORS", name) + 4;
            var caution = TextStyle.Bold.Right with { Colour = Ink.Caution };
            var cautionMm = Math.Min(Pen.Width(Caution, caution), inner.Right - after);
            pen.Text(Caution, inner.Right, inner.Y + 5.5, cautionMm + 0.01, caution);
            var room = inner.Right - after - cautionMm - 4;
            if (Pen.Width(Places(placed)) <= room)
            {
                // a help only: every connector says its own place
                pen.Text(Places(placed), after, inner.Y + 5.5, room);
            }

            pen.Text(Pen.Width(Reading) <= inner.Width ? Reading : ShortReading, inner.X, inner.Y + 11, inner.Width);
            for (var column = 0; column < columns && placed.Any(p => p.Column == column); column++)
            {
                tables[column].PaintHead(pen, inner.Y + HeadlineMm - 1, ruled: false);
            }

            foreach (var block in placed)
            {
                block.Block.Paint(pen, tables[block.Column], Left(block.Column), block.Y, width);
            }

            Notes(pen, placed, Box.FromEdges(frame.Border.Frame.X, frame.Border.Frame.Bottom - 30, frame.TitleBox.X, frame.Border.Frame.Bottom));
            return new(count > 1 ? $"Small connectors, {index + 1} of {count}" : "Small connectors", paper, pen.Items);
        }

        private static string Places(List<Placed> placed)
        {
            var places = placed.Select(p => p.Block.Subject.Thing.Place).Order(StringComparer.Ordinal).ToList();
            var (first, last) = (places[0], places[^1]);
            return first == last ? $"Place: {first}" : $"By place: {first} to {last}";
        }

        private void Notes(Pen pen, List<Placed> placed, Box box)
        {
            pen.Rule(box.X + 0.35, box.Y, box.Right - 0.35, 0.7);
            var (y, left, noteMm) = (box.Y + 4.6, box.X + 4, box.Width - 8);
            var notes = keys.Explained(placed.SelectMany(p => p.Block.Subject.Rows));
            if (Pen.Width(Reading) > inner.Width)
            {
                notes = notes.Append("Volts: mated, loaded, run with the circuit at work. Bold: live with the key off. –: not known.");
            }

            foreach (var note in notes.Append(TablePart.Rings))
            {
                y = pen.Paragraph(note, left, y, noteMm, lineMm: NoteMm, most: Math.Max(0, (int)Math.Floor((box.Bottom - 1 - y) / NoteMm) + 1));
            }
        }

        // where a few blocks are left over, the pages before end earlier, as far as that takes no page more
        private List<List<Placed>> Filled()
        {
            var top = inner.Y + HeadlineMm + ConnectorTable.HeadMm;
            var room = columns * (frame.Border.Frame.Bottom - 32 - top);
            var usual = Fill(top, 0);
            for (var free = StepMm; usual.Count > 1 && IsNearlyEmpty(usual) && free <= MostFreeMm; free += StepMm)
            {
                var even = Fill(top, free);
                if (even.Count == usual.Count && !IsNearlyEmpty(even))
                {
                    return even;
                }
            }

            return usual;

            bool IsNearlyEmpty(List<List<Placed>> of) => of[^1].Sum(p => p.Block.HeightMm) < LeastShare * room;
        }

        // blocks in order, column after column, as far as they fit
        private List<List<Placed>> Fill(double top, double freeMm)
        {
            // a stamp stands above the title block only
            double Bottom(int column) => (Left(column) + width < frame.TitleBox.X ? frame.Border.Frame.Bottom - 32 : frame.TitleBox.Y - 2) - freeMm;

            List<List<Placed>> pages = [[]];
            var (column, y) = (0, top);
            var left = blocks.ToList();
            while (left.Count > 0)
            {
                // the room below is for the next that fits it, of the next few: so all stay near their place
                var next = left.Take(NextFew).FirstOrDefault(b => y + b.HeightMm <= Bottom(column));
                if (next is null && y > top)
                {
                    (column, y) = (column + 1, top);
                    if (column == columns)
                    {
                        pages.Add([]);
                        column = 0;
                    }

                    continue;
                }

                next ??= left[0];
                pages[^1].Add(new(next, column, y));
                left.Remove(next);
                y += next.HeightMm;
            }

            return pages;
        }

        private sealed record Placed(SmallBlock Block, int Column, double Y);
    }
}
