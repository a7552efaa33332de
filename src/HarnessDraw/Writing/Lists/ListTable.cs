using System.Collections.Immutable;

namespace HarnessDraw.Writing.Lists;

/// <summary>What the cells of a column are.</summary>
public enum CellKind
{
    Text,
    Number,

    /// <summary>Empty, to be ticked or filled in by hand.</summary>
    Tick,
}

/// <summary>A column: its head (with the unit, 'cut_mm'), what its cells are, and the decimals of a number.</summary>
public sealed record ListColumn(string Head, CellKind Kind, int Decimals = 0);

/// <summary>A cell: a text, a number, or neither where nothing is known.</summary>
public readonly record struct ListCell(string? Text, double? Number);

/// <summary>
/// A list as rows and columns, the same for CSV, workbook and JSON. <see cref="Name"/> goes into file and sheet names, <see cref="Title"/> says what it is.
/// </summary>
public sealed record ListTable(string Name, string Title, ImmutableArray<ListColumn> Columns, ImmutableArray<ImmutableArray<ListCell>> Rows)
{
    public ImmutableArray<string> Heads => [.. Columns.Select(c => c.Head)];

    /// <summary>Sum of a column of numbers, unknown ones left out.</summary>
    public double Sum(string head)
    {
        var at = Heads.IndexOf(head);
        return at < 0 ? throw new ArgumentException($"no column '{head}'", nameof(head)) : Rows.Sum(r => r[at].Number ?? 0);
    }
}
