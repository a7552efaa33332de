using HarnessDraw.Writing.CutList;

namespace HarnessDraw.Writing.Lists;

/// <summary>A list as CSV (RFC 4180, UTF-8): one row of heads, numbers plain, unknown values empty, text that survives a spreadsheet.</summary>
public static class ListCsvWriter
{
    /// <summary>The whole file; the same table and options give the same bytes.</summary>
    public static byte[] Write(ListTable table, CsvOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(table);
        using var csv = new CsvBuilder(options ?? new CsvOptions());
        foreach (var column in table.Columns)
        {
            csv.Text(column.Head);
        }

        csv.EndLine();
        foreach (var row in table.Rows)
        {
            for (var i = 0; i < row.Length; i++)
            {
                var (column, cell) = (table.Columns[i], row[i]);
                _ = column.Kind == CellKind.Number ? csv.Number(cell.Number, column.Decimals) : csv.Text(cell.Text);
            }

            csv.EndLine();
        }

        return csv.ToBytes();
    }
}
