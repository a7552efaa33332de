using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>What the cut list asks for: wire by reel with its metres, and the parts that its short names stand for with how many are needed.</summary>
internal sealed class SupplyLists
{
    private const double RowMm = 5;
    private const double HeadMm = 9;
    private const double BetweenMm = 7;

    // in less room than a head and two rows the lists do not begin
    private const double LeastMm = HeadMm + (2 * RowMm);
    private const double ThreeColumnsMm = 340;
    private readonly ImmutableArray<Entry> entries;
    private readonly ImmutableArray<SheetTable<Part>> parts;
    private readonly ImmutableArray<SheetTable<ReelSum>> reels;

    public SupplyLists(Plan plan, ImmutableArray<CutRow> rows, TerminalKeys terminals, SealKeys seals, CableKeys cables, UnitsShown units, Box frame)
    {
        var count = frame.Width >= ThreeColumnsMm ? 3 : 2;
        var width = (frame.Width - 8 - (BetweenMm * (count - 1))) / count;
        ImmutableArray<Part> allParts = [.. PartsOf(plan, terminals, seals)];
        ImmutableArray<Part> allCables = [.. cables.All.Select((c, i) => new Part(CableKeys.Key(i), c.Cable.Id, CableWords.Of(c, mm => LengthWords.Of(mm, units)), 1))];
        ImmutableArray<ReelSum> allReels = [.. ReelsOf(rows)];
        var (part, reel) = (new SheetTable<Part>(PartColumns(), [.. allParts, .. allCables], 0, width) { RowMm = RowMm }, new SheetTable<ReelSum>(ReelColumns(units), allReels, 0, width) { RowMm = RowMm });
        parts = [.. Enumerable.Range(0, count).Select(c => part.At(frame.X + 4 + (c * (width + BetweenMm)), width))];
        reels = [.. Enumerable.Range(0, count).Select(c => reel.At(frame.X + 4 + (c * (width + BetweenMm)), width))];
        entries =
        [
            .. Section("WIRE BY REEL, CUT LENGTHS ADDED UP", allReels.Select(r => new Entry("WIRE BY REEL", null, r))),
            .. Section("TERMINALS, SPLICES AND SEALS", allParts.Select(p => new Entry("TERMINALS AND SEALS", p, null))),
            .. Section("CABLES", allCables.Select(p => new Entry("CABLES", p, null))),
        ];
    }

    /// <summary>
    /// The lists cut into pages; the first page of the answer has <paramref name="roomMm"/>, any later one <paramref name="fullMm"/>. Empty first when all go on pages of their own: so
    /// they do where that takes no page more.
    /// </summary>
    public ImmutableArray<ImmutableArray<PlacedEntry>> Place(double roomMm, double fullMm)
    {
        var here = Flow(roomMm, fullMm);
        if (here.Length == 1)
        {
            return here;
        }

        var apart = Flow(fullMm, fullMm);
        return here.Length <= apart.Length ? here : [[], .. apart];
    }

    public void Paint(Pen pen, ImmutableArray<PlacedEntry> placed, double top)
    {
        foreach (var (entry, column, y) in placed)
        {
            var at = top + y;
            if (entry.IsHead)
            {
                pen.Text(entry.Words, parts[column].Left, at + 6.4, parts[column].Width, TextStyle.Bold.At(3.5));
            }
            else
            {
                at = entry.Part is { } part ? parts[column].PaintRow(pen, part, at) : reels[column].PaintRow(pen, entry.Reel!, at);
                pen.Rule(parts[column].Left, at, parts[column].Left + parts[column].Width, 0.18, Ink.Hairline);
            }
        }
    }

    // as few pages as it takes; on the last the columns are as even as they come
    private ImmutableArray<ImmutableArray<PlacedEntry>> Flow(double firstMm, double fullMm)
    {
        var pages = ImmutableArray.CreateBuilder<ImmutableArray<PlacedEntry>>();
        if (firstMm < LeastMm)
        {
            pages.Add([]);
        }

        for (var from = 0; from < entries.Length || pages.Count == 0;)
        {
            var heightMm = pages.Count == 0 ? firstMm : fullMm;
            var rest = entries[from..].Sum(HeightOf);
            var wanted = Math.Min(heightMm, rest / parts.Length);
            var (placed, taken) = Fill(from, wanted);
            while (taken < entries.Length - from && wanted < heightMm)
            {
                wanted = Math.Min(heightMm, wanted + RowMm);
                (placed, taken) = Fill(from, wanted);
            }

            pages.Add(placed);
            from += Math.Max(1, taken);
        }

        return pages.ToImmutable();
    }

