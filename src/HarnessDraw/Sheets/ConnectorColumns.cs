using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>The columns of a connector's table: all beside each other for a large connector, two facts above each other for a small one.</summary>
internal sealed class ConnectorColumns(ConnectorKeys keys, IReadOnlyList<ConnectorRow> rows)
{
    public const string VoltsHead = "V, key in";
    private static readonly TextStyle Plain = TextStyle.Plain;
    private static readonly TextStyle Bold = TextStyle.Bold;
    private readonly bool hasSeals = rows.Any(r => r.Here?.Seal is not null);
    private readonly bool hasOptions = rows.Any(r => !r.Builds.IsAlways);
    private readonly bool hasAwg = rows.Any(r => r.Wire?.Awg is not null);

    /// <summary>The place of the column where words for a spare cavity begin.</summary>
    public const string WordsHead = "circuit";

    /// <summary>One fact a column, the option under the wire. The other half's colours only where they are known.</summary>
    public ImmutableArray<SheetColumn<ConnectorRow>> Full(ConnectorSubject subject)
    {
        var bay = subject.Side == Side.Bay;
        var columns = ImmutableArray.CreateBuilder<SheetColumn<ConnectorRow>>();
        columns.Add(new("cav.", (r, _) => Cavity(r)));
        columns.Add(new("", (r, _) => TableCell.Of(Dot(r))));
        columns.Add(WireAndOption(Plain));
        columns.Add(new(subject.IsMate ? bay ? "bay" : "cabin" : "colour", (r, _) => Colour(r, r.Wire?.Colour, Plain)));
        if (subject.IsMate && rows.Any(r => r.OtherColour is not null))
        {
            columns.Add(new(bay ? "cabin" : "bay", (r, _) => OtherColour(r)));
        }

        columns.Add(Figures(hasAwg ? "size" : "mm²", r => r.Wire?.SizeLabel ?? ""));
        columns.Add(new(WordsHead, (r, w) => TableCell.Wrapped(r.Wire?.Circuit ?? "", w)) { LeastMm = r => TableCell.LongestWordMm(r.Wire?.Circuit ?? "") });
        columns.Add(new("goes to", GoesTo) { LeastMm = GoesToLeast });
        AddReadings(columns);
        columns.Add(new("part", (r, _) => TableCell.Words(r.Here is { } end ? keys.Terminals.KeyOf(end) : "")));
        if (hasSeals)
        {
            columns.Add(new("seal", (r, _) => TableCell.Words(r.Here is { } end ? keys.Seals.KeyOf(end.Seal) : "")));
        }

        return columns.ToImmutable();
    }

    /// <summary>Two facts a column: size under colour, far end under circuit, seal under terminal, option under wire.</summary>
    public ImmutableArray<SheetColumn<ConnectorRow>> Stacked()
    {
        var columns = ImmutableArray.CreateBuilder<SheetColumn<ConnectorRow>>();
        columns.Add(new("cav.", (r, _) => Cavity(r)));
        columns.Add(WireAndOption(Bold));
        columns.Add(new("colour", (r, _) => Colour(r, r.Wire?.Colour, Plain).Above(TableCell.Words(r.Wire?.SizeLabel ?? ""))) { Under = hasAwg ? "size" : "mm²" });
        if (rows.Any(r => r.OtherColour is not null))
        {
            columns.Add(new("other", (r, _) => OtherColour(r)) { Under = "half" });
        }

        columns.Add(new(WordsHead, (r, w) => TableCell.Wrapped(r.Wire?.Circuit ?? "", w).Above(r.Wire is null ? TableCell.Empty : GoesTo(r, w)))
        {
            Under = "goes to",
            LeastMm = r => Math.Max(TableCell.LongestWordMm(r.Wire?.Circuit ?? ""), GoesToLeast(r)),
        });
        AddReadings(columns);
        columns.Add(new("part", (r, _) => r.Here is not { } end ? TableCell.Empty : TableCell.Words(keys.Terminals.KeyOf(end)).Above(end.Seal is null ? TableCell.Empty : TableCell.Words(keys.Seals.KeyOf(end.Seal)))) { Under = hasSeals ? "seal" : null });
        return columns.ToImmutable();
    }

