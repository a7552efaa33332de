using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Draws the title block, and above it the revision table and the stamp; all stand in the lower right corner.</summary>
internal static class TitleBlockPainter
{
    private const double WidthMm = 180;
    private const double LabelCapMm = 2.5;
    private const double PadMm = 2;
    private const double ClearMm = 0.3;

    public static (ImmutableArray<Item> Items, Box TitleBox) Paint(GridBorder border, TitleBlock block, FrameOptions options)
    {
        var chart = options.Form == TitleBlockForm.Chart;
        var height = chart ? 62.0 : 30.0;
        var width = Math.Min(WidthMm, border.Frame.Width);
        var box = new Box(border.Frame.Right - width, border.Frame.Bottom - height, width, height);
        var cells = new Cells(box, width / WidthMm);
        cells.Outline();
        if (chart)
        {
            PaintChart(cells, block, border.Paper);
        }
        else
        {
            PaintSmall(cells, block, border.Paper);
        }

        var top = chart ? RevisionTable.Paint(cells, box, block.Revisions, options.RevisionLines) : box.Y;
        if (block.NotForBuild is { } reason)
        {
            top = PaintStamp(cells, Box.FromEdges(box.X, top - 14, box.Right, top), reason);
        }

        return (cells.Items, Box.FromEdges(box.X, top, box.Right, box.Bottom));
    }

    private static void PaintChart(Cells cells, TitleBlock b, Paper paper)
    {
        var title = cells.Logo(cells.Cell(0, 0, 112, 24, "Title"), b.Logo);
        cells.Fit(b.Vehicle, title.X + PadMm, title.Y + 12.3, title.Width - (2 * PadMm), 5, FaceWeight.Bold);
        cells.Fit(b.Title, title.X + PadMm, title.Y + 20, title.Width - (2 * PadMm), 3.5, FaceWeight.Bold);
        cells.Build(112, 0, 68, 12, b.Build);
        cells.Value(112, 12, 34, 12, "Waivers", b.Waivers);
        cells.Value(146, 12, 34, 12, "Source", b.Source);
        cells.Row(24, 12.5, [(45, "Owner", b.Owner), (32, "Drawn", b.Drawn), (35, "Approved", b.Approved), (34, "Type", b.Type), (34, "Date of issue", b.Date)]);
        cells.Value(0, 36.5, 45, 12.5, "Number", b.Number, 3.5, FaceWeight.Bold);
        cells.Value(45, 36.5, 14, 12.5, "Rev", b.Rev, 5, FaceWeight.Bold);
        cells.Value(59, 36.5, 14, 12.5, "Lang", b.Language);
        cells.Value(73, 36.5, 39, 12.5, "Scale", b.Scale);
        cells.Value(112, 36.5, 34, 12.5, "Paper", PaperSizes.Label(paper));
        cells.SheetCount(146, 36.5, 34, 12.5, SheetOf(b), 3.5);
        cells.Cell(0, 49, 146, 13, null);
        cells.Value(146, 49, 34, 13, "Checked", b.Checked);
        var y = cells.Box.Y + 54.3;
        foreach (var note in new[] { b.Note, $"Checked by rules: {b.Rules}." }.Where(n => n.Length > 0))
        {
            cells.Fit(note, cells.Box.X + PadMm, y, cells.Scaled(146) - (2 * PadMm), 2.5, FaceWeight.Medium);
            y += 5;
        }
    }

