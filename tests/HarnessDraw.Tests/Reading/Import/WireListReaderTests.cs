using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Fabrication;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Import;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.Imported;
using HarnessDraw.Writing.Lists;
using HarnessDraw.Writing.Workbook;

namespace HarnessDraw.Tests.Reading.Import;

public class WireListReaderTests
{
    [Fact]
    public void A_list_becomes_a_description_that_is_read_and_planned_with_the_same_ids()
    {
        var list = Read("Wire;From;To;Function;Colour;Size;Length\n012;relay.87;horn.1;horn;BN/WH;1.5 mm2;640 mm\n7E05;relay:30;bus bar;horn;RD;16 AWG;2 ft\nNO;relay-85;post;;BK;;\n");
        Assert.Equal(["012", "7E05", "NO"], list.Wires.Select(w => w.Id));
        var files = new MemoryFiles(new Dictionary<string, string>
        {
            ["list.yaml"] = ImportedDescription.Description(list, "list", "list-layout.yaml"),
            ["list-layout.yaml"] = ImportedDescription.Layout(list, "list"),
        });
        var harness = HarnessReader.Read("list.yaml", files);
        Assert.False(harness.Failed, string.Join('\n', harness.Diagnostics));
        var plan = HarnessPlanner.Plan(harness.Value!, new PlanningOptions());
        Assert.Equal(["012", "7E05", "NO"], plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal));
        var horn = plan.WireOf("012");
        Assert.Equal((640.0, "BN/WH", "relay.87", "horn.1"), (horn.CutLengthMm, horn.Colour, horn.From.ToString(), horn.To.ToString()));
        Assert.Equal(609.6, plan.WireOf("7E05").CutLengthMm!.Value, 6);
    }

    [Fact]
    public void Our_own_cut_list_comes_back_with_the_same_ids_from_csv_and_workbook()
    {
        var plan = ExamplePlans.Of("dunmarrow-18");
        var order = FabricationOrder.Everything(plan);
        var csv = Grid(System.Text.Encoding.UTF8.GetString(ListCsvWriter.Write(CutListTables.Of(order, "wire"))));
        var bag = new DiagnosticBag();
        var workbook = WorkbookGridReader.Read("x.xlsx", WorkbookWriter.Write([CutListTables.Of(order, "wire")], ""), bag)!;
        Assert.False(bag.HasErrors);
        foreach (var grid in new[] { csv, workbook })
        {
            var list = WireListReader.Read(grid, ImmutableDictionary<string, string>.Empty).Value!;
            Assert.Empty(list.NotPlaced);
            Assert.Equal(plan.Wires.Select(w => (w.Id, w.CutLengthMm, w.Colour)).Order(), list.Wires.Select(w => (w.Id, w.LengthMm, w.Colour!)).Order());
        }
    }

    [Fact]
    public void Names_of_colours_and_of_things_are_understood_and_no_second_battery_is_invented()
    {
        var list = Read("Wire;From;From pin;To;To pin;Colour;Gauge;Length\n101;Battery;+;Starter;B;Red;50 mm2;1200 mm\n102;Fuse box;F2;Headlamp Left;56b;Yellow/Green;1.5 mm2;3200\n103;Fuse box;F1;Wiper motor;53;light blue;1,5;900 mm\n");
        Assert.Equal(["RD", "YE/GN", "LBU"], list.Wires.Select(w => w.Colour));
        Assert.Equal(["write '3200 mm' if that is meant, or tell it of all rows: --columns \"length mm=(the head of the column)\"", "write '1.5 mm2' if that is meant; decimals have a point"], list.NotPlaced.Select(d => d.Hint));
        var files = new MemoryFiles(new Dictionary<string, string> { ["list.yaml"] = ImportedDescription.Description(list, "list", "list-layout.yaml"), ["list-layout.yaml"] = ImportedDescription.Layout(list, "list") });
        var harness = HarnessReader.Read("list.yaml", files);
        Assert.False(harness.Failed, string.Join('\n', harness.Diagnostics));
        Assert.Equal(["Battery"], harness.Value!.Power.Sources.Select(s => s.Id));
        ThingKind KindOf(string id) => harness.Value!.ThingOf(id).Kind;
        Assert.Equal([ThingKind.Battery, ThingKind.Starter, ThingKind.Lamp, ThingKind.Motor, ThingKind.Load], new[] { "Battery", "Starter", "Headlamp Left", "Wiper motor", "Fuse box" }.Select(KindOf));
        var plan = HarnessPlanner.Plan(harness.Value!, new PlanningOptions());
        Assert.DoesNotContain(HarnessDraw.Checking.HarnessChecker.Check(plan, HarnessDraw.Checking.RuleSettings.BuiltIn), f => f.Rule == "id-not-spreadsheet-safe" || (f.Rule == "floating-net" && f.Where.Contains("101")));
    }

    [Fact]
    public void What_found_no_place_is_said_with_line_and_column_and_left_open()
    {
        var list = Read("wire,from,to,colour,size,length\nW1,a.1,b.1,pinkish,thick,long\nW1,a.2,b.2,,,\nW2,a.3,,,,\n,a.4,b.4,,,\nW3,a.5,a.5,,,\n");
        var wire = Assert.Single(list.Wires);
        Assert.Equal((null, null, null), (wire.Colour, wire.Size, wire.LengthMm));
        Assert.Equal(["2:12", "2:20", "2:26", "3:1", "4:1", "5:1", "6:1"], list.NotPlaced.Select(d => $"{d.At!.Line}:{d.At.Column}"));
        Assert.All(list.NotPlaced, d => Assert.Contains("left o", d.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_column_is_taken_as_told_and_a_missing_one_is_asked_for()
    {
        var grid = Grid("Nr,Links,Rechts\nW1,a.1,b.1\n");
        var asked = WireListReader.Read(grid, ImmutableDictionary<string, string>.Empty);
        Assert.True(asked.Failed);
        Assert.Contains(asked.Diagnostics, d => d.Message == "no column is understood as 'from'" && d.Hint!.Contains("Links", StringComparison.Ordinal));
        var told = ImmutableDictionary<string, string>.Empty.Add("wire", "Nr").Add("from", "Links").Add("to", "Rechts");
        Assert.Equal(new ListedEnd("a", "1"), WireListReader.Read(grid, told).Value!.Wires.Single().From);
        Assert.True(WireListReader.Read(grid, told.SetItem("to", "Right")).Failed);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(400)]
    [InlineData(2500)]
    public void A_damaged_workbook_is_told_and_never_thrown(int length)
    {
        var whole = WorkbookWriter.Write([CutListTables.Of(FabricationOrder.Everything(ExamplePlans.Of("dunmarrow-18")), "wire")], "");
        var bag = new DiagnosticBag();
        Assert.Null(WorkbookGridReader.Read("x.xlsx", whole[..length], bag));
        Assert.Contains("damaged workbook", Assert.Single(bag.ToSorted()).Message, StringComparison.Ordinal);
    }

    private static CellGrid Grid(string csv)
    {
        var bag = new DiagnosticBag();
        var grid = CsvGridReader.Read("list.csv", csv, bag);
        Assert.False(bag.HasErrors, string.Join('\n', bag.ToSorted()));
        return grid!;
    }

    private static WireList Read(string csv)
    {
        var read = WireListReader.Read(Grid(csv), ImmutableDictionary<string, string>.Empty);
        Assert.False(read.Failed, string.Join('\n', read.Diagnostics));
        return read.Value!;
    }
}
