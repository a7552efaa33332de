using HarnessDraw.Checking;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Checking;

public class SheetRuleTests
{
    private const string Caution = "BATTERY DISCONNECTED while you work.";

    [Fact]
    public void Small_text_is_found_with_its_size_also_inside_a_scaled_group()
    {
        var found = SheetRules.Check(SmallPlan.Plan, [Sheet(new GroupItem([new TextItem("E05", new(20, 20), 3)]) { Scale = 0.8 }, Text(Caution, 2.5))]);
        Assert.Equal("survey on A4: 1 text under 2.5 mm capitals, down to 2.4 mm ('E05').", Assert.Single(found).Message);
    }

    // NUREG-0700 as quoted: 16 minutes of arc, 7 mm at 1.5 m
    [Fact]
    public void What_is_read_from_afar_is_held_to_its_angle()
    {
        TextItem Flag(double capMm) => new("COWL", new(20, 60), capMm) { ReadFromM = 1.5 };
        Assert.Equal("survey on A4: 1 text to be read from 1.5 m under 7 mm capitals, down to 6.9 mm ('COWL').", Assert.Single(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 2.5), Flag(6.9))])).Message);
        Assert.Empty(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 2.5), Flag(7))]));
    }

    [Fact]
    public void A_sheet_with_its_caution_and_readable_text_is_left_alone() =>
        Assert.Empty(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 2.5))]));

    [Fact]
    public void A_sheet_without_the_caution_is_an_error() =>
        Assert.Equal("caution-missing", Assert.Single(SheetRules.Check(SmallPlan.Plan, [Sheet(Text("E05", 3))])).Rule);

    [Fact]
    public void A_plan_with_errors_needs_the_mark_on_every_sheet()
    {
        Assert.Equal("not-for-build-missing", Assert.Single(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 3))], hasErrors: true)).Rule);
        Assert.Empty(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 3), Text("NOT FOR BUILD", 7, 60))], hasErrors: true));
    }

    [Fact]
    public void Texts_over_each_other_or_beyond_the_paper_are_found_also_in_moved_groups()
    {
        var moved = new GroupItem([new TextItem("F12", new(0, 0), 3)]) { MoveXMm = 51, MoveYMm = 60 };
        var found = SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 2.5), new TextItem("E05", new(50, 60), 3), moved)]);
        Assert.Equal("survey on A4: 1 pair of texts over each other, first 'E05' and 'F12'.", Assert.Single(found).Message);
        Assert.Equal("labels-overlap", Assert.Single(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 2.5), new TextItem("E05", new(294, 60), 3))])).Rule);
        Assert.Empty(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 2.5), new TextItem("E05", new(50, 60), 3), moved with { MoveYMm = 70 })]));
    }

    [Fact]
    public void A_pale_wire_needs_its_outline()
    {
        var line = Outline.Line(20, 20, 80, 20);
        var bare = new PathItem(line) { Role = ItemRole.Lane, Stroke = new(Rgb.Hex("#FFE100"), 1), Tag = new() { Wire = "F01" } };
        Assert.Equal("line-too-pale", Assert.Single(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 2.5), bare)])).Rule);
        Assert.Empty(SheetRules.Check(SmallPlan.Plan, [Sheet([Text(Caution, 2.5), .. LanePainter.Paint(line, new LaneStyle(WireColour.Parse("YE")))])]));
        Assert.Empty(SheetRules.Check(SmallPlan.Plan, [Sheet([Text(Caution, 2.5), .. LanePainter.Paint(line, new LaneStyle(WireColour.Parse("WH")))])]));
    }

    /// <summary>Turquoise and grey are near to a protan eye, turquoise and red are not; what lies farther off or runs beside for less than 30 mm is no neighbour.</summary>
    [Theory]
    [InlineData("TQ", "GY", 1.6, 80, true)]
    [InlineData("TQ", "RD", 1.6, 80, false)]
    [InlineData("TQ", "TQ", 1.6, 80, false)]
    [InlineData("TQ", "GY", 3.2, 80, false)]
    [InlineData("TQ", "GY", 1.6, 25, false)]
    public void Wires_side_by_side_that_look_alike_are_told(string first, string second, double apart, double length, bool isTold)
    {
        var plan = SmallPlan.Plan with { Wires = [.. SmallPlan.Plan.Wires.Take(2).Select((w, i) => w with { Colour = i == 0 ? first : second })] };
        var lanes = plan.Wires.SelectMany((w, i) => LanePainter.Paint(Outline.Line(20, 20 + (i * apart), 20 + length, 20 + (i * apart)), new LaneStyle(WireColour.Parse(w.Colour)), new Tag { Wire = w.Id }));
        Item[] caution = [Text(Caution, 2.5, 60)];
        Assert.Equal(isTold ? ["neighbours-look-alike"] : [], SheetRules.Check(plan, [Sheet([.. caution, .. lanes]) with { Name = "wall-chart" }]).Select(f => f.Rule));
    }

    [Fact]
    public void A_sheet_that_is_measured_from_needs_four_true_bars()
    {
        Item[] items = [Text(Caution, 2.5), Text("Eye protection. Look behind the panel.", 2.5, 40), new PathItem(Outline.Line(20, 100, 90, 100)) { Tag = new() { Title = "cut line of firewall" } }];
        Sheet Template(params Item[] bars) => Sheet([.. items, .. bars]) with { Name = "opening-template" };
        Item Bar(string title, double width, double height) => new PathItem(Outline.Rectangle(new(20, 120, width, height))) { Fill = Ink.Black, Tag = new() { Title = title } };
        Item[] bars = [Bar("check bar 100 mm, level", 100, 1.6), Bar("check bar 4 in, level", 101.6, 1.6), Bar("check bar 100 mm, upright", 1.6, 100), Bar("check bar 4 in, upright", 1.6, 101.6)];
        Assert.Empty(SheetRules.Check(SmallPlan.Plan, [Template(bars)]));
        Assert.Equal("opening-template is to be measured from and has no check bar 100 mm, upright.", Assert.Single(SheetRules.Check(SmallPlan.Plan, [Template([bars[0], bars[1], bars[3]])])).Message);
        Assert.Equal("check-bar-missing", Assert.Single(SheetRules.Check(SmallPlan.Plan, [Template([Bar("check bar 100 mm, level", 97, 1.6), .. bars[1..]])])).Rule);
    }

    [Fact]
    public void A_sheet_lacks_a_caution_of_its_own_by_name()
    {
        var found = SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 2.5)) with { Name = "bench-test" }]);
        Assert.Equal(["bench-test lacks its caution '500 V'.", "bench-test lacks its caution 'unplugged'."], found.Select(f => f.Message).Order(StringComparer.Ordinal));
    }

    private static TextItem Text(string text, double capMm, double y = 30) => new(text, new(20, y), capMm);

    private static Sheet Sheet(params Item[] items) => new("survey", "Survey", new("A4", 297, 210), [.. items]);

    /// <summary>A wide table of a connector gets pages of its own: they say as well which side is looked at.</summary>
    [Fact]
    public void A_table_of_a_connector_on_a_page_of_its_own_has_its_caution()
    {
        var saloon = ExamplePlans.Of("brackmere-six");
        var plan = saloon with { Wires = [.. saloon.Wires.Select(w => w with { SizeLabel = "16 AWG of old" })] };
        var sheets = SheetKinds.Compose("connectors", plan, [], new()).Sheets;
        Assert.Contains(sheets, s => s.Title.Contains(", table", StringComparison.Ordinal));
        Assert.DoesNotContain(SheetRules.Check(plan, sheets), f => f.Rule == "caution-missing");
    }
}
