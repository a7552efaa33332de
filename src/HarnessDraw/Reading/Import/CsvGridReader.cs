using System.Collections.Immutable;
using System.Text;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Reading.Import;

/// <summary>
/// Reads a CSV file after RFC 4180; the separator (comma, semicolon or tab) is the one that the row of heads holds most of. Every cell keeps its line and column.
/// </summary>
public static class CsvGridReader
{
    /// <summary>The table, or null with messages when the file is no table.</summary>
    public static CellGrid? Read(string file, string text, DiagnosticBag bag)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(bag);
        var start = new SourceSpan(file, 1, 1);
        if (text.Contains('\0', StringComparison.Ordinal) || text.StartsWith("PK\u0003", StringComparison.Ordinal))
        {
            bag.Error(DiagnosticCodes.FileUnreadable, $"'{file}' is not a CSV text", start, "save the sheet as CSV (UTF-8), or name an .xlsx file");
            return null;
        }

        var rows = new Cells(file, text.TrimStart('\uFEFF'), bag).ReadAll();
        if (rows.Length == 0)
        {
            bag.Error(DiagnosticCodes.FileUnreadable, $"'{file}' holds no row", start, "the first row names the columns");
            return null;
        }

        var heads = rows[0];
        GridRow[] longer = [.. rows.Skip(1).Where(r => r.Cells.Length > heads.Cells.Length && r.Cells[heads.Cells.Length..].Any(c => c.Text.Trim().Length > 0))];
        if (longer.Length > 0)
        {
            var more = longer.Length == 1 ? "" : $"; {longer.Length - 1} further row{(longer.Length == 2 ? " has" : "s have")} more cells than heads too";
            bag.Error(DiagnosticCodes.ListLength, $"the row has {longer[0].Cells.Length} cells, the heads are {heads.Cells.Length}{more}", longer[0].Cells[heads.Cells.Length].At, "put a text that holds the separator in quotes");
        }

        return new(heads, rows[1..]);
    }

    private sealed class Cells(string file, string text, DiagnosticBag bag)
    {
        private int at;
        private int line = 1;
        private int lineStart;

        public ImmutableArray<GridRow> ReadAll()
        {
            var separator = Separator();
            var rows = ImmutableArray.CreateBuilder<GridRow>();
            while (at < text.Length)
            {
                var row = ReadRow(separator);
                if (row.Cells.Any(c => c.Text.Trim().Length > 0))
                {
                    rows.Add(row);
                }
            }

            return rows.ToImmutable();
        }

        private char Separator()
        {
            var heads = text.AsSpan()[..(text.IndexOf('\n', StringComparison.Ordinal) is var end and >= 0 ? end : text.Length)];
            var (best, most) = (',', heads.Count(','));
            foreach (var other in (ReadOnlySpan<char>)[';', '\t'])
            {
                if (heads.Count(other) > most)
                {
                    (best, most) = (other, heads.Count(other));
                }
            }

            return best;
        }

        private GridRow ReadRow(char separator)
        {
            var rowAt = Here();
            var cells = ImmutableArray.CreateBuilder<GridCell>();
            while (true)
            {
                cells.Add(ReadCell(separator));
                if (at < text.Length && text[at] == separator)
                {
                    at++;
                    continue;
                }

                EndLine();
                return new(rowAt, cells.ToImmutable());
            }
        }

        private GridCell ReadCell(char separator)
        {
            var from = Here();
            if (at < text.Length && text[at] == '"')
            {
                return new(ReadQuoted(from, separator), from);
            }

            var begin = at;
            while (at < text.Length && text[at] != separator && text[at] is not ('\r' or '\n'))
            {
                at++;
            }

            return new(text[begin..at], from);
        }

        private string ReadQuoted(SourceSpan from, char separator)
        {
            var cell = new StringBuilder();
            for (at++; at < text.Length; at++)
            {
                if (text[at] == '"')
                {
                    if (at + 1 < text.Length && text[at + 1] == '"')
                    {
                        at++;
                    }
                    else
                    {
                        at++;
                        if (at < text.Length && text[at] != separator && text[at] is not ('\r' or '\n'))
                        {
                            bag.Error(DiagnosticCodes.YamlSyntax, "text follows the closing quote of a cell", Here(), "double the quotes inside a quoted cell");
                        }

                        return cell.ToString();
                    }
                }
                else if (text[at] == '\n')
                {
                    (line, lineStart) = (line + 1, at + 1);
                }

                cell.Append(text[at]);
            }

            bag.Error(DiagnosticCodes.YamlSyntax, "a quote is opened and never closed", from, "close it, or double it if it is part of the text");
            return cell.ToString();
        }

        private void EndLine()
        {
            // what follows a misplaced quote is skipped
            while (at < text.Length && text[at] is not ('\r' or '\n'))
            {
                at++;
            }

            at += at + 1 < text.Length && text[at] == '\r' && text[at + 1] == '\n' ? 2 : 1;
            (line, lineStart) = (line + 1, at);
        }

        private SourceSpan Here() => new(file, line, at - lineStart + 1);
    }
}
