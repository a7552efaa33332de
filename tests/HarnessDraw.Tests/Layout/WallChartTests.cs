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
        Assert.Null(result.Refused);
        Assert.True(circuits > 30 || result.Sheets.Length == 1);
        Assert.All(result.Sheets, s => Assert.Empty(SheetChecker.Check(s).Take(10).Select(f => f.ToString())));
        Assert.Equal(result.Figures!.Crossings, result.Sheets.Sum(s => LaneMeeting.Crossings(s).Values.Sum()));
        Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), result.Sheets.SelectMany(s => DrawnWires(s.Items)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_long_name_leaves_the_head_of_the_connector_s_views_whole()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        const string Name = "connector through the bulkhead of the engine bay";
        var named = plan with { Harness = plan.Harness with { Things = [.. plan.Harness.Things.Select(t => t.Id == "firewall" ? t with { Label = Name } : t)] } };
        var sheet = WallChart.Compose(named, [], new SheetOptions { Paper = PaperSizes.A0 }).Sheets.Single();
        var texts = ItemWalk.Texts(sheet).Select(t => t.Text).ToList();
        Assert.Contains($"{Name}, both views of the bay half".ToUpperInvariant(), string.Join(' ', texts), StringComparison.Ordinal);
        Assert.Empty(SheetChecker.Check(sheet));
    }

    [Fact]
    public void The_legend_says_what_a_crossing_is_where_lanes_cross()
    {
        const string Words = "crossing, no join";
        var crossed = WallChart.Compose(ExamplePlans.Of("brackmere-six"), [], new SheetOptions { Paper = PaperSizes.A0 });
        Assert.NotEqual(0, crossed.Figures!.Crossings);
        Assert.Contains(crossed.Sheets.SelectMany(ItemWalk.Texts), t => t.Text == Words);
        var plain = Enumerable.Range(1, 40).Select(seed => WallChart.Compose(RandomHarness.Plan(seed, new(3)), [], new SheetOptions { Paper = PaperSizes.A0 })).First(r => r.Figures?.Crossings == 0);
        Assert.DoesNotContain(plain.Sheets.SelectMany(ItemWalk.Texts), t => t.Text == Words);
    }

    /// <summary>Seeds at which the long run (`layouts` of the benchmarks) once found a fault.</summary>
    [Theory]
    [InlineData(60, 35)]
    [InlineData(12, 56)]
    [InlineData(30, 3)]
    [InlineData(30, 38)]
    [InlineData(30, 49)]
    [InlineData(60, 19)]
    [InlineData(60, 62)]
    [InlineData(60, 67)]
    [InlineData(60, 13)]
    [InlineData(60, 74)]
    [InlineData(150, 2)]
    [InlineData(150, 26)]
    public void What_the_long_run_found_stays_mended(int circuits, int seed)
    {
        var result = WallChart.Compose(RandomHarness.OfLongRun(seed, circuits), [], new SheetOptions());
        Assert.Null(result.Refused);
        Assert.All(result.Sheets, s => Assert.Empty(SheetChecker.Check(s).Take(10).Select(f => f.ToString())));
        Assert.Equal(result.Figures!.Crossings, result.Sheets.Sum(s => LaneMeeting.Crossings(s).Values.Sum()));
        Assert.DoesNotContain(result.Sheets.SelectMany(LaneMeeting.Crossings), m => m.Value > 1);
    }

    /// <summary>A stretch of the vehicle that bears few circuits a chart does not thin out the charts behind it: the most are those that other seeds of the size take.</summary>
    [Theory]
    [InlineData(150, 22, 11)]
    [InlineData(500, 5, 31)]
    [InlineData(500, 9, 31)]
    public void One_crowded_stretch_does_not_make_many_charts(int circuits, int seed, int most)
    {
        var sheets = WallChart.Compose(RandomHarness.OfLongRun(seed, circuits), [], new SheetOptions()).Sheets;
        Assert.InRange(sheets.Length, 2, most);
    }

    /// <summary>Were all charts listed on each, there would be no room for the wires of 2000 circuits.</summary>
    [Fact]
    public void Of_very_many_charts_the_first_lists_all_and_the_others_say_so()
    {
        const string Says = "All charts are listed on chart 1.";
        var result = WallChart.Compose(RandomHarness.OfLongRun(9, 500), [], new SheetOptions { Paper = PaperSizes.A2, SeveralCharts = true });
        Assert.Null(result.Refused);
        Assert.InRange(result.Sheets.Length, 25, 150);
        Assert.DoesNotContain(ItemWalk.Texts(result.Sheets[0]), t => t.Text == Says);
        Assert.All(result.Sheets.Skip(1), s => Assert.Contains(ItemWalk.Texts(s), t => t.Text == Says));
        Assert.All(result.Sheets.Take(8), s => Assert.Empty(SheetChecker.Check(s).Take(10).Select(f => f.ToString())));
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
            BoundsAreBelow(result.Figures!);
            Assert.DoesNotContain(LaneMeeting.Crossings(result.Sheets[0]), m => m.Value > 1);
        }
    }

    [Fact]
    public void With_legs_that_come_back_no_pair_crosses_twice_and_the_bounds_hold()
    {
        for (var seed = 1; seed <= 40; seed++)
        {
            var plan = RandomHarness.Plan(seed, new(seed % 2 == 0 ? 12 : 30) { SpliceShare = 0.3, Grounds = false, LoadToLoad = false, PlannedPins = seed % 4 < 2 });
            var result = WallChart.Compose(plan, [], new SheetOptions());
            Assert.Null(result.Refused);
            BoundsAreBelow(result.Figures!);
            Assert.DoesNotContain(result.Sheets.SelectMany(LaneMeeting.Crossings), m => m.Value > 1);
        }
    }

    private static void BoundsAreBelow(ChartFigures figures)
    {
        Assert.NotNull(figures.CrossingsLowerBound);
        Assert.NotNull(figures.CrossingsStraightLaneBound);
        Assert.InRange(figures.CrossingsStraightLaneBound.Value, figures.CrossingsLowerBound.Value, figures.Crossings);
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
        var result = WallChart.Compose(RandomHarness.Plan(1, new(60)), [], new SheetOptions { Paper = PaperSizes.A2 });
        Assert.Empty(result.Sheets);
        Assert.Matches(@"does not fit A2 .* takes [0-9]+ x [0-9]+ mm on (A1|A0|2A0)\); \1 would fit \(--paper '\1' --tile A4 prints it on A4 pages to be joined\), or [0-9]+ charts on A2 would fit", result.Refused!);
    }

    [Theory]
    [InlineData(1, 60, "A2")]
    [InlineData(2, 150, "A1")]
    [InlineData(5, 60, "A1")]
    public void On_paper_too_small_for_one_chart_every_circuit_is_whole_on_one_of_several(int seed, int circuits, string paper)
    {
        var plan = RandomHarness.Plan(seed, new(circuits) { Firewall = seed % 5 != 0 });
        var result = WallChart.Compose(plan, [], new SheetOptions { Paper = PaperSizes.Find(paper), SeveralCharts = true });
        Assert.Null(result.Refused);
        Assert.True(result.Sheets.Length > 1);
        Assert.Equal(Enumerable.Range(1, result.Sheets.Length), result.Sheets.Select(s => s.Number!.Value));
        var circuitOf = plan.Wires.ToDictionary(w => w.Id, w => w.Circuit, StringComparer.Ordinal);
        var shown = result.Sheets.Select(s => DrawnWires(s.Items).ToList()).ToList();
        Assert.Equal(plan.Wires.Length, shown.Sum(w => w.Count));
        foreach (var circuit in plan.Wires.GroupBy(w => w.Circuit))
        {
            Assert.Single(shown, wires => wires.Exists(w => circuitOf[w] == circuit.Key));
        }

        foreach (var (sheet, wires) in result.Sheets.Zip(shown))
        {
            Assert.Empty(SheetChecker.Check(sheet).Take(10).Select(f => f.ToString()));
            Assert.Equal(paper, sheet.Paper.Name);
            ToldElsewhere(plan, sheet, wires);
        }
    }

    // what the cards say of other charts is what the plan has beyond this one
    private static void ToldElsewhere(HarnessDraw.Planning.Plan plan, Sheet sheet, List<string> wires)
    {
        var here = wires.ToHashSet(StringComparer.Ordinal);
        var things = plan.Harness.Things.ToDictionary(t => t.Id, StringComparer.Ordinal);
        var ends = plan.Wires.SelectMany(w => (HarnessDraw.Planning.WireEnd[])[w.From, w.To], (w, e) => (w.Id, e.At, Far: e == w.From ? w.To.At : w.From.At))
            .Where(e => e.At.StartsWith("load", StringComparison.Ordinal) && !IsGroundAtLoad(e.At, e.Far)).ToLookup(e => e.At);
        var beyond = ends.Where(l => l.Any(e => here.Contains(e.Id))).Sum(l => l.Count(e => !here.Contains(e.Id)));
        var told = ItemWalk.Texts(sheet).Select(t => System.Text.RegularExpressions.Regex.Match(t.Text, "^([0-9]+) more on chart")).Where(m => m.Success).Sum(m => int.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(beyond, told);

        // a ground point at the load's own place has no card of its own for that wire
        bool IsGroundAtLoad(string ground, string load) => things[ground].Kind == HarnessDraw.Model.ThingKind.GroundPoint
            && things.TryGetValue(load, out var at) && at.Kind == HarnessDraw.Model.ThingKind.Load && at.Place == things[ground].Place;
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_branch_that_wires_reach_has_its_flag(string example)
    {
        var plan = ExamplePlans.Of(example);
        var reached = plan.Tree.Segments.Where(s => !s.Wires.IsEmpty).SelectMany(s => (string[])[s.From, s.To]).ToHashSet(StringComparer.Ordinal);
        var named = plan.Harness.Layout.Places.Where(p => p.Branch is not null && reached.Contains(p.Id)).Select(p => p.Branch!.ToUpperInvariant());
        var sheets = WallChart.Compose(plan, [], new SheetOptions()).Sheets;
        var flags = sheets.SelectMany(ItemWalk.Texts).Where(t => t.CapHeightMm == 7).Select(t => t.Text).ToHashSet(StringComparer.Ordinal);
        Assert.All(named, name => Assert.Contains(name, flags));
    }

    /// <summary>Each example on the smallest paper that a reader could draw it on by hand: a chart that asks for more has empty paper in its middle.</summary>
    [Theory]
    [InlineData("brackmere-six", "A1")]
    [InlineData("dunmarrow-18", "A2")]
    [InlineData("aldervane-coach", "A0", "A0", "A0")]
    public void An_example_needs_no_more_paper_than_it_should(string example, params string[] papers) =>
        Assert.Equal(papers, WallChart.Compose(ExamplePlans.Of(example), [], new SheetOptions()).Sheets.Select(s => s.Paper.Name));

    /// <summary>
    /// Front is front and left is left: Kendall's tau over the loads of each harness; 0.85 on both axes is wanted (common practice, no source). Held with pairs that are level
    /// left out, and, lower, with all.
    /// </summary>
    [Theory]
    [InlineData(12, 0.97, 0.97, 0.97, 0.95)]
    [InlineData(30, 0.92, 0.95, 0.85, 0.85)]
    [InlineData(60, 0.87, 0.9, 0.8, 0.8)]
    public void Loads_are_drawn_in_the_order_in_which_they_sit(int circuits, double along, double across, double allAlong, double allAcross)
    {
        var drawn = Enumerable.Range(1, 18).Select(seed => RandomHarness.OfLongRun(seed, circuits)).Select(plan => (Plan: plan, WallChart.Compose(plan, [], new SheetOptions()).Sheets)).ToList();
        foreach (var (levelMm, x, y) in new[] { (DrawnPlaces.LevelMm, along, across), (0, allAlong, allAcross) })
        {
            var taus = drawn.Select(d => DrawnPlaces.Tau(d.Plan, d.Sheets, levelMm)).OfType<(double Along, double Across)>().ToList();
            Assert.InRange(taus.Average(t => t.Along), x, 1);
            Assert.InRange(taus.Average(t => t.Across), y, 1);
        }
    }

    /// <summary>0.8 is wanted (common practice, no source).</summary>
    [Theory]
    [InlineData("brackmere-six", 0.8, 0.8)]
    [InlineData("dunmarrow-18", 0.85, 0.85)]
    [InlineData("aldervane-coach", 0.8, 0.8)]
    public void Loads_of_an_example_are_drawn_in_the_order_in_which_they_sit(string example, double along, double across)
    {
        var plan = ExamplePlans.Of(example);
        var tau = DrawnPlaces.Tau(plan, WallChart.Compose(plan, [], new SheetOptions()).Sheets)!.Value;
        Assert.InRange(tau.Along, along, 1);
        Assert.InRange(tau.Across, across, 1);
    }

    [Fact]
    public void On_the_saloon_what_sits_in_the_right_wing_is_drawn_above_what_sits_in_the_left()
    {
        const double WingMm = 500;
        var plan = ExamplePlans.Of("brackmere-six");
        var loads = WallChart.Compose(plan, [], new SheetOptions()).Sheets.SelectMany(s => DrawnPlaces.Loads(plan, s)).ToList();
        var (right, left) = (loads.Where(l => l.True.Y < -WingMm).ToList(), loads.Where(l => l.True.Y > WingMm).ToList());
        Assert.True(right.Count > 5 && left.Count > 5);
        Assert.True(right.Max(l => l.Drawn.Y) < left.Min(l => l.Drawn.Y));
    }

    [Fact]
    public void Of_places_in_the_middle_of_the_vehicle_as_many_stand_above_the_trunk_as_below()
    {
        var plan = GrowingHarness.Plan(36);
        var sheet = Assert.Single(WallChart.Compose(plan, [], new SheetOptions()).Sheets);
        // the trunk lies where the longest straight pieces of lanes do
        var pieces = DrawnPlaces.Lanes(sheet.Items).Select(DrawnPlaces.Points).SelectMany(p => p.Zip(p.Skip(1))).Where(p => Math.Abs(p.First.Y - p.Second.Y) < 0.001);
        var trunk = pieces.OrderByDescending(p => Math.Abs(p.First.X - p.Second.X)).Take(5).Average(p => p.First.Y);
        var places = DrawnPlaces.Ends(plan, sheet).Where(e => e.Load.StartsWith("bulb", StringComparison.Ordinal)).GroupBy(e => e.Place, e => e.Points.Average(p => p.Y) < trunk, StringComparer.Ordinal).ToList();
        var (above, below) = (places.Count(p => p.All(a => a)), places.Count(p => p.All(a => !a)));
        Assert.True(Math.Abs(above - below) <= 1 && above + below >= 5, $"{above} places above the trunk, {below} below");
    }

    private static IEnumerable<string> DrawnWires(IEnumerable<Item> items) =>
        items.SelectMany(i => i is GroupItem g ? DrawnWires(g.Items) : i is PathItem { Role: ItemRole.Lane } p ? [p.Tag!.Wire!] : (IEnumerable<string>)[]);
}
