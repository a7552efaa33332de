using HarnessDraw.Checking;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Reading;

namespace HarnessDraw.Tests.Planning;

/// <summary>
/// A fuse is chosen by its load, and no larger than what lies behind it bears where that still carries load and start. Limits are those of the rules: 1.35 times a contact (common practice,
/// no source), continuous loads of at most 80 % (common practice, no source), a start of at most 200 % of a blade (ISO 8820-3 as reprinted).
/// </summary>
public sealed class FuseChoiceTests
{
    // 6.8 A of a motor ask for the next rating above 10.5 A, which is 15 A; the 8 A contacts of its plug bear 10.8 A
    private const string Pump = "pump: { at: nose, plug: sender-2, pins: [1, 2], motor: { 1: 6.8 A }, stalls: 18 A, returns: { 2: ground left } }";

    [Fact]
    public void A_contact_bounds_its_fuse()
    {
        var plan = Planned(Pump, "pump feed: { from: F2, feeds: pump.1, live: run }");
        var fuse = plan.Fuses.Single(f => f.Id == "F2");
        Assert.Equal(10, fuse.RatingA);
        Assert.StartsWith("by the 8 A contact at pump 1, which bears a fuse of 10.8 A", fuse.Why, StringComparison.Ordinal);
        Assert.DoesNotContain(Found(plan), f => f.Where.Contains("F2"));
    }

    /// <summary>6.8 A are 68 % of the 10 A that the contact bears: too much where a fuse is to have 65 %, and where the place is hot.</summary>
    [Theory]
    [InlineData(0.65, 0.7, 70, 15)]
    [InlineData(0.8, 0.65, 70, 10)]
    [InlineData(0.8, 0.65, 60, 15)]
    public void A_fuse_has_the_share_of_load_that_the_figures_ask_for(double share, double inHeat, double fromC, double ratingA)
    {
        var options = PlanningOptions.Usual with { MostFuseShare = share, MostFuseShareInHeat = inHeat, FuseHeatC = fromC };
        Assert.Equal(ratingA, Planned(Pump, "pump feed: { from: F2, feeds: pump.1, live: run }", options).Fuses.Single(f => f.Id == "F2").RatingA);
    }

    /// <summary>7.2 A by 1.35 are 9.7 A: a fuse of 10 A, of which they are 72 %; a hot one is to have no more than 70 % (common practice, no source).</summary>
    [Theory]
    [InlineData(70, 10)]
    [InlineData(60, 15)]
    public void A_fuse_in_heat_is_chosen_larger(double fromC, double ratingA)
    {
        var plan = Planned("heater: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, heater: { 1: 7.2 A }, returns: { 2: ground left } }", "heat: { from: F2, feeds: heater.1, live: run }", PlanningOptions.Usual with { FuseHeatC = fromC });
        Assert.Equal(ratingA, plan.Fuses.Single(f => f.Id == "F2").RatingA);
    }

    /// <summary>Behind a lamp of 2 W a short draws what the lamp lets pass; before it the fuse of 15 A rules. Common practice, no source.</summary>
    [Fact]
    public void A_wire_behind_a_lamp_in_series_is_not_sized_for_the_fuse_before_it()
    {
        var plan = Planned("oil lamp: { at: wing, blades: { 15: 6.3 mm, G: 6.3 mm }, lamp: { 15: 2 W } }\n  oil sender: { at: nose, blade: 6.3 mm, sender: 40 ohm, grounds-itself: yes }",
            "lamp feed: { from: F2, feeds: oil lamp.15, live: run }\n  oil signal: { from: oil lamp.G, feeds: oil sender, duty: signal, live: run, protected-by: F2 }", f2: "rating: 15 A, ");
        var (before, behind) = (plan.Wires.Single(w => w.Circuit == "lamp feed"), plan.Wires.Single(w => w.Circuit == "oil signal"));
        Assert.True(before.AmpacityA >= 15, $"{before.AmpacityA}");
        Assert.Equal(0.5, behind.AreaMm2);
        Assert.InRange(behind.AmpacityA!.Value, 2 / 12.0, 15);
        Assert.DoesNotContain(Found(plan), f => f.Rule is "fuse-above-wire" or "fuse-above-contact");
    }

