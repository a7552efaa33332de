using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The columns of the cut list. A wide sheet also says what a wire is for and has a box for each step of the work.</summary>
internal sealed class CutListColumns(ImmutableArray<CutRow> rows, TerminalKeys terminals, SealKeys seals, CableKeys cables, OptionKeys options, RevisionMarks revisions, UnitsShown units, bool wide)
{
    private const double TickMm = 3.8;
    private const double BlankMm = 14;
    private static readonly TextStyle Plain = TextStyle.Plain;
    private static readonly TextStyle Bold = TextStyle.Bold;
    private static readonly TextStyle Length = TextStyle.Bold.At(3.5);

    public ImmutableArray<SheetColumn<CutRow>> All()
    {
        var columns = ImmutableArray.CreateBuilder<SheetColumn<CutRow>>();
        columns.Add(Figures("No.", r => Figure(r.Number, 0)));
        columns.Add(new("wire", (r, w) => Id(r, w)) { LeastMm = r => Math.Min(30, Id(r, double.PositiveInfinity).WidthMm) });
        if (wide)
        {
            columns.Add(Words("function", r => r.Wire.Circuit));
        }

        columns.Add(new("colour", (r, _) => TableCell.Of(new CellSwatch(r.Wire.Colour), new CellText(r.Wire.Colour, Plain, new Tag { For = r.Wire.Id }))));
        columns.Add(new(rows.Any(r => r.Wire.Awg is not null) ? "size" : "mm²", (r, _) => TableCell.Words(r.Wire.SizeLabel, Plain, new Tag { For = r.Wire.Id })) { Align = TextAnchor.End });
        AddLengths(columns);
        AddEnd(columns, "end A", w => w.From);
        AddEnd(columns, "end B", w => w.To);
        if (!options.IsEmpty)
        {
            columns.Add(new("opt", (r, _) => TableCell.Words(options.KeyOf(r.Wire.Builds), Bold)));
        }

        foreach (var (tick, group) in wide ? [("cut", null), ("strip", "tick A"), ("crimp", "tick A"), ("strip", "tick B"), ("crimp", "tick B"), ("test", null)] : new (string, string?)[] { ("cut", null), ("A", null), ("B", null), ("test", null) })
        {
            columns.Add(new(tick, (_, _) => TableCell.Of(new CellBox(TickMm, TickMm))) { Align = TextAnchor.Middle, Group = group });
        }

        return columns.ToImmutable();
    }

    // the unit of the design first; inches come from the exact length and are no second rounding
    private void AddLengths(ImmutableArray<SheetColumn<CutRow>>.Builder columns)
    {
        columns.Add(units == UnitsShown.Inch ? CutLength("cut in", r => Inches(r.CutIn)) : CutLength("cut mm", r => Figure(r.Wire.CutLengthMm, 0)));
        if (units == UnitsShown.Both)
        {
            columns.Add(Figures("in", r => Inches(r.CutIn)));
        }

        columns.Add(Figures("route", r => Part(r.Wire.PathLengthMm, 0, 1)));
        columns.Add(Figures("allow", r => Part(r.AllowanceMm, 0, 1)));
    }

    // lengths that nothing is cut by
    private string Part(double? mm, int mmDecimals, int inchDecimals) =>
        units == UnitsShown.Inch ? InchLength.Words(mm, inchDecimals) : Figure(mm, mmDecimals);

    private void AddEnd(ImmutableArray<SheetColumn<CutRow>>.Builder columns, string head, Func<Wire, WireEnd> end)
    {
        columns.Add(new(head, (r, w) => EndText.Cell(end(r.Wire), w)) { LeastMm = r => EndText.LeastMm(end(r.Wire)) });
        columns.Add(new("part", (r, _) => TableCell.Words(terminals.KeyOf(end(r.Wire)))));
        if (rows.Any(r => First(end(r.Wire)).Length > 0))
        {
            columns.Add(Words("first", r => First(end(r.Wire))));
        }

        columns.Add(Figures("strip", r => Part(end(r.Wire).StripMm, 1, 2)));
    }

    // what is slid on before the terminal: the key of the seal, else its name
    private string First(WireEnd end) => end.Seal is not null ? seals.KeyOf(end.Seal) : string.Join(", ", end.ThreadOnFirst.Select(t => t == "rubber boot" ? "boot" : t));

    private TableCell Id(CutRow row, double widthMm)
    {
        var id = double.IsInfinity(widthMm) ? row.Wire.Id : Pen.Shortened(row.Wire.Id, widthMm, Bold);
        var text = new CellText(id, Bold, new Tag { For = row.Wire.Id });
        CellText? cable = cables.KeyOf(row.Wire) is { Length: > 0 } key ? new(key, Plain) : null;
        return TableCell.Of([.. new CellPart?[] { text, cable, revisions.Of(row.Wire) }.OfType<CellPart>()]);
    }

    private static SheetColumn<CutRow> Words(string head, Func<CutRow, string> text) =>
        new(head, (r, w) => TableCell.Wrapped(text(r), w)) { LeastMm = r => TableCell.LongestWordMm(text(r)) };

    private static SheetColumn<CutRow> Figures(string head, Func<CutRow, string> text) => new(head, (r, _) => TableCell.Words(text(r))) { Align = TextAnchor.End };

    // the first thing seen; an unknown length leaves a box to write in, E marks an estimate
    private SheetColumn<CutRow> CutLength(string head, Func<CutRow, string> text)
    {
        const double MarkMm = 3.2;
        var mark = rows.Any(r => r.Wire.Estimated && r.Wire.CutLengthMm is not null);
        return new(head, (r, _) => r.Wire.CutLengthMm is null ? TableCell.Of(new CellBox(BlankMm, 4.1)) : TableCell.Of(new CellText(text(r), Length, new Tag { For = r.Wire.Id })))
        {
            Align = TextAnchor.End,
            MarkMm = mark ? MarkMm : 0,
            Mark = mark ? r => r.Wire.Estimated && r.Wire.CutLengthMm is not null ? new CellText("E", Bold) : null : null,
            DropMm = 0.45,
        };
    }

    internal static string Figure(double? value, int decimals) =>
        value is { } known ? Math.Round(known, decimals, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture) : "–";

    internal static string Inches(double? value) => value is { } known ? known.ToString("0.##", CultureInfo.InvariantCulture) : "–";
}
