using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading.Import;

/// <summary>Reads prices from CSV: columns part, and price_each or mass_g (or both); a column currency where it matters.</summary>
public static class PriceReader
{
    public static Outcome<PriceList> Read(string file, IFileSource files)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(files);
        var bag = new DiagnosticBag();
        if (new InputFiles(files, bag).Read(file, new(file, 1, 1)) is not { } text || CsvGridReader.Read(file, text, bag) is not { } grid)
        {
            return new(null, bag.ToSorted());
        }

        var (part, price, mass, currency) = (grid.ColumnOf("part"), grid.ColumnOf("price_each", "price"), grid.ColumnOf("mass_g"), grid.ColumnOf("currency"));
        if (part < 0 || (price < 0 && mass < 0))
        {
            bag.Error(DiagnosticCodes.MissingKey, $"the columns are {string.Join(", ", grid.Heads.Cells.Select(c => $"'{c.Text}'"))}; 'part' and 'price_each' or 'mass_g' are needed", grid.Heads.At);
            return new(null, bag.ToSorted());
        }

        var rows = ImmutableArray.CreateBuilder<PartPrice>();
        foreach (var row in grid.Rows)
        {
            if (row.Cell(part) is { } name)
            {
                rows.Add(new(name.Text.Trim(), Plain(row.Cell(price), bag), Plain(row.Cell(mass), bag), name.At));
            }
            else
            {
                bag.Error(DiagnosticCodes.MissingKey, "a price without a part", row.At);
            }
        }

        foreach (var twice in rows.GroupBy(r => r.Part, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            bag.Error(DiagnosticCodes.DuplicateName, $"'{twice.Key}' has two prices", twice.Last().At, "keep one of the rows", twice.First().At);
        }

        ImmutableArray<GridCell> currencies = currency < 0 ? [] : [.. grid.Rows.Select(r => r.Cell(currency)).OfType<GridCell>().DistinctBy(c => c.Text.Trim(), StringComparer.Ordinal)];
        if (currencies.Length > 1)
        {
            bag.Error(DiagnosticCodes.Quantity, $"prices in '{currencies[0].Text}' and '{currencies[1].Text}' cannot be added", currencies[1].At, "write all prices in one currency");
        }

        return new(bag.HasErrors ? null : new PriceList(rows.ToImmutable(), currencies.FirstOrDefault()?.Text.Trim()), bag.ToSorted());
    }

    private static double? Plain(GridCell? cell, DiagnosticBag bag)
    {
        if (cell is null || (double.TryParse(cell.Text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) && number is >= 0 and <= 1e9))
        {
            return cell is null ? null : double.Parse(cell.Text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        }

        bag.Error(DiagnosticCodes.Quantity, $"'{cell.Text}' is no plain number", cell.At, "write it like 12.50, without a sign of a currency");
        return null;
    }
}