    /// <summary>Nothing but the fuses on a bus bar limits the current in the lead to it: it must bear the largest of them. Common practice, no source.</summary>
    [Fact]
    public void An_unfused_lead_bears_the_largest_fuse_that_it_feeds()
    {
        var plan = Planned("heater: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, heater: { 1: 5 A }, returns: { 2: ground left } }", "heat: { from: F2, feeds: heater.1, live: run }", f2: "rating: 15 A, ");
        var lead = plan.Wires.Single(w => w.Circuit == "main");
        Assert.True(lead.AmpacityA >= plan.Fuses.Single(f => f.Id == "F1").RatingA && lead.AmpacityA >= 15, $"{lead.SizeLabel}, {lead.AmpacityA} A");
        Assert.Equal("protection", lead.DecidedBy);
    }

    /// <summary>A start of 25 A may open a blade of 10 A, which holds 20 A for it: the larger fuse stays and the contact is told.</summary>
    [Fact]
    public void A_fuse_that_would_not_start_its_load_is_not_chosen_by_the_contact()
    {
        var plan = Planned(Pump.Replace("18 A", "25 A", StringComparison.Ordinal), "pump feed: { from: F2, feeds: pump.1, live: run }");
        var fuse = plan.Fuses.Single(f => f.Id == "F2");
        Assert.Equal(15, fuse.RatingA);
        Assert.Contains("would not carry the load and its start", fuse.Why, StringComparison.Ordinal);
        var told = Found(plan).Single(f => f.Rule == "fuse-above-contact");
        Assert.Contains("pump 1", told.Message, StringComparison.Ordinal);
        Assert.Contains("larger contact", told.Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void A_given_wire_bounds_its_fuse()
    {
        var free = Planned("heater: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, heater: { 1: 5.8 A }, returns: { 2: ground left } }", "heat: { from: F2, feeds: heater.1, live: run }");
        var thin = Planned("heater: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, heater: { 1: 5.8 A }, returns: { 2: ground left } }", "heat: { from: F2, feeds: heater.1, live: run, size: 0.5 mm2 }");
        var wire = thin.Wires.Single(w => w.Circuit == "heat");
        Assert.InRange(wire.AmpacityA!.Value, 7.5, free.Fuses.Single(f => f.Id == "F2").RatingA!.Value - 0.01);
        Assert.Equal(7.5, thin.Fuses.Single(f => f.Id == "F2").RatingA);
        Assert.DoesNotContain(Found(thin), f => f.Rule == "fuse-above-wire");
    }

    /// <summary>15 A through an 8 A contact is too much whatever the load: a cavity is chosen that bears the fuse.</summary>
    [Fact]
    public void A_cavity_is_chosen_that_bears_a_given_fuse()
    {
        var plan = HarnessPlanner.Plan(new SmallVehicle { Circuits = "circuits:\n  small lamp: { from: F7, enters-by: firewall, feeds: side lamp.1 }\n", Things = WithThing("side lamp: { at: nose, plug: lamp-2, lamp: { 1: 10 W }, returns: { 2: ground left } }") }.Harness(), PlanningOptions.Usual);
        Assert.DoesNotContain(Found(plan), f => f.Rule == "fuse-above-contact");
    }

    private static Plan Planned(string thing, string circuit, PlanningOptions? options = null, string f2 = "") => HarnessPlanner.Plan(new SmallVehicle
    {
        Things = WithThing(thing),
        Protection = $"protection:\n  F1: {{ kind: bolt-in, on: bus bar }}\n  F2: {{ kind: blade, {f2}on: bus bar }}\n  F7: {{ kind: blade, rating: 15 A, at: dash, side: cabin }}\n",
        Circuits = $"circuits:\n  main: {{ from: battery.plus, feeds: bus bar, unfused: short and sheathed }}\n  {circuit}\n",
    }.Harness(), options ?? PlanningOptions.Usual);

    private static string WithThing(string thing) => new SmallVehicle().Things.TrimEnd() + $"\n  {thing}\n";

    private static IReadOnlyList<Finding> Found(Plan plan) => [.. HarnessChecker.Check(plan, RuleSettings.BuiltIn).Where(f => f.Rule is "fuse-above-contact" or "fuse-above-wire" or "fuse-load-high" or "inrush-opens-fuse")];
}