    private static void AddReadings(ImmutableArray<SheetColumn<ConnectorRow>>.Builder columns)
    {
        columns.Add(Figures("A", r => r.Wire is null ? "" : Current(r.Wire.Worst?.CurrentA)));
        columns.Add(Figures("off", r => r.Wire is null ? "" : Figure(r.OffV), r => r.AlwaysLive) with { Group = VoltsHead });
        columns.Add(Figures("run", r => r.Wire is null ? "" : Figure(r.RunV)) with { Group = VoltsHead });
        columns.Add(Figures("start", r => r.Wire is null ? "" : Figure(r.StartV)) with { Group = VoltsHead });
    }

    private SheetColumn<ConnectorRow> WireAndOption(TextStyle style) =>
        new("wire", (r, _) => WireId(r, style).Above(TableCell.Words(keys.Options.KeyOf(r.Builds), Bold))) { Under = hasOptions ? "opt" : null };

    private static SheetColumn<ConnectorRow> Figures(string head, Func<ConnectorRow, string> text, Func<ConnectorRow, bool>? bold = null) =>
        new(head, (r, _) => TableCell.Words(text(r), bold?.Invoke(r) == true ? Bold : Plain)) { Align = TextAnchor.End };

    private static TableCell Cavity(ConnectorRow row) => TableCell.Words(row.Cavity, Bold, new Tag { Cavity = $"{row.Connector}:{row.Cavity}" });

    // a name beyond all measure gives way in the end; the id of a wire is short in any real plan
    private TableCell WireId(ConnectorRow row, TextStyle style)
    {
        var id = TableCell.Words(row.Wire is { } wire ? Pen.Shortened(wire.Id, 30, style) : "", style, new Tag { For = row.Wire?.Id });
        return keys.Revisions.Of(row.Wire) is { } mark ? id.Above(TableCell.Of(mark)) : id;
    }

    // the dot grows with the contact
    private static CellDot Dot(ConnectorRow row) =>
        new(ContactSize.Mm(row.ContactSize) switch { <= 2 => 0.7, <= 3.5 => 1.0, <= 5.5 => 1.3, <= 7.5 => 1.6, _ => 2.1 }, row.Wire is not null);

    private static TableCell Colour(ConnectorRow row, string? code, TextStyle style) => code switch
    {
        null => TableCell.Empty,
        _ when WireColour.TryParse(code) is null => TableCell.Words(code),
        _ => TableCell.Of(new CellSwatch(code), new CellText(code, style, new Tag { For = row.Wire?.Id })),
    };

    private static TableCell OtherColour(ConnectorRow row) =>
        row.Wire is null ? TableCell.Empty : row.OtherColour is not { } other ? TableCell.Words("–") : other == row.Wire.Colour ? TableCell.Words("same") : Colour(row, other, Bold);

    private static TableCell GoesTo(ConnectorRow row, double widthMm) =>
        row.There is null ? TableCell.Empty : row.Beyond is { } beyond ? TableCell.Wrapped(beyond, widthMm) : EndText.Cell(row.There, widthMm);

    private static double GoesToLeast(ConnectorRow row) =>
        row.There is null ? 0 : row.Beyond is { } beyond ? TableCell.LongestWordMm(beyond) : EndText.LeastMm(row.There);

    // a trickle is not nothing
    private static string Current(double? value) => value is > 0 and < 0.05 ? "<0.1" : Figure(value);

    // one decimal for volts and amperes; what is not known is a dash, never a nought
    private static string Figure(double? value)
    {
        if (value is not { } known || !double.IsFinite(known))
        {
            return "–";
        }

        var text = (Math.Round(known, 1, MidpointRounding.AwayFromZero) + 0.0).ToString("0.0", CultureInfo.InvariantCulture);
        return text.StartsWith('-') ? "−" + text[1..] : text;
    }
}
