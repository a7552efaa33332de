using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Reading.Import;

/// <summary>Reads how long work takes from CSV: columns work and minutes.</summary>
public static class UnitTimeReader
{
    /// <param name="file">The file.</param>
    /// <param name="files">Where it is read from.</param>
    /// <param name="works">Names of the kinds of work that have a time.</param>
    public static Outcome<ImmutableSortedDictionary<string, double>> Read(string file, IFileSource files, ImmutableArray<string> works)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(files);
        var bag = new DiagnosticBag();
        var minutes = ImmutableSortedDictionary.CreateBuilder<string, double>(StringComparer.Ordinal);
        if (new InputFiles(files, bag).Read(file, new(file, 1, 1)) is { } text && CsvGridReader.Read(file, text, bag) is { } grid)
        {
            var (work, time) = (grid.ColumnOf("work"), grid.ColumnOf("minutes"));
            if (work < 0 || time < 0)
            {
                bag.Error(DiagnosticCodes.MissingKey, "the columns 'work' and 'minutes' are needed", grid.Heads.At);
            }
            else
            {
                foreach (var row in grid.Rows)
                {
                    Add(row.Cell(work), row.Cell(time), row.At, works, minutes, bag);
                }
            }
        }

        return new(bag.HasErrors ? null : minutes.ToImmutable(), bag.ToSorted());
    }

    private static void Add(GridCell? work, GridCell? time, SourceSpan at, ImmutableArray<string> works, ImmutableSortedDictionary<string, double>.Builder minutes, DiagnosticBag bag)
    {
        if (work is null || !works.Contains(work.Text.Trim()))
        {
            bag.Error(DiagnosticCodes.UnknownName, work is null ? "a time without its work" : $"there is no work '{work.Text}'", work?.At ?? at, NearestName.Hint(work?.Text ?? "", works) ?? string.Join(", ", works));
        }
        else if (!double.TryParse(time?.Text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) || value is < 0 or > 10_000)
        {
            bag.Error(DiagnosticCodes.Quantity, $"'{time?.Text}' is no time in minutes", time?.At ?? at, "write a plain number such as 0.4");
        }
        else if (!minutes.TryAdd(work.Text.Trim(), value))
        {
            bag.Error(DiagnosticCodes.DuplicateName, $"'{work.Text}' has two times", work.At, "keep one of the rows");
        }
    }
}
