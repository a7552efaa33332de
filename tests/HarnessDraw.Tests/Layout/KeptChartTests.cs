using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Layout;

/// <summary>
/// A chart drawn after a small change keeps the places of the one on the wall: what the reader knows by its place is found there (common practice, no source).
/// </summary>
public class KeptChartTests(ITestOutputHelper output)
{
    /// <summary>Loads nearer to one another than a finger's breadth along an axis of the paper, mm, stand side by side for the reader (common practice, no source).</summary>
    private const double SideBySideMm = 10;

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Of_an_unchanged_example_the_chart_stays_as_it_is(string example) => AssertSame(ExamplePlans.Of(example));

    [Theory]
    [InlineData(12)]
    [InlineData(30)]
    [InlineData(60)]
    public void Of_an_unchanged_random_harness_the_chart_stays_as_it_is(int circuits)
    {
        for (var seed = 1; seed <= 8; seed++)
        {
            AssertSame(RandomHarness.OfLongRun(seed, circuits));
        }
    }

    /// <summary>
    /// Each load in turn is the one that has come to it. Papers are as full as they were, so that a pair may have to give way: held is that at the most one in so many does, none of
    /// them from one side of the trunk to the other.
    /// </summary>
    [Theory]
    [InlineData("brackmere-six", 1, 300)]
    [InlineData("dunmarrow-18", 1, 100)]
    [InlineData("aldervane-coach", 24, 500)]
    public void With_one_load_more_an_example_keeps_the_order_and_the_sides_of_all_others(string example, int every, int oneIn)
    {
        var (sum, free) = LookAtEach(ExamplePlans.Of(example), every);
        AssertKept(sum, free, oneIn);
    }

    [Theory]
    [InlineData(30, 3, 200)]
    [InlineData(60, 9, 300)]
    public void With_one_load_more_a_random_harness_keeps_the_order_and_the_sides_of_all_others(int circuits, int every, int oneIn)
    {
        var (sum, free) = (new Moved(), new Moved());
        for (var seed = 1; seed <= 10; seed++)
        {
            var (kept, afresh) = LookAtEach(RandomHarness.OfLongRun(seed, circuits), every);
            (sum, free) = (sum.And(kept), free.And(afresh));
        }

        AssertKept(sum, free, oneIn);
    }

    private void AssertKept(Moved kept, Moved afresh, int oneIn)
    {
        var words = $"kept: {kept}\nafresh: {afresh}";
        output.WriteLine(words);
        Assert.True(kept.Charts > 5, words);
        Assert.True(kept.OnOtherSide == 0, words);
        Assert.True(kept.Turned * oneIn <= kept.Pairs, words);
        Assert.True(kept.Turned < afresh.Turned, words);
    }

    /// <summary>What was counted: charts, pairs of loads on them along both axes, pairs that have turned round, and loads that have gone to the other side of the trunk.</summary>
    private sealed record Moved(int Charts = 0, int Pairs = 0, int Turned = 0, int OnOtherSide = 0, int Perfect = 0, int OtherPapers = 0, string Which = "")
    {
        public Moved And(Moved other) => new(Charts + other.Charts, Pairs + other.Pairs, Turned + other.Turned, OnOtherSide + other.OnOtherSide, Perfect + other.Perfect, OtherPapers + other.OtherPapers, Which + other.Which);
    }

    // the harness without one of its loads is what was drawn before; the load comes to it
    private static (Moved Kept, Moved Afresh) LookAtEach(Plan plan, int every)
    {
        var loads = plan.Wires.SelectMany(w => (WireEnd[])[w.From, w.To]).Where(e => !e.IsSplice).Select(e => e.At).Distinct(StringComparer.Ordinal)
            .Where(at => plan.Harness.Things.Any(t => t.Id == at && t.Kind != ThingKind.Mate)).Where(at => plan.Wires.All(w => !Ends(w, at) || !(w.From.IsSplice || w.To.IsSplice))).Order(StringComparer.Ordinal).ToList();
        var afresh = WallChart.Compose(plan, [], new()).Sheets;
        var (kept, free) = (new Moved(), new Moved());
        for (var i = 0; i < loads.Count; i += every)
        {
            var before = plan with { Wires = [.. plan.Wires.Where(w => !Ends(w, loads[i]))] };
            var (was, now) = Drawn(before, plan);
            kept = kept.And(Compare(before, plan, was, now, loads[i]));
            free = free.And(Compare(before, plan, was, [.. afresh], loads[i]));
        }

        return (kept, free);

        static bool Ends(Wire wire, string at) => wire.From.At == at || wire.To.At == at;
    }

