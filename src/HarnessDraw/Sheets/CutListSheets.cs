using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>
/// The cut list on paper: A4 (or Letter) landscape pages, by reel and longest first, with boxes to tick and blanks for what is not known.
/// </summary>
public static class CutListSheets
{
    private const double HeadlineMm = 14;
    private const double FootMm = 8.3;

    /// <summary>As many pages as the wires need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var rows = CutRows.ByReel(shown);
        if (rows.IsEmpty)
        {
            return new([]);
        }

        var paper = Landscape(options.Paper ?? PaperSizes.A4Landscape);
        var block = SheetTitle.Of(plan, findings, options, "Cut list by reel", "cut list");
        var frame = Frame.Compose(paper, block, FrameOf);
        var table = new CutListTable(rows, new TerminalKeys(shown), options, frame.Border.Frame);
        var first = frame.Border.Frame.Y + HeadlineMm + CutListTable.HeadMm;
        var perPage = (int)Math.Floor((frame.TitleBox.Y - FootMm - first) / CutListTable.RowMm);
        if (perPage < 1)
        {
            return new([]) { Refused = $"the cut list needs A4 landscape or larger, not {paper.Name}" };
        }

        var parts = new PartsTable(shown, table.Terminals);
        var pages = Pages(rows, parts, perPage, frame.TitleBox.Y - first);
        return new([.. pages.Select((page, i) => Page(table, parts, page, i, pages.Length, block, paper, options))]);
    }

    // the rows page by page; the parts follow in the room below the last row, or on pages of their own
    private static ImmutableArray<PageContent> Pages(ImmutableArray<CutRow> rows, PartsTable parts, int perPage, double heightMm)
    {
        var pages = rows.Chunk(perPage).Select(c => new PageContent([.. c], 0, 0)).ToList();
        var room = PartsTable.Capacity(heightMm - FootMm - (pages[^1].Rows.Length * CutListTable.RowMm));
        if (parts.Count <= room)
        {
            pages[^1] = pages[^1] with { Parts = parts.Count };
            return [.. pages];
        }

        var perPartsPage = PartsTable.Capacity(heightMm);
        for (var from = 0; from < parts.Count; from += perPartsPage)
        {
            pages.Add(new([], from, Math.Min(perPartsPage, parts.Count - from)));
        }

        return [.. pages];
    }

    private static FrameOptions FrameOf => new() { Form = TitleBlockForm.Small, CentringInsideMm = 0 };

    private static Sheet Page(CutListTable table, PartsTable parts, PageContent content, int page, int pages, TitleBlock block, Paper paper, SheetOptions options)
    {
        var title = pages > 1 ? $"Cut list by reel, page {page + 1} of {pages}" : "Cut list by reel";
        var frame = Frame.Compose(paper, block with { Title = title, Sheet = page + 1, Sheets = pages }, FrameOf);
        var pen = new Pen(options.BlackInk);
        var box = frame.Border.Frame;
        Headline(pen, box);
        var y = box.Y + HeadlineMm;
        if (!content.Rows.IsEmpty)
        {
            y = table.Paint(pen, content.Rows, y);
            Foot(pen, table, content.Rows, box, y, last: content.Rows[^1] == table.Rows[^1]);
            y += FootMm;
        }

        if (content.Parts > 0)
        {
            pen.Rule(box.X, y, box.Right, 0.35);
            parts.Paint(pen, Box.FromEdges(box.X, y, box.Right, box.Bottom), content.PartsFrom, content.Parts);
        }

        Notes(pen, table, content.Rows, Box.FromEdges(box.X, box.Bottom - 30, frame.TitleBox.X, box.Bottom));
        ImmutableArray<Item> items = [new GroupItem(pen.Items) { Name = "cut-list" }, .. frame.Items];
        return new("cut-list", title, paper, options.BlackInk ? BlackInkFilter.Apply(items) : items)
        {
            Number = pages > 1 ? page + 1 : null,
            BlackInk = options.BlackInk,
            Language = block.Language,
        };
    }

    private static void Headline(Pen pen, Box frame)
    {
        var y = frame.Y + 9.6;
        var name = TextStyle.Bold.At(7);
        pen.Text("CUT LIST", frame.X + 4, y, 80, name);
        var after = frame.X + 4 + Pen.Width("CUT LIST", name) + 3;
        pen.Text("by reel, longest first", after, y, 80, TextStyle.Plain.At(3.5));
        const string Caution = "Battery disconnected. Check colour and id. Sleeves, boots and seals on first.";
        pen.Text(Caution, frame.Right - 4, y, frame.Right - 4 - after - 55, TextStyle.Bold.Right with { Colour = Ink.Caution });
    }

    private static void Foot(Pen pen, CutListTable table, ImmutableArray<CutRow> rows, Box frame, double y, bool last)
    {
        var page = $"Page: {Total(rows)}.";
        var all = last ? $" All: {Total(table.Rows)}, {table.Rows.Select(r => r.Reel).Distinct().Count()} reels." : "";
        pen.Text($"{page}{all} Dark rule: change of reel. Lengths are rounded up; inches come from the exact length, rounded up.", frame.X + 4, y + 5.4, frame.Width - 8);
    }

    private static string Total(ImmutableArray<CutRow> rows)
    {
        var metres = rows.Sum(r => r.Wire.CutLengthMm ?? 0) / 1000;
        var blank = rows.Count(r => r.Wire.CutLengthMm is null);
        var wires = rows.Length == 1 ? "1 wire" : $"{rows.Length} wires";
        return $"{wires}, {metres.ToString("0.00", CultureInfo.InvariantCulture)} m{(blank > 0 ? $" and {blank} of unknown length" : "")}";
    }

    private static void Notes(Pen pen, CutListTable table, ImmutableArray<CutRow> rows, Box box)
    {
        pen.Rule(box.X, box.Y, box.Right, 0.7);
        var most = 6;
        var y = box.Y + 4.9;
        foreach (var note in NotesOf(table, rows))
        {
            var lines = Pen.Wrapped(note, box.Width - 7);
            foreach (var line in lines.Take(Math.Max(0, most)))
            {
                pen.Text(line, box.X + 4, y, box.Width - 7);
                y += 4.6;
            }

            most -= lines.Length;
        }
    }

    // the six lines that fit: what the person at the bench must know first
    private static IEnumerable<string> NotesOf(CutListTable table, ImmutableArray<CutRow> rows)
    {
        if (rows.Any(r => r.Wire.Estimated))
        {
            yield return "E: estimated, measure before cutting.";
        }

        if (rows.Any(r => r.Wire.CutLengthMm is null))
        {
            yield return "Empty box: unknown, measure and write it in.";
        }

        var options = table.Keys.ExplainedFor(rows.Select(r => r.Wire.Builds)).ToList();
        if (options.Count > 0)
        {
            yield return $"opt {string.Join("; ", options)}";
        }

        yield return "T1, T2 ...: terminals, listed after the last wire.";

        var used = table.Terminals.Used(rows.SelectMany(r => new[] { r.Wire.From, r.Wire.To }));
        if (!used.IsEmpty)
        {
            // a key and its id stay on one line
            yield return string.Join("  ", used.Select(id => $"{table.Terminals.KeyOf(id)}\u00a0{id}"));
        }

        yield return "Right die; pull-test a sample of each size: ______";
        yield return "No solder before crimping.";
    }

    private sealed record PageContent(ImmutableArray<CutRow> Rows, int PartsFrom, int Parts);

    private static Paper Landscape(Paper paper) =>
        paper.WidthMm >= paper.HeightMm ? paper : PaperSizes.Find($"{paper.Name.Replace(" portrait", "", StringComparison.Ordinal)} landscape") ?? paper;
}
