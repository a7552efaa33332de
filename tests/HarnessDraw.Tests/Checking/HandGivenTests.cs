using HarnessDraw.Checking;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Reading;

namespace HarnessDraw.Tests.Checking;

/// <summary>What is given by hand is checked and never changed: from the text of a description to a finding with its place.</summary>
public class HandGivenTests
{
    private const string Pair = """
          dipped beam: { from: F7, enters-by: firewall, cavity: B1, feeds: headlamp left.56b, colour: YE, size: 1 mm2 }
          main beam: { from: F7, enters-by: firewall, cavity: B2, feeds: headlamp left.56a, colour: YE, size: 1 mm2 }
        """;

    [Theory]
    [InlineData("hand-route-off-path", "  feed: { by-hand: [{ wire: H1, from: F1, to: horn.1, size: 1.5 mm2, route: [tray, nose] }] }", "from tray to nose")]
    [InlineData("cut-too-short", "  feed: { by-hand: [{ wire: H1, from: F1, to: horn.1, size: 1.5 mm2, cut: 300 mm }] }", "H1 (feed) is cut 300 mm")]
    [InlineData("no-terminal-fits", "  feed: { by-hand: [{ wire: H1, from: F1, to: horn.1, size: 16 mm2 }] }", "horn 1: H1 (feed) is given as 16")]
    [InlineData("no-terminal-fits", "  feed: { from: F1, feeds: horn.1, size: 16 mm2 }", "is given as 16")]
    [InlineData("size-not-in-catalogue", "  feed: { from: F1, feeds: horn.1, size: 16 AWG }", "16 AWG, which is 1.22 mm², is given")]
    [InlineData("size-not-in-catalogue", "  feed: { from: F1, feeds: horn.1, size: 5 mm2 }", "the nearest it has: 4.0 mm² and 6.0 mm²")]
    [InlineData("fuse-above-wire", "  feed: { from: F7, enters-by: firewall, feeds: horn.1, size: 0.5 mm2 }", "F7 (15 A)")]
    [InlineData("two-wires-in-cavity", "  a: { from: F7, enters-by: firewall, cavity: B1, feeds: headlamp left.56b }\n  b: { from: F7, enters-by: firewall, cavity: B1, feeds: headlamp left.56a }", "firewall B1 has")]
    [InlineData("same-colour-and-size", Pair, "2 YE wires of 1")]
    [InlineData("keep-apart-broken", Pair, "firewall B1 and B2 are neighbours")]
    public void A_value_given_by_hand_is_found_with_its_place(string rule, string circuits, string says)
    {
        var rest = circuits == Pair ? "keep-apart: [[dipped beam, main beam]]\n" : "";
        var found = Check(circuits, rest).Where(f => f.Rule == rule).ToList();
        Assert.Contains(found, f => f.Message.Contains(says, StringComparison.Ordinal));
        Assert.All(found, f => Assert.True(f.At is { Line: > 1 }, f.Message));
    }

    [Fact]
    public void Sizes_colours_cuts_and_cavities_stay_as_given()
    {
        var plan = Plan("  feed: { by-hand: [{ wire: H1, from: F1, to: horn.1, size: 16 mm2, colour: BN/WH, cut: 300 mm }] }\n" + Pair, "");
        var hand = plan.WireOf("H1");
        Assert.Equal((16, "BN/WH", 300), (hand.AreaMm2, hand.Colour, hand.CutLengthMm));
        Assert.Equal(["dipped beam", "main beam"], new[] { "B1", "B2" }.Select(c => plan.WireOf(plan.Cavities.Single(x => x.Cavity == c && x.Wire is not null).Wire!).Circuit));
    }

    /// <summary>Vehicle 16 AWG, SAE J1128 as reprinted in the shipped catalogue: 1.22 mm2.</summary>
    [Theory]
    [InlineData("", false)]
    [InlineData(", wire-type: awg-cross-linked-125", true)]
    public void A_gauge_is_its_own_area_and_no_metric_size_of_its_number(string type, bool isStocked)
    {
        var circuits = $"  feed: {{ from: F1, feeds: horn.1, size: 16 AWG{type} }}";
        var wire = Plan(circuits, "").Wires.First(w => w.Circuit == "feed");
        Assert.Equal((1.22, "16 AWG", "16"), (wire.AreaMm2, wire.SizeLabel, wire.Awg));
        Assert.Equal(!isStocked, Check(circuits, "").Any(f => f.Rule == "size-not-in-catalogue"));
    }

    /// <summary>A button or thermostat of which one side is wired and the other stands on the metal works what hangs on it.</summary>
    [Theory]
    [InlineData("side: cabin, switch: { 1: 31 }, grounds-itself: yes", false)]
    [InlineData("side: cabin, switch: { 1: 31 }, returns: 31", false)]
    [InlineData("side: cabin, switch: { 1: 31 }", true)]
    public void A_switch_on_the_metal_closes_the_way_and_one_that_leads_nowhere_is_found(string button, bool isDead)
    {
        var vehicle = new SmallVehicle { Circuits = "circuits:\n  bar feed: { from: battery, feeds: bus bar, live: always, unfused: short and booted }\n  horn: { from: F1, feeds: horn.1, live: always }\n  horn trigger: { from: horn.2, enters-by: firewall, feeds: button.1, live: always, protected-by: F1 }\n", Rest = "states: { hooting: { key: off, on: [horn, horn trigger] } }\n" };
        var harness = (vehicle with { Things = vehicle.Things + $"  button: {{ at: dash, {button} }}\n" }).Harness();
        var plan = HarnessPlanner.Plan(harness, new PlanningOptions());
        var dead = HarnessChecker.Check(plan, RuleSettings.BuiltIn).Where(f => f.Rule == "on-but-dead").ToList();
        Assert.Equal(isDead, dead.Count == 1);
        Assert.All(dead, f => Assert.Contains("the path stops at button 31", f.Message, StringComparison.Ordinal));
        Assert.Equal(isDead ? 0 : 5, plan.Wires.First(w => w.Circuit == "horn").Worst!.CurrentA, 0.5);
    }

    private static Plan Plan(string circuits, string rest) => HarnessPlanner.Plan(new SmallVehicle { Circuits = "circuits:\n" + circuits + "\n", Rest = rest }.Harness(), new PlanningOptions());

    private static System.Collections.Immutable.ImmutableArray<Finding> Check(string circuits, string rest) => HarnessChecker.Check(Plan(circuits, rest), RuleSettings.BuiltIn);
}
