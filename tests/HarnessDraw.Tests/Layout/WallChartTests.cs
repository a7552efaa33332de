using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Layout;

public class WallChartTests
{
    public static TheoryData<int, int, bool> Cases()
    {
        var cases = new TheoryData<int, int, bool>();
        foreach (var (circuits, step) in ((int, int)[])[(12, 1), (30, 1), (60, 4), (150, 20)])
        {
            for (var seed = 1; seed <= 40; seed += step)
            {
                cases.Add(seed, circuits, seed % 2 == 0);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_random_harness_is_drawn_without_overlap_and_with_the_crossings_foretold(int seed, int circuits, bool planned)
    {
        var plan = RandomHarness.Plan(seed, new(circuits) { PlannedPins = planned, Firewall = seed % 5 != 0 });
        var result = WallChart.Compose(plan, [], new SheetOptions());
        if (result.Refused is not null)
        {
            Assert.True(circuits > 30, result.Refused);
            Assert.Contains("would fit", result.Refused, StringComparison.Ordinal);
            return;
        }

        var sheet = Assert.Single(result.Sheets);
        Assert.Empty(SheetChecker.Check(sheet).Take(10).Select(f => f.ToString()));
        Assert.Equal(result.Figures!.Crossings, LaneMeeting.Crossings(sheet).Values.Sum());
        Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), DrawnWires(sheet.Items).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData(12)]
    [InlineData(30)]
    public void Wires_without_splices_cross_as_often_as_the_bound_and_no_pair_twice(int circuits)
    {
        for (var seed = 1; seed <= 12; seed++)
        {
            var plan = RandomHarness.Plan(seed, new(circuits) { SpliceShare = 0, Grounds = false, LoadToLoad = false });
            var result = WallChart.Compose(plan, [], new SheetOptions());
            Assert.Null(result.Refused);
            Assert.Equal(result.Figures!.CrossingsLowerBound, result.Figures.Crossings);
            Assert.Equal(result.Figures.CrossingsStraightLaneBound, result.Figures.Crossings);
            Assert.DoesNotContain(LaneMeeting.Crossings(result.Sheets[0]), m => m.Value > 1);
        }
    }

    [Fact]
    public void With_splices_before_their_legs_no_pair_crosses_twice()
    {
        for (var seed = 1; seed <= 20; seed++)
        {
            var plan = RandomHarness.Plan(seed, new(30) { SplicesBeforeLegs = true, Grounds = false, LoadToLoad = false, PlannedPins = seed % 2 == 0 });
            var result = WallChart.Compose(plan, [], new SheetOptions());
            Assert.Null(result.Refused);
            Assert.True(result.Figures!.CrossingsLowerBound <= result.Figures.Crossings);
            Assert.DoesNotContain(LaneMeeting.Crossings(result.Sheets[0]), m => m.Value > 1);
        }
    }

    [Fact]
    public void The_same_plan_gives_the_same_sheet()
    {
        var plan = RandomHarness.Plan(3, new(30));
        var (a, b) = (WallChart.Compose(plan, [], new SheetOptions()), WallChart.Compose(plan, [], new SheetOptions()));
        Assert.Equal(global::HarnessDraw.Writing.Svg.SvgWriter.Write(a.Sheets[0]), global::HarnessDraw.Writing.Svg.SvgWriter.Write(b.Sheets[0]));
    }

    [Fact]
    public void Too_small_a_paper_is_refused_with_what_would_fit()
    {
        var result = WallChart.Compose(RandomHarness.Plan(1, new(60)), [], new SheetOptions { Paper = PaperSizes.A3 });
        Assert.Empty(result.Sheets);
        Assert.Matches("more than A3 holds.*(A1|A0|2A0) would fit", result.Refused!);
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_branch_that_wires_reach_has_its_flag(string example)
    {
        var plan = ExamplePlans.Of(example);
        var reached = plan.Tree.Segments.Where(s => !s.Wires.IsEmpty).SelectMany(s => (string[])[s.From, s.To]).ToHashSet(StringComparer.Ordinal);
        var named = plan.Harness.Layout.Places.Where(p => p.Branch is not null && reached.Contains(p.Id)).Select(p => p.Branch!.ToUpperInvariant());
        var sheet = WallChart.Compose(plan, [], new SheetOptions()).Sheets[0];
        var flags = ItemWalk.Texts(sheet).Where(t => t.CapHeightMm == 7).Select(t => t.Text).ToHashSet(StringComparer.Ordinal);
        Assert.All(named, name => Assert.Contains(name, flags));
    }

    private static IEnumerable<string> DrawnWires(IEnumerable<Item> items) =>
        items.SelectMany(i => i is GroupItem g ? DrawnWires(g.Items) : i is PathItem { Role: ItemRole.Lane } p ? [p.Tag!.Wire!] : (IEnumerable<string>)[]);
}
