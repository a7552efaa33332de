using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;

namespace HarnessDraw.Writing.Workbook;

/// <summary>
/// Finishes a workbook: page set-up and heads on every printed page (which the spreadsheet library leaves out), and no trace of when it was written. Works on
/// the parts of the package (ECMA-376) as texts.
/// </summary>
internal static class WorkbookFinish
{
    // the earliest date a ZIP file can hold
    private static readonly DateTimeOffset NoDate = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static byte[] Finish(MemoryStream raw, ImmutableArray<string> sheets, string footer)
    {
        raw.Position = 0;
        using var finished = new MemoryStream();
        using (var from = new ZipArchive(raw, ZipArchiveMode.Read, leaveOpen: true))
        using (var to = new ZipArchive(finished, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var part in from.Entries.OrderBy(e => e.FullName, StringComparer.Ordinal))
            {
                var entry = to.CreateEntry(part.FullName, CompressionLevel.Optimal);
                entry.LastWriteTime = NoDate;
                using var text = new StreamWriter(entry.Open(), new UTF8Encoding(false));
                using var read = new StreamReader(part.Open(), Encoding.UTF8);
                text.Write(Mend(part.FullName, read.ReadToEnd(), sheets, footer));
            }
        }

        return finished.ToArray();
    }

    private static string Mend(string part, string xml, ImmutableArray<string> sheets, string footer) => part switch
    {
        "docProps/core.xml" => Without(xml, "<dcterms:created", "</dcterms:created>"),
        "xl/workbook.xml" => WithNames(xml, sheets),
        _ when part.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal) => WithPage(xml, footer),
        _ => xml,
    };

    // CT_Worksheet: sheetPr comes first, page margins, set-up and footer behind the filter
    private static string WithPage(string xml, string footer)
    {
        var open = xml.IndexOf('>', xml.IndexOf("<worksheet", StringComparison.Ordinal)) + 1;
        var page = $"""
            <printOptions gridLines="0"/><pageMargins left="0.4" right="0.4" top="0.5" bottom="0.6" header="0.3" footer="0.3"/><pageSetup paperSize="9" orientation="landscape" fitToWidth="1" fitToHeight="0"/><headerFooter><oddHeader>&amp;L&amp;A</oddHeader><oddFooter>&amp;L{FooterText(footer)}&amp;RPage &amp;P of &amp;N</oddFooter></headerFooter>
            """;
        return xml.Insert(xml.LastIndexOf("</worksheet>", StringComparison.Ordinal), page).Insert(open, "<sheetPr><pageSetUpPr fitToPage=\"1\"/></sheetPr>");
    }

    // an ampersand begins a code in a footer, which holds 255 characters at the most
    private static string FooterText(string footer)
    {
        var shown = footer.Length > 160 ? footer[..160] : footer;
        return SecurityElement.Escape(shown.Replace("&", "&&", StringComparison.Ordinal))!;
    }

    private static string WithNames(string xml, ImmutableArray<string> sheets)
    {
        var names = new StringBuilder("<definedNames>");
        for (var s = 0; s < sheets.Length; s++)
        {
            names.Append(CultureInfo.InvariantCulture, $"<definedName name=\"_xlnm.Print_Titles\" localSheetId=\"{s}\">'{SecurityElement.Escape(sheets[s])}'!$1:$1</definedName>");
        }

        names.Append("</definedNames>");
        var old = xml.IndexOf("</definedNames>", StringComparison.Ordinal);
        return old >= 0
            ? xml.Insert(old, names.ToString()["<definedNames>".Length..^"</definedNames>".Length])
            : xml.Insert(xml.IndexOf("</sheets>", StringComparison.Ordinal) + "</sheets>".Length, names.ToString());
    }

    private static string Without(string xml, string from, string to)
    {
        var (a, b) = (xml.IndexOf(from, StringComparison.Ordinal), xml.IndexOf(to, StringComparison.Ordinal));
        return a < 0 || b < a ? xml : xml.Remove(a, b + to.Length - a);
    }
}
