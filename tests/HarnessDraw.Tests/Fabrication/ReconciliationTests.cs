using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Fabrication.Kits;
using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Sheets.SetChecks;
using HarnessDraw.Tests.Layout;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Tests.Fabrication;

/// <summary>No wire is left out or told twice, and all sums agree, whatever list they are read from.</summary>
public class ReconciliationTests
{
    public static TheoryData<string> Examples => ExamplePlans.Names;

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_list_of_an_example_tells_the_same_wires_and_millimetres(string name) => AssertReconciles(ExamplePlans.Of(name));

    [Fact]
    public void Every_list_of_200_random_harnesses_tells_the_same_wires_and_millimetres()
    {
        for (var seed = 1; seed <= 200; seed++)
        {
            AssertReconciles(RandomHarness.Plan(seed, new(4 + (seed % 40))));
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void A_cut_length_is_route_plus_each_allowance_once_rounded_up_once(string name)
    {
        foreach (var row in CutRows.ByReel(ExamplePlans.Of(name)).Where(r => r.ExactMm is not null && !r.Wire.ByHand))
        {
            var shares = AllowanceShares.Of(row.Wire);
            Assert.Equal(row.AllowanceMm, AllowanceShares.Kinds.Sum(k => shares[k]), 6);
            Assert.Equal(row.ExactMm!.Value, row.Wire.PathLengthMm!.Value + AllowanceShares.Kinds.Sum(k => shares[k]), 6);
            Assert.InRange(row.Wire.CutLengthMm!.Value - row.ExactMm.Value, -1e-6, 10 - 1e-6);
            Assert.Equal(0, shares["other"]);
        }
    }

    [Fact]
    public void An_allowance_of_a_new_name_is_counted_as_other_and_not_lost()
    {
        var wire = RandomHarness.Plan(1, new(5)).Wires[0] with { Allowances = [new("lay", 7), new("dress (from)", 20), new("dress (to)", 30), new("layover", 5)] };
        var shares = AllowanceShares.Of(wire);
        Assert.Equal((7.0, 50.0, 5.0), (shares["lay"], shares["dress"], shares["other"]));
    }

    private static void AssertReconciles(Plan plan)
    {
        var order = FabricationOrder.Everything(plan);
        var ids = plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal).ToList();
        var totalMm = plan.Wires.Sum(w => w.CutLengthMm ?? 0);
        foreach (var view in new[] { "reel", "branch", "wire" })
        {
            var table = CutListTables.Of(order, view);
            Assert.Equal(ids, Column(table, "wire").Order(StringComparer.Ordinal));
            Assert.Equal(totalMm, table.Sum("cut_mm"), 3);
        }

        var reels = ReelPlanner.Plan(order, new() { NewReelMm = 30_000 });
        Assert.DoesNotContain(reels.Problems.SelectMany(p => p.Wires), w => plan.WireOf(w).CutLengthMm is not null);
        Assert.Equal(plan.Wires.Where(w => w.CutLengthMm > 0).Select(w => w.Id).Order(StringComparer.Ordinal), reels.Uses.SelectMany(u => u.Pieces.Select(p => p.Wire)).Order(StringComparer.Ordinal));
        Assert.Equal(totalMm, reels.Uses.Sum(u => u.Pieces.Sum(p => p.LengthMm)), 3);
        Assert.Equal(totalMm, PurchaseList.Of(order, reels).Lines.Where(l => l.Group == "wire").Sum(l => l.Needed) * 1000, 3);
        Assert.All(reels.Uses, u => Assert.True(u.Pieces.Sum(p => p.LengthMm) + 30 + u.RestMm <= u.LengthMm + 0.001));

        var labels = WireLabels.Of(plan);
        Assert.Equal(ids.SelectMany(i => (string[])[i + " A", i + " B"]).Order(StringComparer.Ordinal), labels.Select(l => $"{l.Wire} {l.End}").Order(StringComparer.Ordinal));
        Assert.Equal(ids, BranchBags.Of(order).SelectMany(b => b.Wires.Select(r => r.Wire.Id)).Order(StringComparer.Ordinal));
        AssertEachCavityEndOnce(plan);

        // board and bench test: once on each, or the sheet would not be written
        foreach (var kind in new[] { SheetKinds.LayOrder, SheetKinds.BenchTest })
        {
            var sheets = SheetKinds.Compose(kind, plan, [], new()).Sheets;
            Assert.NotEmpty(sheets);
            Assert.Empty(SetCheck.Check(plan, sheets));
        }
    }

    private static void AssertEachCavityEndOnce(Plan plan)
    {
        var steps = InsertionRows.Of(plan);
        var told = steps.Where(s => s.End is not null).Select(s => $"{s.Row!.Wire.Id} {s.End}").ToList();
        Assert.Equal(told.Count, told.Distinct().Count());
        var expected = plan.Cavities.Where(c => c.Wire is not null).Select(c => (c.Connector, c.Cavity, c.Wire)).Distinct().Count();
        Assert.Equal(expected, steps.Count(s => s.Row is not null));
        Assert.All(steps.Where(s => s.Row is not null), s => Assert.NotNull(s.End));
    }

    private static IEnumerable<string> Column(ListTable table, string head) => table.Rows.Select(r => r[table.Heads.IndexOf(head)].Text!);
}