    private static void PaintSmall(Cells cells, TitleBlock b, Paper paper)
    {
        var title = cells.Logo(cells.Cell(0, 0, 112, 20, null), b.Logo);
        cells.Fit(b.Vehicle, title.X + PadMm, title.Y + 6.5, title.Width - (2 * PadMm), 5, FaceWeight.Bold);
        cells.Fit(b.Title, title.X + PadMm, title.Y + 12.5, title.Width - (2 * PadMm), 3.5, FaceWeight.Bold);
        var waivers = b.Waivers == "none" ? "no waivers" : $"waivers {b.Waivers}";
        var source = b.Source.Length > 0 ? $"source {b.Source}, " : "";
        cells.Fit($"{source}{b.Scale}, {waivers}, rules {b.Rules}", title.X + PadMm, title.Y + 17.6, title.Width - (2 * PadMm), 2.5, FaceWeight.Medium);
        cells.Build(112, 0, 68, 10, b.Build);
        cells.Value(112, 10, 33, 10, "Number", b.Number, weight: FaceWeight.Bold);
        cells.Value(145, 10, 11, 10, "Rev", b.Rev, weight: FaceWeight.Bold);
        cells.SheetCount(156, 10, 24, 10, SheetOf(b), 2.5);
        var size = PaperSizes.Label(paper).Split(' ')[0];
        cells.Row(20, 10, [(46, "Owner", b.Owner), (22, "Drawn", b.Drawn), (22, "Approved", b.Approved), (20, "Checked", b.Checked), (27, "Date of issue", b.Date), (27, "Type", b.Type), (16, "Paper", size)]);
    }

    private static double PaintStamp(Cells cells, Box area, string reason)
    {
        var box = area.Grow(-1);
        cells.Add(new PathItem(Outline.Rectangle(box, 1)) { Role = ItemRole.Edge, Fill = Ink.Paper, Stroke = new(Ink.Caution, 1) });
        const string Stamp = "NOT FOR BUILD";
        cells.Add(new TextItem(Stamp, new(box.X + 3, box.Centre.Y + 3.5), 7) { Role = ItemRole.Lettering, Weight = FaceWeight.Bold, Colour = Ink.Caution });
        var from = box.X + 3 + TextMeasure.PlanWidth(Stamp, 7, FaceWeight.Bold) + 5;
        var lines = TextFit.Wrap(reason, box.Right - 3 - from, 2.5);
        var y = box.Centre.Y + (lines.Length > 1 ? -0.7 : 1.25);
        foreach (var line in lines.Take(2))
        {
            cells.Add(new TextItem(line, new(from, y), 2.5) { Role = ItemRole.Lettering, Colour = Ink.Caution });
            y += 4;
        }

        return area.Y;
    }

    private static string SheetOf(TitleBlock b) => SheetCount.Words(b.Sheet, b.Sheets);

    /// <summary>The cells of a block: places are given for a block of 180 mm and shrink sideways where the frame is narrower.</summary>
    internal sealed class Cells(Box box, double scale)
    {
        private readonly ImmutableArray<Item>.Builder items = ImmutableArray.CreateBuilder<Item>();

        public Box Box => box;

        public ImmutableArray<Item> Items => items.ToImmutable();

        public void Add(Item item) => items.Add(item);

        public double Scaled(double mm) => mm * scale;

        public void Outline() => items.Add(new PathItem(Drawing.Outline.Rectangle(box)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 0.7) { RoundJoin = false } });

        public Box Cell(double x, double y, double width, double height, string? label)
        {
            var cell = new Box(box.X + Scaled(x), box.Y + y, Scaled(width), height);
            if (cell.Y > box.Y + 0.1)
            {
                items.Add(new PathItem(Drawing.Outline.Line(cell.X, cell.Y, cell.Right, cell.Y)) { Stroke = new(Ink.Black, 0.25) });
            }

            if (cell.X > box.X + 0.1)
            {
                items.Add(new PathItem(Drawing.Outline.Line(cell.X, cell.Y, cell.X, cell.Bottom)) { Stroke = new(Ink.Black, 0.25) });
            }

            if (label is not null)
            {
                items.Add(new TextItem(label, new(cell.X + PadMm, cell.Y + 3.9), LabelCapMm) { Role = ItemRole.Lettering, Colour = Ink.Secondary });
            }

            return cell;
        }

        /// <summary>The logo at the right of a cell, at most a third of it; what the cell has left.</summary>
        public Box Logo(Box cell, DrawnOutlines? logo)
        {
            if (logo is null)
            {
                return cell;
            }

            var height = cell.Height - (2 * PadMm);
            var width = Math.Min(cell.Width / 3, height * logo.ViewBox.Width / logo.ViewBox.Height);
            items.Add(logo.Fit(new Box(cell.Right - PadMm - width, cell.Y + PadMm, width, height), ItemRole.Edge));
            return Box.FromEdges(cell.X, cell.Y, cell.Right - PadMm - width, cell.Bottom);
        }

