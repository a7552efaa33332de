using System.Data;
using System.IO.Compression;
using System.Text;
using ExcelDataReader;
using HarnessDraw.Fabrication;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.Lists;
using HarnessDraw.Writing.Workbook;

namespace HarnessDraw.Tests.Writing;

/// <summary>The workbook as another reader sees it.</summary>
public class WorkbookTests
{
    static WorkbookTests() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    [Theory]
    [InlineData("brackmere-six")]
    [InlineData("dunmarrow-18")]
    public void Every_cell_comes_back_as_it_was_typed(string name)
    {
        var order = FabricationOrder.Everything(ExamplePlans.Of(name));
        var sheets = Read(CutListWorkbook.Write(order));
        Assert.Equal("read me", sheets[0].Name);
        foreach (var table in CutListWorkbook.Tables(order, new()))
        {
            var sheet = sheets.Single(s => s.Name == table.Name);
            Assert.Equal(table.Heads, sheet.Rows[0].Select(c => c as string));
            Assert.Equal(table.Rows.Length, sheet.Rows.Count - 1);
            foreach (var (row, read) in table.Rows.Zip(sheet.Rows.Skip(1)))
            {
                for (var c = 0; c < table.Columns.Length; c++)
                {
                    AssertSame(table.Columns[c], row[c], c < read.Length ? read[c] : null);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(CutListCsvWriterTests.HostileNames), MemberType = typeof(CutListCsvWriterTests))]
    public void Any_id_comes_back_the_same_and_as_text(string id)
    {
        var plan = SmallPlan.With(SmallPlan.Plan, "F01", w => w with { Id = id });
        var sheet = Read(CutListWorkbook.Write(FabricationOrder.Everything(plan))).Single(s => s.Name == "by wire");
        var column = Array.IndexOf(sheet.Rows[0], "wire");
        Assert.Contains(sheet.Rows.Skip(1), r => r[column] is string text && text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace("_x000D_", "\r", StringComparison.Ordinal) == id.Replace("\r\n", "\n", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_order_gives_the_same_bytes_and_no_date_is_in_them()
    {
        var order = FabricationOrder.Everything(SmallPlan.Plan);
        var bytes = CutListWorkbook.Write(order);
        Assert.Equal(bytes, CutListWorkbook.Write(order));
        using var zip = new ZipArchive(new MemoryStream(bytes));
        Assert.All(zip.Entries, e => Assert.Equal(1980, e.LastWriteTime.Year));
        Assert.DoesNotContain("dcterms:created", Part(zip, "docProps/core.xml"), StringComparison.Ordinal);
        Assert.Contains("orientation=\"landscape\"", Part(zip, "xl/worksheets/sheet2.xml"), StringComparison.Ordinal);
        Assert.Contains("state=\"frozen\"", Part(zip, "xl/worksheets/sheet2.xml"), StringComparison.Ordinal);
        Assert.Contains("<autoFilter", Part(zip, "xl/worksheets/sheet2.xml"), StringComparison.Ordinal);
        Assert.Contains("_xlnm.Print_Titles", Part(zip, "xl/workbook.xml"), StringComparison.Ordinal);
        Assert.DoesNotContain(zip.Entries, e => e.FullName.Contains("vba", StringComparison.OrdinalIgnoreCase) || e.FullName.Contains("externalLink", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void The_first_sheet_names_build_and_revision()
    {
        var rows = Read(CutListWorkbook.Write(FabricationOrder.Everything(ExamplePlans.Of("brackmere-six"))))[0].Rows;
        Assert.Contains(rows, r => r[0] is "revision" && r[1] is "revision B");
        Assert.Contains(rows, r => r[0] is "build" && r[1] is "everything");
    }

    private static void AssertSame(ListColumn column, ListCell cell, object? read)
    {
        if (column.Kind == CellKind.Number && cell.Number is { } number)
        {
            Assert.Equal(Math.Round(number, column.Decimals, MidpointRounding.AwayFromZero), Convert.ToDouble(read), 9);
        }
        else if (column.Kind == CellKind.Text && !string.IsNullOrEmpty(cell.Text))
        {
            Assert.Equal(cell.Text, Assert.IsType<string>(read));
        }
        else
        {
            Assert.Null(read);
        }
    }

    private static string Part(ZipArchive zip, string name)
    {
        using var reader = new StreamReader(zip.GetEntry(name)!.Open());
        return reader.ReadToEnd();
    }

    private static List<(string Name, List<object?[]> Rows)> Read(byte[] workbook)
    {
        using var reader = ExcelReaderFactory.CreateReader(new MemoryStream(workbook));
        var sheets = new List<(string, List<object?[]>)>();
        do
        {
            var rows = new List<object?[]>();
            while (reader.Read())
            {
                rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetValue)]);
            }

            sheets.Add((reader.Name, rows));
        }
        while (reader.NextResult());
        return sheets;
    }
}
