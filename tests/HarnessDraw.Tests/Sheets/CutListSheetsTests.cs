using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;

namespace HarnessDraw.Tests.Sheets;

public class CutListSheetsTests
{
    [Fact]
    public void Every_wire_stands_in_the_list_once()
    {
        var sheets = CutListSheets.Compose(SmallPlan.Plan, [], new()).Sheets;
        SheetPictures.Put("small", sheets);
        SheetPictures.Put("small", CutListSheets.Compose(SmallPlan.Plan, [], new() { BlackInk = true }).Sheets);
        Assert.Equal(SmallPlan.Plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), Ids(sheets).Order(StringComparer.Ordinal));
        Assert.All(sheets, s => Assert.Empty(SheetChecker.Check(s)));
    }

    [Fact]
    public void A_build_lists_only_its_own_wires()
    {
        var single = SmallPlan.Plan.Builds[1];
        var ids = Ids(CutListSheets.Compose(SmallPlan.Plan, [], new() { Build = single }).Sheets).ToList();
        Assert.DoesNotContain(SmallPlan.Plan.Wires.Single(w => w.Circuit == "exciter").Id, ids);
        Assert.Equal(SmallPlan.Plan.Wires.Length - 1, ids.Count);
    }

    [Theory]
    [InlineData("Letter landscape")]
    [InlineData("A3")]
    public void Other_papers_hold_the_same_rows(string paper)
    {
        var sheets = CutListSheets.Compose(SmallPlan.Plan, [], new() { Paper = PaperSizes.Find(paper), Units = UnitsShown.Inch }).Sheets;
        SheetPictures.Put($"small-{paper}", sheets);
        Assert.Equal(SmallPlan.Plan.Wires.Length, Ids(sheets).Count());
        Assert.All(sheets, s => Assert.Empty(SheetChecker.Check(s)));
    }

    [Fact]
    public void Long_and_hostile_names_estimates_and_blanks_keep_apart()
    {
        var name = "coolant \"<script>\" \u202e & " + new string('W', 300);
        var plan = SmallPlan.With(SmallPlan.Plan, "F01", w => w with { PathLengthMm = null, CutLengthMm = null, From = w.From with { At = name } });
        plan = SmallPlan.With(plan, "E01", w => w with { Estimated = true, To = w.To with { At = name, Pin = "a pin of quite some length" } });
        plan = SmallPlan.With(plan, "F08", w => w with { Id = name, Builds = new BuildCondition([new(name, [name])]) });
        var sheets = CutListSheets.Compose(plan, [new Finding { Rule = "r", Severity = HarnessDraw.Diagnostics.Severity.Error, Message = "m" }], new()).Sheets;
        SheetPictures.Put("hostile", sheets);
        Assert.All(sheets, s => Assert.Empty(SheetChecker.Check(s)));
        Assert.Contains(sheets.SelectMany(ItemWalk.Texts), t => t.Text == "E");
        Assert.Contains(sheets.SelectMany(ItemWalk.Texts), t => t.Text == "NOT FOR BUILD");
        Assert.DoesNotContain(sheets.SelectMany(ItemWalk.Texts), t => t.Text is "0" or "NaN");
    }

    [Fact]
    public void A_harness_without_wires_has_no_cut_list() => Assert.Empty(CutListSheets.Compose(SmallPlan.Plan with { Wires = [] }, [], new()).Sheets);

    private static IEnumerable<string> Ids(IEnumerable<Sheet> sheets) =>
        sheets.SelectMany(ItemWalk.Texts).Where(t => t.Weight == FaceWeight.Bold && t.Tag?.For == t.Text).Select(t => t.Text);
}
