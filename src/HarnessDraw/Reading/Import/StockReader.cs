using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Units;

namespace HarnessDraw.Reading.Import;

/// <summary>A reel or offcut on a shelf as its owner wrote it down; null type, size or colour fits any wire.</summary>
public sealed record ShelfPiece(string Id, string? WireType, string? SizeLabel, string? Colour, double LengthMm, int Pieces);

/// <summary>All of a shelf.</summary>
public sealed record Shelf(ImmutableArray<ShelfPiece> Pieces);

/// <summary>Reads wire at hand from CSV: columns id and length_mm (or length, with its unit), and wire_type, size, colour, pieces where they matter.</summary>
public static class StockReader
{
    public static Outcome<Shelf> Read(string file, IFileSource files)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(files);
        var bag = new DiagnosticBag();
        var start = new SourceSpan(file, 1, 1);
        var grid = new InputFiles(files, bag).Read(file, start) is { } text ? CsvGridReader.Read(file, text, bag) : null;
        if (grid is null)
        {
            return new(null, bag.ToSorted());
        }

        var (id, millimetres, length) = (grid.ColumnOf("id", "name"), grid.ColumnOf("length_mm"), grid.ColumnOf("length"));
        if (id < 0 || (millimetres < 0 && length < 0))
        {
            bag.Error(DiagnosticCodes.MissingKey, $"the columns are {string.Join(", ", grid.Heads.Cells.Select(c => $"'{c.Text}'"))}; 'id' and 'length_mm' are needed", grid.Heads.At);
            return new(null, bag.ToSorted());
        }

        var pieces = grid.Rows.Select(r => Piece(grid, r, id, millimetres, length, bag)).OfType<ShelfPiece>().ToImmutableArray();
        foreach (var twice in pieces.GroupBy(p => p.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            bag.Error(DiagnosticCodes.DuplicateName, $"'{twice.Key}' is on the shelf twice", grid.Rows.Last(r => r.Cell(id)?.Text.Trim() == twice.Key).At, "give every reel and offcut a name of its own, or a number in 'pieces'");
        }

        return new(bag.HasErrors ? null : new Shelf(pieces), bag.ToSorted());
    }

    private static ShelfPiece? Piece(CellGrid grid, GridRow row, int id, int millimetres, int length, DiagnosticBag bag)
    {
        if (row.Cell(id) is not { } name)
        {
            bag.Error(DiagnosticCodes.MissingKey, "a reel or offcut without an id", row.At);
            return null;
        }

        var mm = row.Cell(millimetres) is { } plain ? Plain(plain, bag) : row.Cell(length) is { } written ? WithUnit(written, bag) : null;
        if (mm is null && row.Cell(millimetres) is null && row.Cell(length) is null)
        {
            bag.Error(DiagnosticCodes.MissingKey, $"'{name.Text.Trim()}' has no length", row.At);
        }

        var pieces = 1;
        if (row.Cell(grid.ColumnOf("pieces", "qty")) is { } many && !(int.TryParse(many.Text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out pieces) && pieces is > 0 and <= 100_000))
        {
            bag.Error(DiagnosticCodes.Quantity, $"'{many.Text}' is no number of pieces", many.At);
        }

        return mm is null ? null : new(name.Text.Trim(), Text("wire_type", "type"), Text("size"), Text("colour"), mm.Value, pieces);

        string? Text(params ReadOnlySpan<string> heads) => row.Cell(grid.ColumnOf(heads))?.Text.Trim();
    }

    private static double? Plain(GridCell cell, DiagnosticBag bag)
    {
        if (double.TryParse(cell.Text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm) && mm is > 0 and <= 1e8)
        {
            return mm;
        }

        bag.Error(DiagnosticCodes.Quantity, $"'{cell.Text}' is no length in mm", cell.At, "write a plain number such as 12500");
        return null;
    }

    private static double? WithUnit(GridCell cell, DiagnosticBag bag)
    {
        if (Units.Quantity.TryParse(cell.Text, QuantityKind.Length, out var quantity, out var problem) && quantity.Value > 0)
        {
            return quantity.Value;
        }

        bag.Error(DiagnosticCodes.Quantity, $"'{cell.Text}' is no length: {problem ?? "it is zero"}", cell.At, "write the unit, such as 12.5 m");
        return null;
    }
}
