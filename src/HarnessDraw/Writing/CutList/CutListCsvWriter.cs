using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Units;

namespace HarnessDraw.Writing.CutList;

/// <summary>
/// The cut list as CSV (RFC 4180, UTF-8): one row a physical wire, by reel and longest first, units in the heads, numbers plain, unknown
/// values empty. Text cells pass <see cref="SpreadsheetText"/>.
/// </summary>
public static class CutListCsvWriter
{
    private static readonly ImmutableArray<Column> Columns =
    [
        new("no", (c, x) => c.Number(x.Row.Number, 0)),
        new("wire", (c, x) => c.Text(x.Row.Wire.Id)),
        new("only_with", (c, x) => c.Text(x.Row.Wire.Builds.ToString())),
        new("function", (c, x) => c.Text(x.Row.Wire.Circuit)),
        new("net", (c, x) => c.Text(x.Row.Wire.Net)),
        new("branch", (c, x) => c.Text(x.Facts.Branch)),
        new("colour", (c, x) => c.Text(x.Row.Wire.Colour)),
        new("colour_words", (c, x) => c.Text(WireColour.TryParse(x.Row.Wire.Colour)?.Words ?? x.Row.Wire.Colour)),
        new("size_mm2", (c, x) => c.Number(x.Row.Wire.AreaMm2, 3)),
        new("size_awg", (c, x) => c.Text(x.Row.Wire.Awg)),
        new("wire_type", (c, x) => c.Text(x.Row.Wire.WireType)),
        new("wire_max_degC", (c, x) => c.Number(x.Facts.MaxC, 1)),
        new("outside_mm", (c, x) => c.Number(x.Row.Wire.OutsideMm, 2)),
        new("cut_mm", (c, x) => c.Number(x.Row.Wire.CutLengthMm, 1)),
        new("cut_in", (c, x) => c.Number(x.Row.CutIn, 2)),
        new("route_mm", (c, x) => c.Number(x.Row.Wire.PathLengthMm, 1)),
        new("allowance_mm", (c, x) => c.Number(x.Row.AllowanceMm, 1)),
        new("allowance_for", (c, x) => c.Text(string.Join("; ", x.Row.Wire.Allowances.Select(a => $"{a.What} {NumberText.Brief(Math.Round(a.LengthMm, 1))} mm")))),
        new("length_known", (c, x) => c.Text(x.Row.Wire.CutLengthMm is null ? "unknown" : x.Row.Wire.Estimated ? "estimated" : "measured")),
        .. EndColumns("end_a", w => w.From),
        .. EndColumns("end_b", w => w.To),
        new("splice", (c, x) => c.Text(x.Facts.Splices)),
        new("splice_station_mm", (c, x) => c.Number(x.Facts.SpliceStationMm, 0)),
        new("twisted_with", (c, x) => c.Text(x.Row.Wire.Cable)),
        new("label_a", (c, x) => c.Text($"{x.Row.Wire.Id} {x.Row.Wire.From}")),
        new("label_b", (c, x) => c.Text($"{x.Row.Wire.Id} {x.Row.Wire.To}")),
        new("fuse", (c, x) => c.Text(string.Join("; ", x.Row.Wire.ProtectedBy))),
        new("segments", (c, x) => c.Text(string.Join("; ", x.Row.Wire.Segments))),
        new("worst_state", (c, x) => c.Text(x.Row.Wire.Worst?.State)),
        new("worst_current_A", (c, x) => c.Number(x.Row.Wire.Worst?.CurrentA, 3)),
        new("worst_drop_V", (c, x) => c.Number(x.Row.Wire.Worst?.DropV, 3)),
        new("worst_conductor_degC", (c, x) => c.Number(x.Row.Wire.Worst?.TemperatureC, 1)),
        new("ampacity_A", (c, x) => c.Number(x.Row.Wire.AmpacityA, 2)),
        new("size_decided_by", (c, x) => c.Text(x.Row.Wire.DecidedBy)),
        new("size_margin_percent", (c, x) => c.Number(x.Row.Wire.Margin * 100, 1)),
        new("given_by_hand", (c, x) => c.Text(x.Row.Wire.ByHand ? "yes" : "no")),
        new("qty", (c, _) => c.Number(1, 0)),
        .. TickColumns("tick_cut", "tick_strip_a", "tick_crimp_a", "tick_strip_b", "tick_crimp_b", "tick_tested", "note"),
    ];

    /// <summary>The heads of the file in order.</summary>
    public static ImmutableArray<string> Heads => [.. Columns.Select(c => c.Head)];

    /// <summary>The whole file; the same plan and options give the same bytes.</summary>
    public static byte[] Write(Plan plan, CsvOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var csv = new CsvBuilder(options ?? new CsvOptions());
        foreach (var column in Columns)
        {
            csv.Text(column.Head);
        }

        csv.EndLine();
        foreach (var row in CutRows.ByReel(plan))
        {
            var cells = new RowFacts(row, WireFacts.Of(plan, row.Wire));
            foreach (var column in Columns)
            {
                column.Put(csv, cells);
            }

            csv.EndLine();
        }

        return csv.ToBytes();
    }

    private static IEnumerable<Column> EndColumns(string prefix, Func<Wire, WireEnd> end) =>
    [
        new(prefix, (c, x) => c.Text(end(x.Row.Wire).At)),
        new(prefix + "_cavity", (c, x) => c.Text(end(x.Row.Wire).Pin)),
        new(prefix + "_terminal", (c, x) => c.Text(end(x.Row.Wire) is { IsSplice: true, Terminal: null } ? "splice" : end(x.Row.Wire).Terminal)),
        new(prefix + "_seal", (c, x) => c.Text(end(x.Row.Wire).Seal)),
        new(prefix + "_strip_mm", (c, x) => c.Number(end(x.Row.Wire).StripMm, 1)),
        new(prefix + "_thread_on_first", (c, x) => c.Text(string.Join("; ", end(x.Row.Wire).ThreadOnFirst))),
    ];

    // empty columns for the bench
    private static IEnumerable<Column> TickColumns(params string[] heads) => heads.Select(h => new Column(h, (c, _) => c.Text(null)));

    private sealed record Column(string Head, Func<CsvBuilder, RowFacts, CsvBuilder> Put);

    private sealed record RowFacts(CutRow Row, WireFacts Facts);
}