        public void Value(double x, double y, double width, double height, string label, string value, double cap = 2.5, FaceWeight weight = FaceWeight.Medium)
        {
            var cell = Cell(x, y, width, height, label);
            Fit(value, cell.X + PadMm, cell.Bottom - (height < 11 ? 1.4 : 2), cell.Width - (2 * PadMm), cap, weight);
        }

        /// <summary>The build on one line below its label; a long one on two lines beside it, without the names of the options where there is no room for them.</summary>
        public void Build(double x, double y, double width, double height, string value)
        {
            var cell = Cell(x, y, width, height, "Build");
            var room = cell.Width - (2 * PadMm);
            if (TextMeasure.PlanWidth(value, 2.5, FaceWeight.Bold) <= room + PadMm - ClearMm)
            {
                Fit(value, cell.X + PadMm, cell.Bottom - (height < 11 ? 1.4 : 2), room, 2.5, FaceWeight.Bold);
                return;
            }

            var from = cell.X + PadMm + TextMeasure.PlanWidth("Build", LabelCapMm) + 1.5;
            var choices = string.Join(", ", value.Split(", ").Select(c => c[(c.IndexOf(": ", StringComparison.Ordinal) is >= 0 and var at ? at + 2 : 0)..]));
            foreach (var words in new[] { value, choices })
            {
                var first = Filling(words, cell.Right - 1 - from);
                var rest = words[first.Length..].TrimStart();
                if (TextMeasure.PlanWidth(rest, 2.5) <= room + 1 || words == choices)
                {
                    Fit(first, from, cell.Y + 3.9, cell.Right - from, 2.5, FaceWeight.Medium);
                    Fit(rest, cell.X + PadMm, cell.Y + 3.9 + (height < 11 ? 4.2 : 5), room, 2.5, FaceWeight.Medium);
                    return;
                }
            }
        }

        // whole words from the start that fit
        private static string Filling(string words, double widthMm)
        {
            var end = 0;
            for (var at = words.IndexOf(' ', StringComparison.Ordinal); at > 0 && TextMeasure.PlanWidth(words[..at], 2.5) <= widthMm; at = words.IndexOf(' ', at + 1))
            {
                end = at;
            }

            return words[..end];
        }

        /// <summary>The field that the set fills in again when all its sheets are known.</summary>
        public void SheetCount(double x, double y, double width, double height, string value, double cap)
        {
            var cell = Cell(x, y, width, height, "Sheet");
            items.Add(new TextItem(value, new(cell.X + PadMm, cell.Bottom - (height < 11 ? 1.4 : 2)), cap) { Role = ItemRole.Lettering, Weight = FaceWeight.Bold, IsSheetCount = true });
        }

        public void Row(double y, double height, ImmutableArray<(double Width, string Label, string Value)> fields)
        {
            var x = 0.0;
            foreach (var (width, label, value) in fields)
            {
                Value(x, y, width, height, label, value);
                x += width;
            }
        }

        // a long text steps down through the letter heights before it is cut; in the fallback face it may use the right pad of its cell, but not touch the line
        public void Fit(string text, double x, double y, double width, double cap, FaceWeight weight)
        {
            var growth = weight == FaceWeight.Bold ? PlanWidths.OwnBoldOverPlanned : 1;
            bool Fits(string line, double c) => TextMeasure.Width(line, c, weight) <= width && TextMeasure.PlanWidth(line, c, weight) * (c > 2.5 ? growth : 1) <= width + PadMm - ClearMm;
            var size = ((ImmutableArray<double>)[5, 3.5, 2.5]).FirstOrDefault(c => c <= cap && Fits(text, c), 2.5);
            var shown = Fits(text, size) ? text : TextFit.Ellipsis(text, width, size, weight);
            if (shown.Length > 0)
            {
                items.Add(new TextItem(shown, new(x, y), size) { Role = ItemRole.Lettering, Weight = weight });
            }
        }
    }
}