    private static Moved Compare(Plan before, Plan plan, List<Sheet> was, List<Sheet> now, string load)
    {
        var moved = new Moved(1, OtherPapers: was.Count == now.Count && was.Zip(now).All(s => s.First.Paper.Name == s.Second.Paper.Name) ? 0 : 1);
        foreach (var (old, sheet) in was.Zip(now))
        {
            var (places, nows) = (Places(before, old), Places(plan, sheet));
            var common = places.Keys.Where(nows.ContainsKey).ToList();
            var turned = 0;
            for (var i = 0; i < common.Count; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    var (a, b, c, d) = (places[common[i]], places[common[j]], nows[common[i]], nows[common[j]]);
                    turned += IsTurned(a.X - b.X, c.X - d.X) + IsTurned(a.Y - b.Y, c.Y - d.Y);
                }
            }

            var over = common.Count(c => places[c].Side * nows[c].Side < 0);
            moved = moved.And(new(0, common.Count * (common.Count - 1), turned, over, 0, 0, turned + over == 0 ? "" : $"; {load} {turned} {over} {old.Paper.Name} {sheet.Paper.Name}"));
        }

        return moved with { Perfect = moved.Turned + moved.OnOtherSide == 0 ? 1 : 0 };

        static int IsTurned(double wasMm, double isMm) => Math.Abs(wasMm) > SideBySideMm && Math.Sign(wasMm) * isMm < 0 ? 1 : 0;
    }

    [Fact]
    public void On_a_paper_that_does_not_bear_the_places_of_before_the_chart_is_laid_out_afresh()
    {
        var plan = ExamplePlans.Of("dunmarrow-18");
        var ways = ChartOfOtherTurns(WallChart.Taken(plan, [], new())!);
        var options = new SheetOptions { Paper = PaperSizes.A2, Changes = new("revision A", "revision B", [], 0) { Chart = ways } };
        Assert.Null(WallChart.Compose(plan, [], options).Refused);
    }

    // all branches to the one side, each alone: far too wide
    private static FrozenChart ChartOfOtherTurns(FrozenChart chart) =>
        chart with { Sheets = [.. chart.Sheets.Select(s => s with { Branches = [.. s.Branches.Select(b => b with { Turn = ChartTurn.Left, StemMm = 900 })] })] };

    private static (List<Sheet> Was, List<Sheet> Now) Drawn(Plan before, Plan plan)
    {
        var (was, options) = (WallChart.Compose(before, [], new()), new SheetOptions { Changes = new("revision A", "revision B", [], 0) { Chart = WallChart.Taken(before, [], new()) } });
        var now = WallChart.Compose(plan, [], options);
        Assert.Null(was.Refused);
        Assert.Null(now.Refused);
        return ([.. was.Sheets], [.. now.Sheets]);
    }

    private static Dictionary<string, (double X, double Y, int Side)> Places(Plan plan, Sheet sheet)
    {
        var trunk = TrunkSideTests.Trunk(plan, sheet).Trunk.Values;
        var (top, bottom) = trunk.Count > 0 ? (trunk.Min(b => b.Y), trunk.Max(b => b.Bottom)) : (0, 0);
        return DrawnPlaces.Ends(plan, sheet).ToDictionary(
            e => e.Load,
            e => (e.Points.Average(p => p.X), e.Points.Average(p => p.Y), e.Points.TrueForAll(p => p.Y < top) ? -1 : e.Points.TrueForAll(p => p.Y > bottom) ? 1 : 0),
            StringComparer.Ordinal);
    }

    private static void AssertSame(Plan plan)
    {
        var (was, now) = Drawn(plan, plan);
        Assert.Equal(was.Select(s => s.Paper.Name), now.Select(s => s.Paper.Name));
        foreach (var (before, after) in was.Zip(now))
        {
            // lanes, tables and words stand where they stood; what is told of the changes has come to it
            var lanes = DrawnPlaces.Lanes(after.Items).Select(l => string.Join(' ', DrawnPlaces.Points(l))).ToList();
            Assert.Equal(DrawnPlaces.Lanes(before.Items).Select(l => string.Join(' ', DrawnPlaces.Points(l))), lanes);
            var texts = ItemWalk.Texts(after).Select(t => (t.Text, t.At)).ToHashSet();
            var missing = ItemWalk.Texts(before).Where(t => !texts.Contains((t.Text, t.At))).ToList();
            Assert.True(missing.Count == 0, $"{plan.Harness.Title}: {string.Join(", ", missing.Take(6).Select(t => $"{t.Text} at {t.At}"))}");
            Assert.Empty(SheetChecker.Check(after));
        }
    }
}
