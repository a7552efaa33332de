using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>
/// The cut list on paper: landscape pages (A4, or A3 where there are many), by reel and longest first, with boxes to tick and blanks for what is not known.
/// </summary>
public static class CutListSheets
{
    private const double HeadlineMm = 14;
    private const double FootMm = 8.3;

    /// <summary>More A4 pages than this go on A3, which also tells function and wire type.</summary>
    private const int MostSmallPages = 3;

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

        SheetResult? On(Paper paper, int mostPages) => Compose(shown, plan, findings, options, rows, paper, mostPages);
        if (options.Paper is { } asked)
        {
            return On(Landscape(asked), int.MaxValue)!;
        }

        return On(PaperSizes.A4Landscape, MostSmallPages) is { Refused: null } small ? small : On(PaperSizes.A3, int.MaxValue)!;
    }

    // null for more pages than that
    private static SheetResult? Compose(Plan shown, Plan plan, ImmutableArray<Finding> findings, SheetOptions options, ImmutableArray<CutRow> rows, Paper paper, int mostPages)
    {
        var block = SheetTitle.Of(plan, findings, options, "Cut list by reel", "cut list");
        var frame = Frame.Compose(paper, block, FrameOf);
        var height = frame.TitleBox.Y - frame.Border.Frame.Y - HeadlineMm;
        if (rows.Length * CutListTable.RowMm > mostPages * height)
        {
            return null;
        }

        var cables = new CableKeys(shown);
        var table = new CutListTable(rows, new TerminalKeys(shown), new SealKeys(shown), cables, new RevisionMarks(shown, options.Changes), options, frame.Border.Frame);
        if (height < table.HeadMm + FootMm + 6 || !table.Fits)
        {
            return new([]) { Refused = $"the cut list needs {(paper.WidthMm < PaperSizes.A4Landscape.WidthMm ? "A4 landscape" : "A3")} or larger, not {paper.Name}" };
        }

        var supplies = new SupplyLists(shown, rows, table.Terminals, table.Seals, cables, options.Units, frame.Border.Frame);
        var pages = Pages(table, supplies, height);
        return pages.Length > mostPages ? null : new([.. pages.Select((page, i) => Page(table, supplies, page, i, pages.Length, block, paper, options))]);
    }

    // the rows page by page; reels and parts follow in the room below the last row, or on pages of their own
    private static ImmutableArray<PageContent> Pages(CutListTable table, SupplyLists supplies, double heightMm)
    {
        var rowsMm = heightMm - table.HeadMm - FootMm;
        var pages = table.Pages(rowsMm).Select(rows => new PageContent(rows, [])).ToList();
        var lists = supplies.Place(rowsMm - table.HeightOf(pages[^1].Rows) - 2, heightMm - 2);
        pages[^1] = pages[^1] with { Lists = lists[0] };
        return [.. pages, .. lists.Skip(1).Select(l => new PageContent([], l))];
    }

    private static FrameOptions FrameOf => new() { Form = TitleBlockForm.Small, CentringInsideMm = 0 };

    private static Sheet Page(CutListTable table, SupplyLists supplies, PageContent content, int page, int pages, TitleBlock block, Paper paper, SheetOptions options)
    {
        var title = pages > 1 ? $"Cut list by reel, page {page + 1} of {pages}" : "Cut list by reel";
        var frame = Frame.Compose(paper, block with { Title = title, Sheet = page + 1, Sheets = pages }, FrameOf);
        var pen = new Pen(options.BlackInk);
        var box = frame.Border.Frame;
        Headline(pen, box, page == 0 ? "by reel, longest first" : content.Rows.IsEmpty ? "wire and parts" : "by reel, continued");
        var y = box.Y + HeadlineMm;
        if (!content.Rows.IsEmpty)
        {
            y = table.Paint(pen, content.Rows, y);
            Foot(pen, table, content.Rows, box, y, options.Units);
            y += FootMm;
        }

        if (!content.Lists.IsEmpty)
        {
            pen.Rule(box.X, y, box.Right, 0.35);
            supplies.Paint(pen, content.Lists, y + 1);
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

    private static void Headline(Pen pen, Box frame, string aside)
    {
        var y = frame.Y + 9.6;
        var name = TextStyle.Bold.At(7);
        pen.Text("CUT LIST", frame.X + 4, y, 80, name);
        var after = frame.X + 4 + Pen.Width("CUT LIST", name) + 3;
        pen.Text(aside, after, y, 80, TextStyle.Plain.At(3.5));
        const string Caution = "Battery disconnected. Check colour and id. Boots and seals on first.";
        var style = TextStyle.Bold.Right with { Colour = Ink.Caution };
        var room = frame.Right - 8 - after - Pen.Width(aside, TextStyle.Plain.At(3.5));
        var lines = Pen.Wrapped(Caution, room, style);
        for (var i = 0; i < lines.Length; i++)
        {
            pen.Text(lines[i], frame.Right - 4, y + (4.3 * (i - ((lines.Length - 1) / 2.0))), room + 0.01, style);
        }
    }

    private static void Foot(Pen pen, CutListTable table, ImmutableArray<CutRow> rows, Box frame, double y, UnitsShown units)
    {
        var page = $"Page: {Total(rows, units)}.";
        var all = rows[^1] == table.Rows[^1] ? $" All: {Total(table.Rows, units)}, {table.Rows.Select(r => r.Reel).Distinct().Count()} reels." : "";
        const string Rule = " Dark rule: change of reel. Lengths are rounded up";
        const string Inches = "; inches come from the exact length, rounded up";
        foreach (var text in new[] { $"{page}{all}{Rule}{(table.ShowsInches ? Inches : "")}.", $"{page}{all}{Rule}.", $"{page}{all}" })
        {
            if (Pen.Width(text) <= frame.Width - 8)
            {
                pen.Text(text, frame.X + 4, y + 5.4, frame.Width - 8);
                return;
            }
        }
    }

    private static string Total(ImmutableArray<CutRow> rows, UnitsShown units)
    {
        var wires = rows.Length == 1 ? "1 wire" : $"{rows.Length} wires";
        return $"{wires}, {LengthWords.Sum(rows.Sum(r => r.Wire.CutLengthMm ?? 0), rows.Count(r => r.Wire.CutLengthMm is null), units)}";
    }

    private static void Notes(Pen pen, CutListTable table, ImmutableArray<CutRow> rows, Box box)
    {
        const double LineMm = 4.3;
        pen.Rule(box.X, box.Y, box.Right, 0.7);
        var (y, width) = (box.Y + 4.9, box.Width - 7);
        var line = "";

        // short notes share a line
        foreach (var note in NotesOf(table, rows))
        {
            var longer = line.Length == 0 ? note : $"{line} {note}";
            if (Pen.Width(longer) <= width)
            {
                line = longer;
                continue;
            }

            y = Set(line, y);
            line = note;
        }

        Set(line, y);

        double Set(string text, double at) => pen.Paragraph(text, box.X + 4, at, width, lineMm: LineMm, most: Math.Max(0, (int)Math.Floor((box.Bottom - 1.2 - at) / LineMm) + 1));
    }

    // what the person at the bench must know first
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
            yield return $"opt {string.Join("; ", options)}.";
        }

        if (table.ShowsInches && table.Units == UnitsShown.Both)
        {
            yield return "route, allow, strip: mm.";
        }

        foreach (var mark in table.Revisions.Explained(rows.Select(r => r.Wire)))
        {
            yield return mark;
        }

        var joined = table.Rows.Any(r => r.Wire.From.IsSplice || r.Wire.To.IsSplice);
        var inCables = table.Rows.Any(r => r.Wire.Cable is not null);
        yield return $"T1{(joined ? ", J1" : "")}, S1{(inCables ? ", K1" : "")} ...: listed after the last wire. first: slide on before you crimp.";
        yield return "Right die, no solder before crimping; pull-test a sample of each size: ______";
    }

    private sealed record PageContent(ImmutableArray<CutRow> Rows, ImmutableArray<SupplyLists.PlacedEntry> Lists);

    private static Paper Landscape(Paper paper) =>
        paper.WidthMm >= paper.HeightMm ? paper : PaperSizes.Find($"{paper.Name.Replace(" portrait", "", StringComparison.Ordinal)} landscape") ?? paper;
}
