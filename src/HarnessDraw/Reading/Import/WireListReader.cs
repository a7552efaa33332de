using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Units;

namespace HarnessDraw.Reading.Import;

/// <summary>
/// Makes wires of a from-to table. Columns are taken by their heads, or as told ('from=End 1'). Ids stay as they are; what cannot be placed is said and left
/// open, never guessed.
/// </summary>
public static class WireListReader
{
    private static readonly ImmutableArray<(string Key, ImmutableArray<string> Heads)> Known =
    [
        ("wire", ["wire", "wire_id", "wire no", "wire number", "id", "no"]),
        ("from", ["from", "end_a", "end 1", "source", "start"]),
        ("from pin", ["end_a_cavity", "from pin", "from cavity", "from terminal", "pin 1"]),
        ("to", ["to", "end_b", "end 2", "destination", "target"]),
        ("to pin", ["end_b_cavity", "to pin", "to cavity", "to terminal", "pin 2"]),
        ("function", ["function", "circuit", "signal", "description", "name"]),
        ("colour", ["colour", "color"]),
        ("size", ["size", "gauge", "wire size"]),
        ("size mm2", ["size_mm2", "area_mm2", "mm2"]),
        ("size AWG", ["size_awg", "awg"]),
        ("length mm", ["cut_mm", "length_mm"]),
        ("length", ["length", "cut"]),
    ];

    /// <summary>What a column can be told to be.</summary>
    public static ImmutableArray<string> Keys => [.. Known.Select(k => k.Key)];

