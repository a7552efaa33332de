using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Tests.Model;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.Findings;

namespace HarnessDraw.Tests.Electrical;

public class FaultFinderTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(115, 70, 160)]
    [InlineData(143, 90, 250)]
    [InlineData(143, 30, 160)]
    [InlineData(176, 30, 250)]
    [InlineData(100, 90, 160)]
    [InlineData(141, 60, 200)]
    [InlineData(134, 85, 220)]
    public void K_is_that_of_the_published_table(double k, double startC, double finalC)
    {
        // IEC 60364-5-54 annex A as printed on cable-sizing pages
        Assert.InRange(Adiabatic.K(startC, finalC), k - 0.5, k + 0.5);
        Assert.Equal(finalC, Adiabatic.FinalC(startC, Adiabatic.K(startC, finalC) * 2.5, 1, 2.5), 6);
    }

    [Theory]
    [InlineData(ProtectionKind.Blade, 1.35, 0.75, 600)]
    [InlineData(ProtectionKind.Blade, 2, 0.15, 5)]
    [InlineData(ProtectionKind.Blade, 3.5, 0.08, 0.5)]
    [InlineData(ProtectionKind.BoltIn, 2, 1, 15)]
    [InlineData(ProtectionKind.BoltIn, 3.5, 0.3, 5)]
    public void Windows_pass_through_the_published_gates(ProtectionKind kind, double times, double shortestS, double longestS)
    {
        var (shortest, longest) = FuseWindow.Of(kind, times);
        Assert.Equal(shortestS, shortest, 6);
        Assert.Equal(longestS, longest!.Value, 6);
        Assert.Null(FuseWindow.Of(kind, 1.3).LongestS);
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_single_fault_of_an_example_is_solved(string name)
    {
        var plan = ExamplePlans.Of(name);
        var study = FaultFinder.Find(plan);
        output.WriteLine(FaultText.Of(study));
        Assert.NotEmpty(study.Shorts);
        Assert.All(study.Shorts, s => Assert.True(double.IsFinite(s.CurrentA) && double.IsFinite(s.HottestC)));
        Assert.NotEmpty(study.Opens);
    }

    /// <summary>Each wire of the plan is shorted or stands under the reason why it is not; what is counted in the text adds up to the wires shorted.</summary>
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_wire_is_accounted_for(string name)
    {
        var plan = ExamplePlans.Of(name);
        var study = FaultFinder.Find(plan);
        Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), study.Shorts.Select(s => s.Wire).Concat(study.NotShorted.SelectMany(n => n.Wires)).Order(StringComparer.Ordinal));
        var text = FaultText.Of(study);
        var told = text.Split('\n').Count(l => l.Contains(" shorted at ", StringComparison.Ordinal));
        var opens = study.Shorts.Count(s => s.Outcome == ShortOutcome.FuseOpens);
        Assert.Contains($"wires shorted: {study.Shorts.Length}; the fuse opens first in {opens}, told above {told}", text, StringComparison.Ordinal);
        var weak = study.Shorts.Length - opens - told;
        Assert.Equal(weak > 0, text.Contains($"less than 1 A flows in {weak} ", StringComparison.Ordinal));
    }

    /// <summary>Ohm's law by hand: volts of a rested battery (2.1 V a cell) over its own ohms. What flows with joints and warm copper stays below it, and above half of it at the starter's post.</summary>
    [Fact]
    public void A_short_at_the_starter_draws_less_than_cold_copper_alone_would_let_through()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var cable = plan.Wires.Single(w => w.Circuit == "starter cable");
        var source = plan.Harness.Power.Sources.First(s => s.Kind == SourceKind.Battery);
        var perM = plan.Harness.Catalogue.WireTypes.Single(t => t.Id == cable.WireType).Sizes.Single(s => s.Label == cable.SizeLabel).MilliohmPerM;
        var mostA = source.NominalV * 1.05 / ((source.InternalOhm ?? 0.008) + (perM * cable.CutLengthMm!.Value * 1e-6));
        Assert.InRange(FaultFinder.Find(plan).Shorts.Single(s => s.Wire == cable.Id).CurrentA, 0.5 * mostA, 0.999 * mostA);
    }

    /// <summary>Electronics side by side that have lost their source have no volts (common practice, no source), whatever they had before: 12 V behind a fuse and a relay.</summary>
    [Theory]
    [InlineData("fuse LM")]
    [InlineData("fuse F6")]
    [InlineData("fuse K101")]
    public void Electronics_that_lose_their_source_die_together(string fuse)
    {
        var opened = FaultFinder.Find(ExamplePlans.Of("aldervane-coach")).Opens.Where(o => o.What == fuse && o.State == "night and rain").ToList();
        var dead = Assert.Single(opened).Dead.Select(d => d.Load).ToList();
        Assert.All(["radio", "coach phone", "reversing screen", "passenger sockets left", "passenger sockets right"], thing => Assert.Contains($"{thing} electronics 1", dead));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Nothing_of_an_example_stays_on_with_the_key_off(string name) => Assert.Empty(KeyOffFinder.Find(ExamplePlans.Of(name)));

    /// <summary>Without the volts of its coil a relay lets go, and with it goes what its contact feeds.</summary>
    [Theory]
    [InlineData("fuse K21", "ignition relay coil", "coil 15")]
    [InlineData("fuse K26", "fan relay coil", "fan motor 1")]
    [InlineData("fuse K11", "dipped relay coil", "headlamp left beams 56b")]
    [InlineData("fuse K11", "dipped relay coil", "headlamp right beams 56b")]
    public void What_a_relay_feeds_dies_with_its_coil(string fuse, string coil, string load)
    {
        var opened = FaultFinder.Find(ExamplePlans.Of("brackmere-six")).Opens.Where(o => o.What == fuse && o.Dead.Any(d => d.Load == coil)).ToList();
        Assert.Contains(opened, o => o.Dead.Any(d => d.Load == load));
        Assert.All(opened, o => Assert.DoesNotContain(o.Sneaks, s => s.Load == load));
    }

    [Fact]
    public void A_far_too_large_fuse_does_not_save_its_wire()
    {
        var sound = FaultFinder.Find(SmallHarness.Plan).Shorts.First(s => s.Fuse == "F7");
        var plan = SmallHarness.Plan with { Fuses = [.. SmallHarness.Plan.Fuses.Select(f => f.Id == "F7" ? f with { RatingA = 1000 } : f)] };
        var weak = FaultFinder.Find(plan).Shorts.Single(s => s.Wire == sound.Wire);
        Assert.Equal(ShortOutcome.FuseOpens, sound.Outcome);
        Assert.NotEqual(ShortOutcome.FuseOpens, weak.Outcome);
    }

    [Fact]
    public void A_charge_lamp_is_missed_where_it_was_lit_and_not_while_the_alternator_charges()
    {
        var opens = FaultFinder.Find(ExamplePlans.Of("brackmere-six")).Opens;
        Assert.Contains(opens, o => o.State == "ignition on" && o.Dead.Any(l => l.Load == "charge lamp 15"));
        Assert.DoesNotContain(opens, o => o.State == "night and rain" && o.Dead.Concat(o.Dim).Any(l => l.Load == "charge lamp 15"));
    }

    [Fact]
    public void A_lamp_goes_dead_with_its_fuse_and_its_ground()
    {
        var opens = FaultFinder.Find(SmallHarness.Plan).Opens;
        Assert.Contains(opens.Single(o => o is { What: "fuse F7", State: "night" }).Dead, l => l.Load == "headlamp left dipped");
        Assert.Contains(opens, o => o.What.StartsWith("ground point", StringComparison.Ordinal) && o.Dead.Concat(o.Dim).Any());
    }
}
