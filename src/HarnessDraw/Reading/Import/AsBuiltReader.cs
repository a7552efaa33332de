using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading.Import;

/// <summary>
/// Reads NAME.as-built.csv, a measurement a row: wire and length_mm; from, to and length_mm for a way of the layout; pin, state and volts; wire and milliohm. A row
/// without a figure is not measured yet.
/// </summary>
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

        var rows = new Rows(grid, harness, bag);
        if (!rows.HasColumns)
        {
            bag.Error(DiagnosticCodes.MissingKey, "the columns 'length_mm' and 'wire', or 'from' and 'to', are needed; or 'pin', 'state' and 'volts'; or 'wire' and 'milliohm'", grid.Heads.At);
            return new(null, bag.ToSorted());
        }

        foreach (var row in grid.Rows)
        {
            rows.Add(row);
        }

        var built = rows.ToAsBuilt();
        Twice(built.Wires, w => w.Wire, w => w.At, "wire", bag);
        Twice(built.Resistances, r => r.Wire, r => r.At, "resistance of wire", bag);
        Twice(built.Volts, v => $"{v.Pin} in {v.State}", v => v.At, "voltage at", bag);
        return new(bag.HasErrors ? null : built, bag.ToSorted());
    }

    private static void Twice<T>(ImmutableArray<T> rows, Func<T, string> name, Func<T, SourceSpan?> at, string what, DiagnosticBag bag)
    {
        foreach (var twice in rows.GroupBy(name, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            bag.Error(DiagnosticCodes.DuplicateName, $"{what} '{twice.Key}' is measured twice", at(twice.Last()), "keep one of the rows", at(twice.First()));
        }
    }

    private sealed class Rows(CellGrid grid, Harness harness, DiagnosticBag bag)
    {
        private readonly int wire = grid.ColumnOf("wire");
        private readonly int from = grid.ColumnOf("from");
        private readonly int to = grid.ColumnOf("to");
        private readonly int length = grid.ColumnOf("length_mm", "cut_mm");
        private readonly int pin = grid.ColumnOf("pin");
        private readonly int state = grid.ColumnOf("state");
        private readonly int volts = grid.ColumnOf("volts");
        private readonly int milliohm = grid.ColumnOf("milliohm");
        private readonly ImmutableArray<MeasuredWire>.Builder wires = ImmutableArray.CreateBuilder<MeasuredWire>();
        private readonly ImmutableArray<MeasuredRun>.Builder runs = ImmutableArray.CreateBuilder<MeasuredRun>();
        private readonly ImmutableArray<VoltsRead>.Builder voltages = ImmutableArray.CreateBuilder<VoltsRead>();
        private readonly ImmutableArray<ResistanceRead>.Builder resistances = ImmutableArray.CreateBuilder<ResistanceRead>();

        public bool HasColumns => (length >= 0 && (wire >= 0 || (from >= 0 && to >= 0))) || (pin >= 0 && state >= 0 && volts >= 0) || (wire >= 0 && milliohm >= 0);

        public AsBuilt ToAsBuilt() => new(wires.ToImmutable(), runs.ToImmutable(), voltages.ToImmutable(), resistances.ToImmutable());

        public void Add(GridRow row)
        {
            if (row.Cell(length) is { } cell && Figure(cell, "a length in mm", 1250, 1e6) is { } mm)
            {
                AddLength(row, mm);
            }

            if (row.Cell(milliohm) is { } ohms && Figure(ohms, "a resistance in milliohms", 41, 1e6) is { } reading)
            {
                if (row.Cell(wire) is { } id)
                {
                    resistances.Add(new(Name(id), reading, id.At));
                }
                else
                {
                    bag.Error(DiagnosticCodes.MissingKey, "the row has a resistance and names no wire", row.At);
                }
            }

            if (row.Cell(volts) is { } read && Figure(read, "a voltage", 12.4, 1000, negative: true) is { } value)
            {
                AddVolts(row, value);
            }
        }

        private void AddLength(GridRow row, double mm)
        {
            if (row.Cell(wire) is { } id)
            {
                wires.Add(new(Name(id), mm, id.At));
            }
            else if (row.Cell(from) is { } a && row.Cell(to) is { } b)
            {
                AddRun(new(Name(a), Name(b), mm, a.At));
            }
            else
            {
                bag.Error(DiagnosticCodes.MissingKey, "the row names neither a wire nor the two places of a way", row.At);
            }
        }

        private void AddRun(MeasuredRun run)
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

        private void AddVolts(GridRow row, double value)
        {
            if (row.Cell(pin) is not { } at || row.Cell(state) is not { } when)
            {
                bag.Error(DiagnosticCodes.MissingKey, "the row has volts and does not name both the pin and the state they were read in", row.At);
                return;
            }

            var states = harness.States.Select(s => s.Id).ToArray();
            var pins = harness.Things.SelectMany(t => t.Pins.Select(p => $"{t.Id}.{p.Name}")).ToArray();
            if (!pins.Contains(Name(at)))
            {
                bag.Error(DiagnosticCodes.UnknownPin, $"there is no pin '{at.Text}'", at.At, NearestName.Hint(Name(at), pins) ?? "write it 'thing.pin'");
            }
            else if (!states.Contains(Name(when)))
            {
                bag.Error(DiagnosticCodes.UnknownName, $"there is no state '{when.Text}'", when.At, NearestName.Hint(Name(when), states) ?? string.Join(", ", states));
            }
            else
            {
                voltages.Add(new(Name(at), Name(when), value, at.At));
            }
        }

        private static string Name(GridCell cell) => WireListReader.Unguarded(cell.Text.Trim());

        private double? Figure(GridCell cell, string what, double such, double most, bool negative = false)
        {
            var style = negative ? NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign : NumberStyles.AllowDecimalPoint;
            if (double.TryParse(cell.Text.Trim(), style, CultureInfo.InvariantCulture, out var figure) && Math.Abs(figure) <= most && (negative || figure > 0))
            {
                return figure;
            }

            bag.Error(DiagnosticCodes.Quantity, $"'{cell.Text}' is no {what[2..]}", cell.At, $"write a plain number such as {such.ToString(CultureInfo.InvariantCulture)}");
            return null;
        }
    }
}