    private (ImmutableArray<PlacedEntry> Placed, int Taken) Fill(int from, double heightMm)
    {
        var placed = ImmutableArray.CreateBuilder<PlacedEntry>();
        var (column, y) = (0, 0.0);
        if (from > 0 && !entries[from].IsHead)
        {
            placed.Add(new(new Entry($"{entries[from].Words}, continued", null, null), 0, 0));
            y = HeadMm;
        }

        for (var i = from; i < entries.Length; i++)
        {
            // a head never stands alone at the foot of a column
            var need = HeightOf(entries[i]) + (entries[i].IsHead && i + 1 < entries.Length ? HeightOf(entries[i + 1]) : 0);
            if (y > 0 && y + need > heightMm + 0.01)
            {
                (column, y) = (column + 1, 0);
            }

            if (column == parts.Length)
            {
                return (placed.ToImmutable(), i - from);
            }

            placed.Add(new(entries[i], column, y));
            y += HeightOf(entries[i]);
        }

        return (placed.ToImmutable(), entries.Length - from);
    }

    private double HeightOf(Entry entry) => entry.IsHead ? HeadMm : entry.Part is { } part ? parts[0].HeightOf(part) : reels[0].HeightOf(entry.Reel!);

    // nothing where there is nothing to head
    private static IEnumerable<Entry> Section(string head, IEnumerable<Entry> rows) =>
        rows.ToList() is { Count: > 0 } own ? own.Prepend(new(head, null, null)) : [];

    private static IEnumerable<Part> PartsOf(Plan plan, TerminalKeys terminals, SealKeys seals)
    {
        var catalogue = plan.Harness.Catalogue;
        ImmutableArray<WireEnd> ends = [.. plan.Wires.SelectMany(w => new[] { w.From, w.To })];
        foreach (var id in terminals.Used(ends))
        {
            yield return new(terminals.KeyOf(id), id, TerminalWords(catalogue.Terminals.FirstOrDefault(t => t.Id == id)), ends.Count(e => e.Terminal == id));
        }

        foreach (var splices in plan.Splices.GroupBy(s => s.Part, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            yield return new(terminals.JointKey(splices.Key), splices.Key ?? "–", catalogue.Splices.FirstOrDefault(s => s.Id == splices.Key)?.Title is { } title ? Pages.Shown.Units(title) : "", splices.Count());
        }

        foreach (var id in seals.Used(ends))
        {
            yield return new(seals.KeyOf(id), id, catalogue.Seals.FirstOrDefault(s => s.Id == id)?.Title ?? "", ends.Count(e => e.Seal == id));
        }
    }

    private static IEnumerable<ReelSum> ReelsOf(ImmutableArray<CutRow> rows) =>
        rows.GroupBy(r => r.Reel).Select(g => new ReelSum(g.Key, g.Count(), g.Sum(r => r.Wire.CutLengthMm ?? 0), g.Count(r => r.Wire.CutLengthMm is null)));

    private static ImmutableArray<SheetColumn<Part>> PartColumns() =>
    [
        new("", (p, _) => TableCell.Words(p.Key, TextStyle.Bold)),
        new("", (p, _) => TableCell.Words($"{p.Count.ToString(CultureInfo.InvariantCulture)} ×")) { Align = TextAnchor.End },
        Wrapped<Part>(p => p.Id),
        Wrapped<Part>(p => p.Words),
    ];

    private static ImmutableArray<SheetColumn<ReelSum>> ReelColumns(UnitsShown units) =>
    [
        new("", (r, _) => TableCell.Of(new CellSwatch(r.Reel.Colour), new CellText(r.Reel.Colour, TextStyle.Plain))),
        new("", (r, _) => TableCell.Words(r.Reel.SizeLabel.All(c => char.IsAsciiDigit(c) || c == '.') ? $"{r.Reel.SizeLabel} mm²" : r.Reel.SizeLabel)) { Align = TextAnchor.End },
        Wrapped<ReelSum>(r => r.Reel.WireType),
        new("", (r, _) => TableCell.Words($"{r.Wires.ToString(CultureInfo.InvariantCulture)} ×")) { Align = TextAnchor.End },
        new("", (r, _) => TableCell.Words(LengthWords.Sum(r.SumMm, r.Unknown, units))) { Align = TextAnchor.End },
    ];

    private static SheetColumn<TRow> Wrapped<TRow>(Func<TRow, string> text) =>
        new("", (r, w) => TableCell.Wrapped(text(r), w)) { LeastMm = r => TableCell.LongestWordMm(text(r)) };

    private static string TerminalWords(Model.TerminalPart? part)
    {
        if (part is null)
        {
            return "not in the catalogue";
        }

        var range = $"{Figure(part.MinAreaMm2)} to {Figure(part.MaxAreaMm2)} mm², strip {Figure(part.StripMm)} mm";
        return Pages.Shown.Units(part.Title.Contains("mm", StringComparison.Ordinal) ? part.Title : $"{part.Title}, {range}");
    }

    private static string Figure(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    internal sealed record Part(string Key, string Id, string Words, int Count);

    internal sealed record ReelSum(Reel Reel, int Wires, double SumMm, int Unknown);

    /// <summary>A head with its words; or a part or a reel, with the words that it is headed by where it goes on.</summary>
    internal sealed record Entry(string Words, Part? Part, ReelSum? Reel)
    {
        public bool IsHead => Part is null && Reel is null;
    }

    /// <summary>An entry in its column, y from the top of the lists.</summary>
    internal sealed record PlacedEntry(Entry Entry, int Column, double Y);
}
