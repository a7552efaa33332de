using System.Globalization;
using System.Text;
using ExcelDataReader;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.CutList;
using HarnessDraw.Writing.Lists;
using HarnessDraw.Writing.Workbook;

namespace HarnessDraw.Tests.Writing;

/// <summary>Cut lists and workbooks as LibreOffice takes them in with its usual settings, which guess what a cell is.</summary>
public class SpreadsheetProgramTests
{
    static SpreadsheetProgramTests() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    [Fact]
    public void A_cut_list_as_CSV_keeps_every_text()
    {
        var office = OutsideTool.Find("soffice", "libreoffice");
        var tables = new Dictionary<string, ListTable>(StringComparer.Ordinal);
        var folder = Directory.CreateTempSubdirectory("harnessdraw-office-").FullName;
        foreach (var (name, plan) in Plans())
        {
            tables[name] = CutListTables.Of(FabricationOrder.Everything(plan), "wire");
            File.WriteAllBytes(Path.Combine(folder, name + ".csv"), ListCsvWriter.Write(tables[name]));
        }

        Convert(office, folder, "xlsx:Calc MS Excel 2007 XML", [.. tables.Keys.Select(n => n + ".csv")]);
        foreach (var (name, table) in tables)
        {
            using var reader = ExcelReaderFactory.CreateReader(File.OpenRead(Path.Combine(folder, name + ".xlsx")));
            Assert.True(reader.Read());
            Assert.Equal(table.Heads, Enumerable.Range(0, reader.FieldCount).Select(reader.GetString));
            foreach (var row in table.Rows)
            {
                Assert.True(reader.Read(), $"{name} has fewer rows than were written");
                for (var c = 0; c < table.Columns.Length; c++)
                {
                    if (table.Columns[c].Kind == CellKind.Text && row[c].Text is { Length: > 0 } text)
                    {
                        // a plain whole number such as a cavity 87 may become a number: it reads the same
                        var seen = reader.GetValue(c) is double number ? number.ToString("R", CultureInfo.InvariantCulture) : reader.GetValue(c) as string;
                        Assert.Equal(Lines(text), Lines(SpreadsheetText.Unguard(seen ?? "")));
                    }
                }
            }

            Assert.False(reader.Read());
        }
    }

    [Fact]
    public void The_workbook_opens_and_its_ids_stay_text()
    {
        var office = OutsideTool.Find("soffice", "libreoffice");
        var plan = SmallPlan.With(SmallPlan.Plan, "F01", w => w with { Id = "7E05" });
        var folder = Directory.CreateTempSubdirectory("harnessdraw-office-").FullName;
        File.WriteAllBytes(Path.Combine(folder, "list.xlsx"), CutListWorkbook.Write(FabricationOrder.Everything(plan)));
        // comma, quotes, UTF-8, from row 1, cells as shown, every sheet
        Convert(office, folder, "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1", "list.xlsx");
        var rows = SmallCsvReader.Read(File.ReadAllText(Path.Combine(folder, "list-by wire.csv")).ReplaceLineEndings("\r\n"), ',');
        var column = rows[0].IndexOf("wire");
        Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), rows.Skip(1).Select(r => r[column]).Order(StringComparer.Ordinal));
    }

    private static IEnumerable<(string Name, Plan Plan)> Plans()
    {
        foreach (var name in ExamplePlans.Names)
        {
            yield return (name.Data, ExamplePlans.Of(name.Data));
        }

        var ids = CutListCsvWriterTests.HostileNames.Select(n => n.Data).ToArray();
        var wires = SmallPlan.Plan.Wires;
        yield return ("hostile", SmallPlan.Plan with { Wires = [.. ids.Select((id, i) => wires[i % wires.Length] with { Id = id, Circuit = id, From = wires[i % wires.Length].From with { At = id, Pin = id } })], Splices = [], Cavities = [] });
    }

    // a spreadsheet has one kind of line end inside a cell
    private static string Lines(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace("_x000D_", "", StringComparison.Ordinal);

    // read as UTF-8 with commas and quotes: the one thing that is told
    private static void Convert(string office, string folder, string to, params string[] files) =>
        OutsideTool.Run(office, folder, [$"-env:UserInstallation=file://{folder}/profile", "--headless", "--infilter=CSV:44,34,76,1", "--convert-to", to, "--outdir", folder, .. files]);
}
