using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Fabrication.Kits;
using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Fabrication;

public class KitsTests
{
    public static TheoryData<string> Examples => ExamplePlans.Names;

    [Theory]
    [MemberData(nameof(Examples))]
    public void Crimps_terminals_to_buy_and_terminals_in_bags_are_the_same_number(string name)
    {
        var order = FabricationOrder.Everything(ExamplePlans.Of(name));
        var ends = order.Plan.Wires.SelectMany(w => new[] { w.From, w.To }).Count(e => e.Terminal is not null);
        var bought = PurchaseList.Of(order, ReelPlanner.Plan(order, new())).Lines;
        Assert.Equal(ends, CrimpGroups.Of(order).Sum(g => g.Crimps));
        Assert.Equal(ends, bought.Where(l => l.Group == "terminal").Sum(l => l.Needed));
        var terminals = order.Plan.Harness.Catalogue.Terminals.Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        Assert.Equal(ends, BranchBags.Of(order).Sum(b => b.Parts.Where(p => terminals.Contains(p.Key)).Sum(p => p.Value)));
        Assert.All(bought.Where(l => l.Group == "terminal"), l => Assert.True(l.Spare >= Math.Max(2, l.Needed * 0.1)));
    }

    [Fact]
    public void A_batch_of_every_build_buys_the_sum_of_the_builds()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var builds = plan.Builds.Take(4).ToImmutableArray();
        var batch = new FabricationOrder(plan, [.. builds.Select((b, i) => new BuildQuantity(b, i + 1))]);
        var singles = builds.Select((b, i) => (Order: new FabricationOrder(plan, [new(b, 1)]), Times: i + 1)).ToArray();
        foreach (var group in new[] { "wire", "terminal", "seal", "plug", "connector", "splice" })
        {
            double Needed(FabricationOrder o) => PurchaseList.Of(o, ReelPlanner.Plan(o, new())).Lines.Where(l => l.Group == group).Sum(l => l.Needed);
            Assert.Equal(singles.Sum(s => s.Times * Needed(s.Order)), Needed(batch), 6);
        }
    }

    [Fact]
    public void A_cavity_whose_option_is_not_built_gets_a_plug()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        double Plugs(FabricationOrder o) => PurchaseList.Of(o, ReelPlanner.Plan(o, new())).Lines.Where(l => l.Group == "plug").Sum(l => l.Needed);
        var bare = plan.Builds.MinBy(b => plan.Wires.Count(w => w.Builds.Holds(b)))!;
        Assert.True(plan.Wires.Any(w => w.From.At == "firewall" && !w.Builds.Holds(bare)));
        var mate = plan.Harness.ThingOf("firewall").ConnectorPart;
        var cavities = plan.Harness.Catalogue.Connectors.First(c => c.Id == mate).Cavities.Length;
        var wired = plan.Cavities.Where(c => c.Connector == "firewall" && c.Wire is not null && plan.WireOf(c.Wire).Builds.Holds(bare)).Select(c => c.Cavity).Distinct().Count();
        Assert.True(Plugs(new(plan, [new(bare, 1)])) >= cavities - wired);
    }

    // terminal makers' application specifications, commercial column (UL 486A), 22 to 10 AWG: 35.6 57.9 89.0 133.5 222.5 311.5 356.0 N
    [Theory]
    [InlineData(0.326, 35.6)]
    [InlineData(0.519, 57.9)]
    [InlineData(0.823, 89.0)]
    [InlineData(1.22, 133.5)]
    [InlineData(1.94, 222.5)]
    [InlineData(3.31, 311.5)]
    [InlineData(4.91, 356.0)]
    public void Pull_strengths_are_the_published_ones(double areaMm2, double newton) => Assert.Equal(newton, PullStrength.LeastN(areaMm2));

    [Theory]
    [InlineData(300, 25)]
    [InlineData(301, 50)]
    [InlineData(1500, 50)]
    [InlineData(3000, 100)]
    [InlineData(7500, 150)]
    [InlineData(10000, 500)]
    public void Length_tolerances_are_those_quoted_of_the_workmanship_standard(double lengthMm, double plusMm) => Assert.Equal(plusMm, LengthTolerance.PlusMm(lengthMm));

    [Theory]
    [InlineData(1.7, 2.4)]
    [InlineData(2.4, 3.2)]
    [InlineData(6.0, 9.5)]
    public void A_label_sleeve_slips_over_the_wire_and_grips_it(double outsideMm, double boreMm)
    {
        var sleeve = LabelSleeve.For(outsideMm)!;
        Assert.Equal(boreMm, sleeve.BoreMm);
        Assert.True(sleeve.BoreMm >= 1.1 * outsideMm && sleeve.ShrunkMm <= 0.8 * outsideMm);
        Assert.Null(LabelSleeve.For(90));
    }

    [Fact]
    public void A_metre_of_one_square_millimetre_holds_8_89_grams_of_copper() => Assert.Equal(8.89, WireMass.CopperGrams(1, 1000), 9);
}
