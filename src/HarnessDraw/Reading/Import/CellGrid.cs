using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Reading.Import;

/// <summary>A cell of a table with where it stands: line and column of its text in a CSV file, row and column number in a workbook.</summary>
public sealed record GridCell(string Text, SourceSpan At);

/// <summary>A row of a table; cells behind the last one written are missing.</summary>
public sealed record GridRow(SourceSpan At, ImmutableArray<GridCell> Cells)
{
    public GridCell? Cell(int column) => column >= 0 && column < Cells.Length && Cells[column].Text.Trim().Length > 0 ? Cells[column] : null;
}

/// <summary>A table from a file: the row of heads and the rows below it; empty rows are left out.</summary>
public sealed record CellGrid(GridRow Heads, ImmutableArray<GridRow> Rows)
{
    /// <summary>The column whose head is one of the names, capitals, blanks and underscores made alike; -1 when there is none.</summary>
    public int ColumnOf(params ReadOnlySpan<string> names)
    {
        foreach (var name in names)
        {
            for (var c = 0; c < Heads.Cells.Length; c++)
            {
                if (Alike(Heads.Cells[c].Text) == Alike(name))
                {
                    return c;
                }
            }
        }

        return -1;
    }

    internal static string Alike(string text) => new([.. text.Where(char.IsLetterOrDigit).Select(char.ToLowerInvariant)]);
}
