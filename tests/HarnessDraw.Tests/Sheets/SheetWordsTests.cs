using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Sheets.OpeningTemplates;
using HarnessDraw.Sheets.SpliceTables;

namespace HarnessDraw.Tests.Sheets;

public class SheetWordsTests
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void No_name_is_cut_and_no_texts_meet_in_a_fallback_face(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var build in plan.Builds.Take(1).Prepend(null))
        {
            foreach (var units in Enum.GetValues<UnitsShown>())
            {
                var options = new SheetOptions { Units = units, Build = build };
                var sheets = ConnectorSheets.Compose(plan, [], options).Sheets.AddRange(CutListSheets.Compose(plan, [], options).Sheets);
                Assert.Equal([], sheets.SelectMany(ItemWalk.Texts).Where(t => t.Text.Contains('…')).Select(t => t.Text));
                Assert.Equal([], sheets.SelectMany(PlannedWidths.Clashes));
                Assert.Equal([], sheets.SelectMany(ItemWalk.Texts).Where(t => t.Text.Contains('=')).Select(t => t.Text));
            }
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void A_wall_chart_has_no_patches_behind_its_lanes_and_counts_in_words(string name)
    {
        var sheets = SheetKinds.Compose(SheetKinds.WallChart, ExamplePlans.Of(name), [], new()).Sheets;
        Assert.DoesNotContain(sheets.SelectMany(ItemWalk.All).OfType<PathItem>(), p => p is { Role: ItemRole.Backdrop, Tag.Segment: not null, Fill: not null });
        var texts = sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        Assert.DoesNotContain(texts, t => t.Contains(" +", StringComparison.Ordinal));
        Assert.DoesNotContain(texts, t => System.Text.RegularExpressions.Regex.IsMatch(t, "more on chart [0-9]+(,| to)"));
    }

    [Fact]
    public void A_chart_speaks_of_the_bolt_of_a_connector_only_where_there_is_one()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        string Words(Plan of) => string.Join(' ', SheetKinds.Compose(SheetKinds.WallChart, of, [], new()).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text));
        Assert.Contains("Connector bolt: hand tools", Words(plan), StringComparison.Ordinal);
        var latched = plan with { Harness = plan.Harness with { Catalogue = plan.Harness.Catalogue with { Connectors = [.. plan.Harness.Catalogue.Connectors.Select(c => c with { CentreBolt = false })] } } };
        Assert.DoesNotContain("bolt: hand tools", Words(latched), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_connector_sheet_says_what_rings_arcs_and_ticks_are_or_leaves_it_to_the_next(string name)
    {
        var sheets = SheetKinds.Compose(SheetKinds.Connectors, ExamplePlans.Of(name), [], new()).Sheets;
        var told = sheets.Where(s => ItemWalk.Texts(s).Any(t => t.Text.StartsWith("Ring: base colour", StringComparison.Ordinal) || t.Text == "ring: base colour")).ToList();
        Assert.All(sheets.Where(s => s.Title.StartsWith("Small", StringComparison.Ordinal)), s => Assert.Contains(s, told));
        Assert.All(sheets.GroupBy(s => s.Title.Split(',')[0]), g => Assert.Contains(g, told.Contains));
    }

    [Fact]
    public void A_reason_that_holds_for_several_steps_is_told_once()
    {
        var texts = SheetKinds.Compose(SheetKinds.Installation, ExamplePlans.Of("brackmere-six"), [], new()).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        Assert.True(texts.Count(t => t == "as above") > 10);
        Assert.Equal(1, texts.Count(t => t.StartsWith("Slack can still", StringComparison.Ordinal)));
    }

    [Fact]
    public void No_line_begins_with_the_unit_of_a_figure_before_it()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var lines = SpliceSheets.Compose(plan, [], new()).Sheets.AddRange(OpeningTemplateSheets.Compose(plan, [], new()).Sheets)
            .SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        Assert.Contains(lines, l => l.Contains(" mm²", StringComparison.Ordinal));
        Assert.Equal([], lines.Where(l => l.Split(' ')[0].TrimEnd('.', ',', ';', ')') is "mm²" or "mm" or "%" && l is not "mm²"));
    }

    [Fact]
    public void Sheets_are_counted_over_the_whole_set_of_one_ink()
    {
        var colour = CutListSheets.Compose(SmallPlan.Plan, [], new()).Sheets.AddRange(ConnectorSheets.Compose(SmallPlan.Plan, [], new()).Sheets);
        var black = CutListSheets.Compose(SmallPlan.Plan, [], new() { BlackInk = true }).Sheets;
        var filled = SheetCount.Fill([.. colour, .. black]);
        var words = filled.Select(s => ItemWalk.Texts(s).Single(t => t.IsSheetCount).Text);
        Assert.Equal(Enumerable.Range(1, colour.Length).Select(i => $"{i} of {colour.Length}").Concat(Enumerable.Range(1, black.Length).Select(i => $"{i} of {black.Length}")), words);
    }

    [Fact]
    public void What_the_newest_revision_changed_carries_its_letter()
    {
        var drawing = SmallPlan.Plan.Harness.Drawing with { Revisions = [new("A", "2026-01-02", "first", "horn", null), new("B", "2026-02-03", "thicker", "F07, nothing", null)] };
        var plan = SmallPlan.Plan with { Harness = SmallPlan.Plan.Harness with { Drawing = drawing } };
        foreach (var sheets in new[] { CutListSheets.Compose(plan, [], new()).Sheets, ConnectorSheets.Compose(plan, [], new()).Sheets })
        {
            var words = sheets.SelectMany(ItemWalk.Texts).ToList();
            Assert.Contains(words, t => t.Text.Contains("changed in revision B", StringComparison.Ordinal));
            Assert.NotEmpty(Marks(sheets));
            Assert.Equal([], sheets.SelectMany(PlannedWidths.Clashes));
        }

        Assert.Single(Marks(CutListSheets.Compose(plan, [], new()).Sheets));
        Assert.Empty(Marks(CutListSheets.Compose(SmallPlan.Plan, [], new()).Sheets));

        static List<Item> Marks(IEnumerable<Sheet> sheets) =>
            [.. sheets.SelectMany(ItemWalk.All).Where(i => i is PathItem { Stroke.WidthMm: 0.3, Outline.Steps: [PathStep.MoveTo, PathStep.LineTo, PathStep.LineTo, PathStep.Close] })];
    }

    [Fact]
    public void A_long_build_is_named_in_full()
    {
        var block = new TitleBlock { Vehicle = "v", Title = "t", Build = "charging: exciter, cooling: electric fan, fog lamps: no fog lamps, heating: heater, washer: electric washer" };
        var frame = Frame.Compose(PaperSizes.A4Landscape, block, new() { Form = TitleBlockForm.Small });
        var words = string.Join(' ', ItemWalk.Texts(new Sheet("s", "s", PaperSizes.A4Landscape, frame.Items)).Select(t => t.Text));
        Assert.Contains("exciter, electric fan, no fog lamps, heater, electric washer", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Lengths_come_in_the_units_asked_for_and_from_the_exact_value()
    {
        var row = CutRows.ByReel(SmallPlan.Plan)[0];
        Assert.Equal(["cut mm", "route", "allow"], Heads(UnitsShown.Metric));
        Assert.Equal(["cut mm", "in", "route", "allow"], Heads(UnitsShown.Both));
        Assert.Equal(["cut in", "route", "allow"], Heads(UnitsShown.Inch));
        Assert.Equal("12.34 m (40.5 ft)", LengthWords.Sum(12340, 0, UnitsShown.Both));
        Assert.Equal("9.5 mm (0.37 in)", LengthWords.Small(9.5, UnitsShown.Both));
        Assert.Equal(InchLength.RoundedUp(row.ExactMm!.Value), row.CutIn);
        Assert.Equal("1765\u00a0mm (69.5\u00a0in)", LengthWords.Of(1765, UnitsShown.Both));
        Assert.Contains($"({row.CutIn:0.##} in)", LengthWords.Cut(SmallPlan.Plan, row.Wire, UnitsShown.Both), StringComparison.Ordinal);

        static IEnumerable<string> Heads(UnitsShown units) =>
            CutListSheets.Compose(SmallPlan.Plan, [], new() { Units = units }).Sheets.Take(1).SelectMany(ItemWalk.Texts).Select(t => t.Text).Where(t => t is "cut mm" or "cut in" or "in" or "route" or "allow");
    }
}
