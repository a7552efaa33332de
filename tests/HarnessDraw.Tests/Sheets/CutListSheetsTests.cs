using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;
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

    // common practice, no source: an end in a splice tells which splice and which part joins it
    [Theory]
    [MemberData(nameof(Examples))]
    public void An_end_in_a_splice_names_the_splice_and_the_part_that_joins_it(string name)
    {
        var plan = ExamplePlans.Of(name);
        var texts = CutListSheets.Compose(plan, [], new()).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        var ends = plan.Wires.SelectMany(w => new[] { w.From, w.To }).Where(e => e.IsSplice && e.Terminal is null).ToList();
        Assert.All(ends.GroupBy(e => e.At), g => Assert.Equal(g.Count(), texts.Count(t => t == g.Key)));
        var parts = plan.Splices.Select(s => s.Part!).Distinct().Order(StringComparer.Ordinal).ToList();
        Assert.DoesNotContain("splice", texts);
        for (var i = 0; i < parts.Count; i++)
        {
            // once an end, and once in the list of parts
            var ids = plan.Splices.Where(s => s.Part == parts[i]).Select(s => s.Id).ToList();
            Assert.Equal(ends.Count(e => ids.Contains(e.At)) + 1, texts.Count(t => t == $"J{i + 1}"));
            Assert.Contains(parts[i], texts);
        }
    }

    // common practice, no source: the drain of a screen ends at one end only
    [Fact]
    public void A_wire_of_a_cable_names_it_and_the_list_tells_twist_and_drain()
    {
        var plan = ExamplePlans.Of("aldervane-coach");
        var cable = CableRows.Of(plan)[0];
        var screened = plan with
        {
            Harness = plan.Harness with { Circuits = [.. plan.Harness.Circuits.Select(c => c.Id == cable.Circuit ? c with { Cable = c.Cable! with { Screened = true, ScreenGroundedAt = new("vehicle computer", "5") } } : c)] },
        };
        var texts = CutListSheets.Compose(screened, [], new()).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        Assert.Equal(cable.Conductors.Length + 1, texts.Count(t => t == "K1"));
        var pitch = cable.Cable.TwistPitchMm!.Value.ToString(System.Globalization.CultureInfo.InvariantCulture);
        var words = $"{string.Join(" + ", cable.Conductors.Select(w => w.Id))} twisted together, {pitch} mm a turn; screened, drain to vehicle computer 5, at this end only";
        Assert.Contains(words, string.Join(' ', texts).Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    public static TheoryData<string> Examples => ExamplePlans.Names;

    [Fact]
    public void A_harness_without_wires_has_no_cut_list() => Assert.Empty(CutListSheets.Compose(SmallPlan.Plan with { Wires = [] }, [], new()).Sheets);

    private static IEnumerable<string> Ids(IEnumerable<Sheet> sheets) =>
        sheets.SelectMany(ItemWalk.Texts).Where(t => t.Weight == FaceWeight.Bold && t.Tag?.For == t.Text).Select(t => t.Text);
}
