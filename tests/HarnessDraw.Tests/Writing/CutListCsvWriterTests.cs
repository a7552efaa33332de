using System.Text;
using HarnessDraw.Planning;
using HarnessDraw.Fabrication;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.CutList;

namespace HarnessDraw.Tests.Writing;

public class CutListCsvWriterTests
{
    public static TheoryData<string> HostileNames =>
    [
        "=cmd|' /C calc'!A0", "+1", "-2", "@x", "\t=1", " =1", "\u200f=1+1", "\uFF1D1", "quote\"d", "two\nlines", "two\r\nlines\r\n=x", "semi;colon", "com,ma", "tab\there",
        "\u202eright to left", "012", "7E05", "1_0", "3-4", "MAR2", "56:30", "NO", "on", "TRUE", "_=x", "__=x", "_plain", "'=x", " two  spaces ", "12345678901234", "1.50", "Ä Ω 配線",
        new string('x', 300),
    ];

    [Theory]
    [MemberData(nameof(HostileNames))]
    public void Any_name_comes_back_the_same_and_never_starts_a_formula(string name)
    {
        var plan = SmallPlan.With(SmallPlan.Plan, "F01", w => w with { Id = name, Circuit = name, From = w.From with { At = name, Pin = name } });
        foreach (var separator in new[] { ',', ';', '\t' })
        {
            var table = Read(plan, new CsvOptions { Separator = separator });
            Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), Column(table, "wire").Select(SpreadsheetText.Unguard).Order(StringComparer.Ordinal));
            Assert.Contains(name, Column(table, "end_a").Select(SpreadsheetText.Unguard));
            Assert.Contains(name, Column(table, "end_a_cavity").Select(SpreadsheetText.Unguard));
            Assert.All(table.Skip(1).SelectMany(r => r), AssertNoFormula);
            Assert.All(table, r => Assert.Equal(table[0].Count, r.Count));
        }
    }

    [Theory]
    [MemberData(nameof(HostileNames))]
    public void Guarding_is_undone_exactly(string name)
    {
        Assert.Equal(name, SpreadsheetText.Unguard(SpreadsheetText.Guard(name)));
        var twice = SpreadsheetText.Guard(SpreadsheetText.Guard(name));
        Assert.Equal(name, SpreadsheetText.Unguard(SpreadsheetText.Unguard(twice)));
    }

    [Theory]
    [InlineData("E07")]
    [InlineData("firewall.B9")]
    [InlineData("YE/BK")]
    [InlineData("16 AWG")]
    [InlineData("56b")]
    [InlineData("87")]
    [InlineData("6.0 mm2 RD/BU")]
    [InlineData("25 mm2 BK")]
    [InlineData("headlamp left")]
    public void Ordinary_names_are_left_alone(string name) => Assert.Equal(name, SpreadsheetText.Guard(name));

    [Fact]
    public void Every_wire_has_one_row_by_reel_and_longest_first()
    {
        var table = Read(SmallPlan.Plan, new());
        Assert.Equal(SmallPlan.Plan.Wires.Length, table.Count - 1);
        var ids = Column(table, "wire");
        Assert.Equal(ids.Count, ids.Distinct().Count());
        var rows = CutRows.ByReel(SmallPlan.Plan);
        foreach (var reel in rows.GroupBy(r => r.Reel))
        {
            Assert.Equal(reel.Select(r => r.Wire.CutLengthMm).OrderDescending(), reel.Select(r => r.Wire.CutLengthMm));
            Assert.Equal(reel.Count(), reel.Last().Number - reel.First().Number + 1);
        }
    }

    [Fact]
    public void Heads_name_their_units_and_no_head_comes_twice()
    {
        Assert.Equal(CutListCsvWriter.Heads.Length, CutListCsvWriter.Heads.Distinct().Count());
        Assert.Contains("cut_mm", CutListCsvWriter.Heads);
        Assert.Contains("cut_in", CutListCsvWriter.Heads);
        Assert.All(CutListCsvWriter.Heads.Where(h => h.Contains("strip", StringComparison.Ordinal) && !h.StartsWith("tick", StringComparison.Ordinal)), h => Assert.EndsWith("_mm", h, StringComparison.Ordinal));
    }

    [Fact]
    public void Inches_come_from_the_exact_length_and_never_fall_short()
    {
        foreach (var row in CutRows.ByReel(SmallPlan.Plan))
        {
            var exactMm = row.Wire.PathLengthMm!.Value + row.AllowanceMm;
            Assert.True(row.CutIn * 25.4 >= exactMm - 0.001, row.Wire.Id);
            Assert.True(row.CutIn * 25.4 < exactMm + (row.CutIn <= 36 ? 6.35 : 12.7), row.Wire.Id);
        }
    }

    [Theory]
    [InlineData(25.4, 1)]
    [InlineData(25.41, 1.25)]
    [InlineData(914.4, 36)]
    [InlineData(914.5, 36.5)]
    [InlineData(1333.5, 52.5)]
    [InlineData(1333.6, 53)]
    public void Inch_steps(double lengthMm, double expectedIn) => Assert.Equal(expectedIn, InchLength.RoundedUp(lengthMm));

    [Fact]
    public void Whatever_a_text_begins_with_it_is_marked_where_a_spreadsheet_would_change_it()
    {
        string[] tails = ["", "0", "7E05", "000000000000", "%", " 3", "/4", "an", "an1", "eb 2", "ov-3", "rue", "alse", "am", "1)"];
        for (var first = '!'; first < '\uFFFF'; first++)
        {
            foreach (var tail in tails)
            {
                if (first != '_' && SpreadsheetText.IsChanged(first + tail))
                {
                    Assert.Equal("_" + first + tail, SpreadsheetText.Guard(first + tail));
                }
            }
        }
    }

    [Fact]
    public void Unknown_lengths_are_empty_cells_and_said_to_be_unknown()
    {
        var plan = SmallPlan.With(SmallPlan.Plan, "F01", w => w with { PathLengthMm = null, CutLengthMm = null, Worst = null, AmpacityA = null, Margin = null });
        var table = Read(plan, new());
        var row = table.Single(r => r[1] == "F01");
        Assert.All(new[] { "cut_mm", "cut_in", "route_mm", "worst_drop_V", "ampacity_A" }, h => Assert.Equal("", row[table[0].IndexOf(h)]));
        Assert.Equal("unknown", row[table[0].IndexOf("length_known")]);
    }

    [Fact]
    public void A_decimal_comma_and_the_mark_come_when_asked()
    {
        var bytes = CutListCsvWriter.Write(SmallPlan.Plan, new() { Separator = ';', DecimalMark = ',', ByteOrderMark = true });
        Assert.Equal(new byte[] { 0xEF, 0xBB, 0xBF }, bytes[..3]);
        var table = SmallCsvReader.Read(Encoding.UTF8.GetString(bytes[3..]), ';');
        Assert.Contains("2,5", Column(table, "size_mm2"));
        Assert.All(Column(table, "size_margin_percent"), c => Assert.DoesNotContain(".", c, StringComparison.Ordinal));
        var commas = Read(SmallPlan.Plan, new() { DecimalMark = ',' });
        Assert.Contains("2,5", Column(commas, "size_mm2"));
    }

    // common practice, no source: whoever crimps a splice looks for its part where other ends have their terminal
    [Fact]
    public void An_end_in_a_splice_has_the_part_that_joins_it()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var table = Read(plan, new());
        string Cell(string wire, string head) => table.Single(r => r[1] == wire)[table[0].IndexOf(head)];
        Assert.NotEmpty(plan.Splices);
        foreach (var splice in plan.Splices)
        {
            foreach (var wire in plan.Wires.Where(w => splice.Wires.Contains(w.Id)))
            {
                Assert.Equal(splice.Part, Cell(wire.Id, wire.From.At == splice.Id ? "end_a_terminal" : "end_b_terminal"));
            }
        }
    }

    [Fact]
    public void A_wire_of_a_cable_tells_its_fellows_and_the_twist()
    {
        var plan = ExamplePlans.Of("aldervane-coach");
        var table = Read(plan, new());
        var cables = CableRows.Of(plan);
        Assert.NotEmpty(cables);
        foreach (var cable in cables)
        {
            Assert.All(cable.Conductors, w => Assert.StartsWith($"cable {cable.Cable.Id}: {string.Join(" + ", cable.Conductors.Select(c => c.Id))} twisted together", table.Single(r => r[1] == w.Id)[table[0].IndexOf("note")], StringComparison.Ordinal));
        }
    }

    private static void AssertNoFormula(string cell)
    {
        var seen = cell.TrimStart(' ', '\t', '\r', '\n', '\u200f', '\u202e');
        Assert.False(seen.Length > 0 && "=+@\uFF1D\uFF0B\uFF20".Contains(seen[0], StringComparison.Ordinal), cell);
        Assert.False(seen.StartsWith('-') && !double.TryParse(seen, out _), cell);
    }

    private static List<List<string>> Read(Plan plan, CsvOptions options) =>
        SmallCsvReader.Read(new UTF8Encoding(false, true).GetString(CutListCsvWriter.Write(plan, options)), options.Separator);

    private static List<string> Column(List<List<string>> table, string head) => [.. table.Skip(1).Select(r => r[table[0].IndexOf(head)])];
}
