using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Xml;
using System.Xml.Linq;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Reading.Import;

/// <summary>
/// Reads the first sheet of an XLSX workbook (ECMA-376) that has a row: values as they are stored, formulas by their last result. Places are row and column.
/// </summary>
public static class WorkbookGridReader
{
    private const long LargestPart = 50 * 1024 * 1024;
    private static readonly XNamespace Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    /// <summary>The table, or null with a message when the file is damaged.</summary>
    public static CellGrid? Read(string file, byte[] content, DiagnosticBag bag)
    {
        ArgumentNullException.ThrowIfNull(bag);
        try
        {
            using var zip = new ZipArchive(new MemoryStream(content), ZipArchiveMode.Read);
            var shared = Part(zip, "xl/sharedStrings.xml")?.Root?.Elements(Main + "si").Select(TextOf).ToArray() ?? [];
            foreach (var sheet in zip.Entries.Where(e => e.FullName.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal)).OrderBy(e => e.FullName.Length).ThenBy(e => e.FullName, StringComparer.Ordinal))
            {
                var rows = Rows(file, Part(zip, sheet.FullName)!, shared);
                if (rows.Length > 1)
                {
                    return new(rows[0], rows[1..]);
                }
            }

            bag.Error(DiagnosticCodes.FileUnreadable, $"'{file}' has no sheet with rows", new(file, 1, 1));
        }
        catch (Exception wrong) when (wrong is InvalidDataException or XmlException or FormatException or IndexOutOfRangeException or NotSupportedException or OverflowException)
        {
            bag.Error(DiagnosticCodes.FileUnreadable, $"'{file}' is a damaged workbook, or none at all", new(file, 1, 1), "open and save it again as .xlsx, or as CSV (UTF-8)");
        }

        return null;
    }

    private static ImmutableArray<GridRow> Rows(string file, XDocument sheet, string[] shared) =>
    [
        .. sheet.Descendants(Main + "row").Select((row, i) =>
        {
            var number = (int?)row.Attribute("r") ?? i + 1;
            var cells = new SortedDictionary<int, GridCell>();
            foreach (var cell in row.Elements(Main + "c"))
            {
                var column = ColumnOf((string?)cell.Attribute("r")) ?? cells.Keys.LastOrDefault(-1) + 1;
                cells[column] = new(ValueOf(cell, shared), new(file, number, column + 1));
            }

            var last = cells.Keys.LastOrDefault(-1);
            return new GridRow(new(file, number, 1), [.. Enumerable.Range(0, last + 1).Select(c => cells.GetValueOrDefault(c) ?? new GridCell("", new(file, number, c + 1)))]);
        }).Where(r => r.Cells.Any(c => c.Text.Trim().Length > 0)),
    ];

    private static string ValueOf(XElement cell, string[] shared)
    {
        var value = (string?)cell.Element(Main + "v") ?? "";
        return (string?)cell.Attribute("t") switch
        {
            "s" => shared[int.Parse(value, CultureInfo.InvariantCulture)],
            "inlineStr" => cell.Element(Main + "is") is { } text ? TextOf(text) : "",
            "str" or "b" or "e" => value,
            // a number is stored with all its bits: 1.1 as 1.1000000000000001
            _ => double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && Math.Abs(number) < 1e15
                ? ((decimal)number).ToString("0.##########", CultureInfo.InvariantCulture)
                : value,
        };
    }

    private static string TextOf(XElement element) => string.Concat(element.Descendants(Main + "t").Where(t => t.Parent?.Name != Main + "rPh").Select(t => t.Value));

    // 'C7' is the third column; sheets are at most 16384 wide
    private static int? ColumnOf(string? reference)
    {
        if (reference is null)
        {
            return null;
        }

        var column = 0;
        foreach (var c in reference.TakeWhile(char.IsAsciiLetterUpper))
        {
            column = (column * 26) + (c - 'A' + 1);
        }

        return column is > 0 and <= 16384 ? column - 1 : throw new FormatException("no cell reference");
    }

    private static XDocument? Part(ZipArchive zip, string name)
    {
        if (zip.GetEntry(name) is not { } entry)
        {
            return null;
        }

        if (entry.Length > LargestPart)
        {
            throw new InvalidDataException("a part of the workbook is too large");
        }

        using var reader = XmlReader.Create(entry.Open(), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, MaxCharactersInDocument = LargestPart });
        return XDocument.Load(reader);
    }
}
