using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading.Import;

/// <summary>Reads NAME.as-built.csv: rows with wire and length_mm, or with from, to and length_mm for a way of the layout.</summary>
public static class AsBuiltReader
{
    public static Outcome<AsBuilt> Read(string file, IFileSource files, Harness harness)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(harness);
        var bag = new DiagnosticBag();
        var grid = new InputFiles(files, bag).Read(file, new SourceSpan(file, 1, 1)) is { } text ? CsvGridReader.Read(file, text, bag) : null;
        if (grid is null)
        {
            return new(null, bag.ToSorted());
        }

        var (wire, from, to, length) = (grid.ColumnOf("wire"), grid.ColumnOf("from"), grid.ColumnOf("to"), grid.ColumnOf("length_mm", "cut_mm"));
        if (length < 0 || (wire < 0 && (from < 0 || to < 0)))
        {
            bag.Error(DiagnosticCodes.MissingKey, "the columns 'length_mm' and 'wire', or 'from' and 'to', are needed", grid.Heads.At);
            return new(null, bag.ToSorted());
        }

        var wires = ImmutableArray.CreateBuilder<MeasuredWire>();
        var runs = ImmutableArray.CreateBuilder<MeasuredRun>();
        foreach (var row in grid.Rows)
        {
            if (row.Cell(length) is not { } cell)
            {
                continue; // not measured yet
            }

            if (!double.TryParse(cell.Text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm) || mm is <= 0 or > 1e6)
            {
                bag.Error(DiagnosticCodes.Quantity, $"'{cell.Text}' is no length in mm", cell.At, "write a plain number such as 1250");
            }
            else if (row.Cell(wire) is { } id)
            {
                wires.Add(new(id.Text.Trim(), mm, id.At));
            }
            else if (row.Cell(from) is { } a && row.Cell(to) is { } b)
            {
                Add(runs, new(a.Text.Trim(), b.Text.Trim(), mm, a.At), harness, bag);
            }
            else
            {
                bag.Error(DiagnosticCodes.MissingKey, "the row names neither a wire nor the two places of a way", row.At);
            }
        }

        foreach (var twice in wires.GroupBy(w => w.Wire, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            bag.Error(DiagnosticCodes.DuplicateName, $"wire '{twice.Key}' is measured twice", twice.Last().At, "keep one of the rows");
        }

        return new(bag.HasErrors ? null : new AsBuilt(wires.ToImmutable(), runs.ToImmutable()), bag.ToSorted());
    }

    private static void Add(ImmutableArray<MeasuredRun>.Builder runs, MeasuredRun run, Harness harness, DiagnosticBag bag)
    {
        if (harness.Layout.Paths.Any(p => (p.From, p.To) == (run.From, run.To) || (p.To, p.From) == (run.From, run.To)))
        {
            runs.Add(run);
            return;
        }

        var places = harness.Layout.Places.Select(p => p.Id).ToArray();
        var unknown = new[] { run.From, run.To }.FirstOrDefault(p => !places.Contains(p));
        bag.Error(
            DiagnosticCodes.UnknownName,
            unknown is null ? $"the layout has no path from '{run.From}' to '{run.To}'" : $"there is no place '{unknown}'",
            run.At,
            unknown is null ? "measure it between neighbouring places" : NearestName.Hint(unknown, places));
    }
}
