using System.Globalization;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;
using HarnessDraw.Planning.Lengths;
using HarnessDraw.Tests.Reading;

namespace HarnessDraw.Tests.Planning;

/// <summary>Each allowance by its name, once, and as a description states it.</summary>
public class AllowanceTests
{
    private static readonly SmallVehicle Plain = new() { Circuits = "circuits:\n  dipped beam: { from: F7, enters-by: firewall, feeds: headlamp left.56b }\n  feed: { from: F1, feeds: horn.1 }\n" };

    // 500 mm, 508 mm and 711.2 mm of path along the van
    private const double PathMm = 500 + 508 + 711.2;

    [Theory]
    [InlineData("lay: 30 mm", "lay", 0.030 * PathMm)]
    [InlineData("lay: 0 mm", "lay", 0)]
    [InlineData("dress: 33 mm, mate-dress: 11 mm", "dress", 44)]
    [InlineData("service-loop: 150 mm", "service loop", 150)]
    [InlineData("bends: no", "bend", 0)]
    [InlineData("new-terminals: 0", "re-termination", 0)]
    public void An_allowance_stated_for_the_harness_replaces_the_usual_one_and_no_other(string stated, string kind, double mm)
    {
        var (usual, now) = (Shares(Plain), Shares(Plain with { Rest = $"allowances: {{ {stated} }}\n" }));
        Assert.Equal(mm, now[kind], 0.06);
        Assert.NotEqual(usual[kind], now[kind]);
        Assert.All(AllowanceShares.Kinds.Where(k => k != kind), k => Assert.Equal(usual[k], now[k], 6));
    }

    [Theory]
    [InlineData("cut-at-car: 120 mm", "cut at the car", 120, 0)]
    [InlineData("drip-loop: 80 mm", "drip loop", 80, 0)]
    [InlineData("dress: 45 mm", "dress", 45 + 70, 20 + 70)]
    public void An_allowance_stated_for_a_thing_is_of_the_ends_at_it(string stated, string kind, double mm, double usualMm)
    {
        var things = Plain.Things.Replace("beams: { 56a", $"allowances: {{ {stated} }}, beams: {{ 56a", StringComparison.Ordinal);
        Assert.Equal(usualMm, Shares(Plain)[kind], 6);
        Assert.Equal(mm, Shares(Plain with { Things = things })[kind], 6);
        Assert.Equal(0, AllowanceShares.Of(Plan(Plain with { Things = things }).Wires.Single(w => w.Circuit == "feed"))["cut at the car"]);
    }

    [Theory]
    [InlineData("round-up: §0.2 mm", "1 to 100 mm")]
    [InlineData("new-terminals: §1.5", "whole number")]
    [InlineData("dress: §9 m", "0 to 5 m")]
    [InlineData("§drop-loop: 60 mm", "drip-loop")]
    [InlineData("dress: §60", "unit")]
    public void A_wrong_allowance_is_told_with_its_place(string stated, string says)
    {
        var message = (Plain with { Rest = $"allowances: {{ {stated} }}\n" }).MessageAtMark();
        Assert.Contains(says, message.Message + message.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(25)]
    public void Lengths_are_exact_inside_and_rounded_up_once(double toMm)
    {
        var plan = Plan(Plain with { Rest = $"allowances: {{ round-up: {toMm.ToString(CultureInfo.InvariantCulture)} mm }}\n" });
        Assert.All(CutRows.ByReel(plan), r =>
        {
            Assert.Equal(r.Wire.PathLengthMm!.Value + r.AllowanceMm, r.ExactMm!.Value, 6);
            Assert.Equal(0, r.Wire.CutLengthMm!.Value % toMm, 6);
            Assert.InRange(r.Wire.CutLengthMm.Value - r.ExactMm.Value, -1e-6, toMm - 1e-6);
        });
    }

    // geometry, worked by hand: sqrt(1 + (pi / 10)^2) = 1.0482, / 12: 1.0337, / 15: 1.0217, / 8: 1.0743
    [Theory]
    [InlineData(10, 1.048)]
    [InlineData(12, 1.034)]
    [InlineData(15, 1.022)]
    [InlineData(8, 1.074)]
    public void A_helix_is_longer_by_the_worked_figures(double layOverDiameter, double factor) => Assert.Equal(factor, TwistGeometry.Factor(1, layOverDiameter), 3);

    [Fact]
    public void A_twisted_pair_has_the_length_of_its_helix_and_no_lay_beside_it()
    {
        var vehicle = Plain with { Circuits = "circuits:\n  pair: { from: [headlamp left.56a, headlamp left.56b], feeds: [bus bar.1, bus bar.2], cable: { twisted: 33 mm } }\n" };
        var wires = Plan(vehicle).Wires.Where(w => w.Circuit == "pair").ToList();
        Assert.Equal(2, wires.Count);
        Assert.All(wires, w =>
        {
            var shares = AllowanceShares.Of(w);
            // a pair's wires lie on a circle of one diameter
            Assert.Equal(w.PathLengthMm!.Value * (Math.Sqrt(1 + Math.Pow(Math.PI * w.OutsideMm / 33, 2)) - 1), shares["twist"], 0.06);
            Assert.Equal(0, shares["lay"]);
        });
    }

    private static AllowanceShares Shares(SmallVehicle vehicle) => AllowanceShares.Of(Plan(vehicle).Wires.Single(w => w.Circuit == "dipped beam"));

    private static Plan Plan(SmallVehicle vehicle) => HarnessPlanner.Plan(vehicle.Harness(), PlanningOptions.Usual);
}
