using System.Collections.Immutable;
using HarnessDraw.Writing.Lists;
using SpreadCheetah;
using SpreadCheetah.Styling;
using SpreadCheetah.Worksheets;

namespace HarnessDraw.Writing.Workbook;

/// <summary>
/// Lists as one XLSX workbook: texts typed as text so that no id is taken for a number or a date, numbers with a format, the row of heads frozen, filtered and
/// printed on every page, landscape and as wide as the page. No macros, no links, no clock: the same lists give the same bytes.
/// </summary>
public static class WorkbookWriter
{
    private const int LongestSheetName = 31;
    private const double WidestColumn = 48;

    public static byte[] Write(ImmutableArray<ListTable> tables, string footer)
    {
        using var raw = new MemoryStream();
        // memory answers at once: nothing here waits
        WriteRaw(raw, tables).GetAwaiter().GetResult();
        return WorkbookFinish.Finish(raw, [.. tables.Select(SheetName)], footer);
    }

    internal static string SheetName(ListTable table)
    {
        var safe = new string([.. table.Name.Select(c => "[]:*?/\\'".Contains(c, StringComparison.Ordinal) || char.IsControl(c) ? '-' : c)]);
        return safe[..Math.Min(LongestSheetName, safe.Length)];
    }

    private static async Task WriteRaw(Stream to, ImmutableArray<ListTable> tables)
    {
        var sheet = await Spreadsheet.CreateNewAsync(to, new SpreadCheetahOptions { DefaultDateTimeFormat = null }).ConfigureAwait(false);
        await using (sheet.ConfigureAwait(false))
        {
            var styles = new Styles(sheet);
            foreach (var table in tables)
            {
                await WriteTable(sheet, table, styles).ConfigureAwait(false);
            }

            await sheet.FinishAsync().ConfigureAwait(false);
        }
    }

    private static async Task WriteTable(Spreadsheet sheet, ListTable table, Styles styles)
    {
        var options = new WorksheetOptions { FrozenRows = 1 };
        if (!table.Rows.IsEmpty)
        {
            options.AutoFilter = new AutoFilterOptions($"A1:{SpreadsheetUtility.GetColumnName(table.Columns.Length)}{table.Rows.Length + 1}");
        }

        for (var c = 0; c < table.Columns.Length; c++)
        {
            options.Column(c + 1).Width = WidthOf(table, c);
        }

        await sheet.StartWorksheetAsync(SheetName(table), options).ConfigureAwait(false);
        await sheet.AddRowAsync(table.Columns.Select(c => new StyledCell(c.Head, styles.Head)).ToList()).ConfigureAwait(false);
        foreach (var row in table.Rows)
        {
            await sheet.AddRowAsync(table.Columns.Select((c, i) => CellOf(c, row[i], styles)).ToList()).ConfigureAwait(false);
        }
    }

    private static StyledCell CellOf(ListColumn column, ListCell cell, Styles styles) => column.Kind switch
    {
        CellKind.Number => new(cell.Number is { } n && double.IsFinite(n) ? Rounded(n, column.Decimals) : null, styles.Number(column.Decimals)),
        CellKind.Tick => new((string?)null, styles.Tick),
        _ => new(string.IsNullOrEmpty(cell.Text) ? null : Printable(cell.Text), styles.Text),
    };

    private static double? Rounded(double value, int decimals) => Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;

    // XML has no control characters but tab and line ends
    private static string Printable(string text) => text.Any(IsUnprintable) ? new string([.. text.Select(c => IsUnprintable(c) ? '\uFFFD' : c)]) : text;

    private static bool IsUnprintable(char c) => (c < ' ' && c is not ('\t' or '\n' or '\r')) || c is '\uFFFE' or '\uFFFF';

    private static double WidthOf(ListTable table, int column)
    {
        var kind = table.Columns[column].Kind;
        var longest = table.Rows.Select(r => kind == CellKind.Number ? 9 : r[column].Text?.Length ?? 0).DefaultIfEmpty(0).Max();
        return Math.Min(WidestColumn, Math.Max(longest, table.Columns[column].Head.Length + 2) + 1.5);
    }

    private sealed class Styles(Spreadsheet sheet)
    {
        private readonly Dictionary<int, StyleId> numbers = [];

        public StyleId Head { get; } = sheet.AddStyle(new Style
        {
            Font = { Bold = true },
            Fill = { Color = System.Drawing.Color.FromArgb(0xE6, 0xE6, 0xE6) },
            Border = { Bottom = { BorderStyle = BorderStyle.Medium } },
        });

        public StyleId Text { get; } = sheet.AddStyle(new Style { Format = NumberFormat.Standard(StandardNumberFormat.Text), Border = { Bottom = { BorderStyle = BorderStyle.Hair } } });

        public StyleId Tick { get; } = sheet.AddStyle(new Style
        {
            Border =
            {
                Left = { BorderStyle = BorderStyle.Thin }, Right = { BorderStyle = BorderStyle.Thin },
                Top = { BorderStyle = BorderStyle.Thin }, Bottom = { BorderStyle = BorderStyle.Thin },
            },
        });

        public StyleId Number(int decimals)
        {
            if (!numbers.TryGetValue(decimals, out var style))
            {
                var form = decimals == 0 ? NumberFormat.Standard(StandardNumberFormat.NoDecimalPlaces) : NumberFormat.Custom("0." + new string(decimals > 1 ? '#' : '0', decimals));
                numbers[decimals] = style = sheet.AddStyle(new Style { Format = form, Border = { Bottom = { BorderStyle = BorderStyle.Hair } } });
            }

            return style;
        }
    }
}
