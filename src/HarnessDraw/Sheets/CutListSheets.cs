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
        var table = new CutListTable(rows, options, frame.Border.Frame);
        var first = frame.Border.Frame.Y + HeadlineMm + CutListTable.HeadMm;
        var perPage = (int)Math.Floor((frame.TitleBox.Y - FootMm - first) / CutListTable.RowMm);
        if (perPage < 1)
        {
            return new([]) { Refused = $"the cut list needs A4 landscape or larger, not {paper.Name}" };
        }

        var pages = (rows.Length + perPage - 1) / perPage;
        return new([.. Enumerable.Range(0, pages).Select(page => Page(table, [.. rows.Skip(page * perPage).Take(perPage)], page, pages, block, paper, options))]);
    }

    private static FrameOptions FrameOf => new() { Form = TitleBlockForm.Small, CentringInsideMm = 0 };

    private static Sheet Page(CutListTable table, ImmutableArray<CutRow> rows, int page, int pages, TitleBlock block, Paper paper, SheetOptions options)
    {
        var title = pages > 1 ? $"Cut list by reel, page {page + 1} of {pages}" : "Cut list by reel";
        var frame = Frame.Compose(paper, block with { Title = title, Sheet = page + 1, Sheets = pages }, FrameOf);
        var pen = new Pen(options.BlackInk);
        var box = frame.Border.Frame;
        Headline(pen, box);
        var y = table.Paint(pen, rows, box.Y + HeadlineMm);
        Foot(pen, table, rows, box, y, last: page == pages - 1);
        Notes(pen, table, rows, Box.FromEdges(box.X, box.Bottom - 30, frame.TitleBox.X, box.Bottom));
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
        const string Caution = "Check colour and id. Sleeves, boots and seals on before you crimp.";
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
        var y = box.Y + 5.6;
        pen.Rule(box.X, box.Y, box.Right, 0.7);
        foreach (var note in NotesOf(table, rows).Take(5))
        {
            pen.Text(note, box.X + 4, y, box.Width - 7);
            y += 5;
        }
    }

    // the five lines that fit: what the person at the bench must know first
    private static IEnumerable<string> NotesOf(CutListTable table, ImmutableArray<CutRow> rows)
    {
        yield return "Battery off. Right die for the terminal; no solder first.";
        if (rows.Any(r => r.Wire.Estimated))
        {
            yield return "E: estimated. Measure on the vehicle before cutting.";
        }

        if (rows.Any(r => r.Wire.CutLengthMm is null))
        {
            yield return "Empty box: length unknown. Measure and write it in.";
        }

        var keys = table.Keys.Explained.ToList();
        if (keys.Count > 2)
        {
            yield return $"opt {string.Join("; ", keys)}";
        }
        else
        {
            foreach (var key in keys)
            {
                yield return $"opt {key}";
            }
        }

        yield return "allow: what the ends need beyond the route.";
        yield return "Pull-test one sample of each size: ________";
        yield return "Do not tape over labels.";
    }

    private static Paper Landscape(Paper paper) =>
        paper.WidthMm >= paper.HeightMm ? paper : PaperSizes.Find($"{paper.Name.Replace(" portrait", "", StringComparison.Ordinal)} landscape") ?? paper;
}