    /// <param name="grid">The table.</param>
    /// <param name="told">Key to head, for columns whose heads are not understood.</param>
    public static Outcome<WireList> Read(CellGrid grid, ImmutableDictionary<string, string> told)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(told);
        var bag = new DiagnosticBag();
        var columns = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (key, heads) in Known)
        {
            columns[key] = told.TryGetValue(key, out var head) ? grid.ColumnOf(head) : grid.ColumnOf(heads.AsSpan());
            if (told.ContainsKey(key) && columns[key] < 0)
            {
                bag.Error(DiagnosticCodes.UnknownName, $"there is no column '{head}'", grid.Heads.At, NameRules.Listed([.. grid.Heads.Cells.Select(c => c.Text)], "column"));
            }
        }

        foreach (var key in new[] { "wire", "from", "to" }.Where(k => columns[k] < 0 && !told.ContainsKey(k)))
        {
            bag.Error(DiagnosticCodes.MissingKey, $"no column is understood as '{key}'", grid.Heads.At, $"name it: --columns \"{key}=...\"; {NameRules.Listed([.. grid.Heads.Cells.Select(c => c.Text)], "column")}");
        }

        if (bag.HasErrors)
        {
            return new(null, bag.ToSorted());
        }

        var open = new DiagnosticBag();
        var rows = new Rows(columns, open);
        var wires = grid.Rows.Select(rows.Wire).OfType<ListedWire>().ToImmutableArray();
        var words = Known.Where(k => columns[k.Key] >= 0).Select(k => $"{k.Key}: column {columns[k.Key] + 1} '{grid.Heads.Cells[columns[k.Key]].Text}'").ToImmutableArray();
        if (wires.IsEmpty)
        {
            bag.Error(DiagnosticCodes.NothingToFeed, "no row of the list is a wire", grid.Heads.At);
        }

        return new(wires.IsEmpty ? null : new WireList(wires, words, open.ToSorted()), wires.IsEmpty ? [.. open.ToSorted(), .. bag.ToSorted()] : bag.ToSorted());
    }

    /// <summary>Our own lists put an underscore before what a spreadsheet would change.</summary>
    internal static string Unguarded(string text) => text.Length > 1 && text[0] == '_' && !char.IsLetter(text[1]) ? text[1..] : text;

    private sealed class Rows(Dictionary<string, int> columns, DiagnosticBag open)
    {
        private readonly Dictionary<string, SourceSpan> ids = new(StringComparer.Ordinal);

        public ListedWire? Wire(GridRow row)
        {
            var id = Text(row, "wire");
            if (id is null || End(row, "from") is not { } from || End(row, "to") is not { } to)
            {
                Open(row.At, $"the row {(id is null ? "has no wire id" : $"of wire '{id}' lacks an end")}: left out");
                return null;
            }

            if (!ids.TryAdd(id, row.At))
            {
                Open(row.At, $"wire '{id}' stands in the list twice: the second is left out", ids[id]);
                return null;
            }

            if (from == to)
            {
                Open(row.At, $"wire '{id}' begins and ends at one point: left out");
                return null;
            }

            return new(id, from, to) { Function = Text(row, "function"), Colour = Colour(row, id), Size = Size(row, id), LengthMm = Length(row, id) };
        }

        private string? Text(GridRow row, string key) => row.Cell(columns[key])?.Text.Trim() is { } text ? Unguarded(text) : null;

        // 'C1.5', 'C1:5' and 'C1-5' name a pin where no column does
        private ListedEnd? End(GridRow row, string key)
        {
            if (Text(row, key) is not { } text)
            {
                return null;
            }

            if (columns[key + " pin"] >= 0)
            {
                return new(Name(text), Text(row, key + " pin") is { } pin ? Name(pin) : null);
            }

            var at = text.LastIndexOfAny(['.', ':', '-']);
            return at > 0 && at < text.Length - 1 ? new(Name(text[..at]), Name(text[(at + 1)..])) : new(Name(text), null);
        }

        // a point parts thing and pin in a description
        private static string Name(string text) => text.Replace('.', ' ').Trim();

        private string? Colour(GridRow row, string id)
        {
            if (Text(row, "colour") is not { } text)
            {
                return null;
            }

            var upper = text.ToUpperInvariant().Replace('-', '/').Replace(" ", "", StringComparison.Ordinal);
            if (ColourLetters.IsColour(upper))
            {
                return upper;
            }

            if (ColourLetters.OfWords(text) is { } letters)
            {
                return letters;
            }

            Open(row.Cell(columns["colour"])!.At, $"'{text}' of wire '{id}' is no IEC 60757 colour: left open", hint: "write its letters (YE/GN) or its name (yellow/green)");
            return null;
        }

        private string? Size(GridRow row, string id)
        {
            var (key, unit) = Text(row, "size") is not null ? ("size", "") : Text(row, "size AWG") is not null ? ("size AWG", " AWG") : ("size mm2", " mm2");
            if (Text(row, key) is not { } text)
            {
                return null;
            }

            foreach (var whole in new[] { text, text + unit })
            {
                if (Quantity.TryParse(whole, QuantityKind.WireSize, out var size, out _) && (size.IsAwg || size.Value > 0))
                {
                    return whole;
                }
            }

            Open(row.Cell(columns[key])!.At, $"'{text}' of wire '{id}' is no wire size with a unit (mm2 or AWG): left open", hint: UnitHint(text, "mm2", "size mm2"));
            return null;
        }

        private double? Length(GridRow row, string id)
        {
            var key = Text(row, "length mm") is not null ? "length mm" : "length";
            if (Text(row, key) is not { } text)
            {
                return null;
            }

            if (key == "length mm" && double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm) && mm is > 0 and < 1e7)
            {
                return mm;
            }

            if (Quantity.TryParse(text, QuantityKind.Length, out var length, out _) && length.Value > 0)
            {
                return length.Value;
            }

            Open(row.Cell(columns[key])!.At, $"'{text}' of wire '{id}' is no length with a unit: left open", hint: UnitHint(text, "mm", "length mm"));
            return null;
        }

        // what a bare number is in is not guessed
        private string? UnitHint(string text, string unit, string key)
        {
            var point = text.Replace(',', '.');
            if (!double.TryParse(point, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _))
            {
                return null;
            }

            return $"write '{point} {unit}' if that is meant{(text == point && columns[key] < 0 ? $", or tell it of all rows: --columns \"{key}=(the head of the column)\"" : "")}{(text == point ? "" : "; decimals have a point")}";
        }

        private void Open(SourceSpan at, string message, SourceSpan? other = null, string? hint = null) => open.Warning(DiagnosticCodes.NotPlaced, message, at, hint, other: other);
    }
}
