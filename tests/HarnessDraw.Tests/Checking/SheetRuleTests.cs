using HarnessDraw.Checking;
using HarnessDraw.Drawing;

namespace HarnessDraw.Tests.Checking;

public class SheetRuleTests
{
    private const string Caution = "BATTERY DISCONNECTED while you work.";

    [Fact]
    public void Small_text_is_found_with_its_size_also_inside_a_scaled_group()
    {
        var found = SheetRules.Check(SmallPlan.Plan, [Sheet(new GroupItem([new TextItem("E05", new(0, 0), 3)]) { Scale = 0.8 }, Text(Caution, 2.5))]);
        Assert.Equal("cut-list on A4: 1 text under 2.5 mm capitals, down to 2.4 mm ('E05').", Assert.Single(found).Message);
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
        Assert.Empty(SheetRules.Check(SmallPlan.Plan, [Sheet(Text(Caution, 3), Text("NOT FOR BUILD", 7))], hasErrors: true));
    }

    private static TextItem Text(string text, double capMm) => new(text, new(0, 0), capMm);

    private static Sheet Sheet(params Item[] items) => new("cut-list", "Cut list", new("A4", 297, 210), [.. items]);
}
