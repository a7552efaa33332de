using HarnessDraw.Checking;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Planning;

/// <summary>
/// Supplies as a beginner writes them: two batteries in series, a dynamo with a charge lamp, a return by wire, a connector within the harness, a fuse that is far too
/// small in number. Common practice, no source.
/// </summary>
public class DescribedSupplyTests
{
    private const string Layout = """
        vehicle-layout: Small trailer
        root: box
        zones: { hot: { ambient: 80 degC } }
        openings: { wall: { shape: 30 x 50 mm, holds: joint } }
        places:
          box: { at: [0, 0, 600] }
          wall: { at: [-600, 0, 600] }
          rear: { at: [-1500, 200, 600] }
        paths:
          - { from: box, to: wall, measured: 700 mm }
          - { from: wall, to: rear, measured: 1000 mm }

        """;

    private const string Head = """
        harness: Test
        vehicle: Small trailer
        vehicle-layout: layout.yaml
        power:
          ground: negative
          returns-by: wire
          sources:

        """;

    private const string Twins = """
            upper: { kind: battery, nominal: 12 V, at: box, posts: { plus: M8, minus: M8 } }
            lower: { kind: battery, nominal: 12 V, at: box, posts: { plus: M8, minus: M8 } }
            alternator: { kind: alternator, output: 35 A, at: box, studs: { B+: M6, B-: M6 } }

        """;

    private const string Rest = """
        things:
          minus bar: { at: box, bar: 4 studs M8 }
          joint: { at: wall, inline: sealed-4 }
          lamp: { at: rear, plug: sealed-2, pins: [1, 31], lamp: { 1: 48 W }, returns: { 31: minus bar } }
        protection:
          main: { kind: bolt-in, at: box }
          F1: { kind: blade, at: box }
        circuits:
          link: { from: upper.minus, feeds: lower.plus, unfused: short }
          ground: { from: lower.minus, to: minus bar }
          machine ground: { from: alternator.B-, to: minus bar }
          feed: { from: upper.plus, feeds: main, unfused: short }
          charge: { from: alternator.B+, feeds: main.out, protected-by: main }
          lamp feed: { from: main, feeds: F1, live: always }
          lamp: { route-by: [F1, joint, lamp.1], live: always }

        """;

    /// <summary>48 W at 24 V are 2 A, at 12 V they would be 4; twins written in either order are the same.</summary>
    [Theory]
    [InlineData("", "")]
    [InlineData("upper", "lower")]
    public void Two_batteries_in_series_are_one_of_the_sum_of_their_volts(string one, string other)
    {
        var twins = one.Length == 0 ? Twins : string.Join('\n', Twins.Split('\n').OrderBy(l => !l.Contains($"{other}:", StringComparison.Ordinal)).ThenBy(l => !l.Contains($"{one}:", StringComparison.Ordinal)).Where(l => l.Length > 0)) + "\n";
        var plan = Of(Head + twins + Rest);
        Assert.Equal(24, plan.Plan.Harness.Power.NominalV);
        Assert.Equal(24, plan.Plan.Harness.Power.Sources.Single(s => s.Id == "alternator").NominalV);
        Assert.All(plan.Plan.Harness.Circuits.Where(c => !c.IsReturn && c.Id != "link"), c => Assert.Equal(24, c.NominalV));
        Assert.InRange(plan.Plan.Fuses.Single(f => f.Id == "F1").LoadA!.Value, 1.8, 2.2);
        Assert.InRange(Volts(plan, "upper.plus"), 23, 27);
        Assert.InRange(Volts(plan, "lower.plus"), 11, 14);
        Assert.InRange(Volts(plan, "lamp.1"), 22, 27);
        Assert.Equal(0, Volts(plan, "lower.minus"), 6);
        Assert.DoesNotContain(plan.Findings, f => f.Rule is "nominal-volts-differ" or "on-but-dead" or "sources-joined-unfused");
    }

    [Fact]
    public void Two_batteries_side_by_side_have_the_volts_of_one()
    {
        var plan = Of(Head + Twins + Rest.Replace("  link: { from: upper.minus, feeds: lower.plus,", "  second: { from: upper.minus, to: minus bar }\n  link: { from: upper.plus, feeds: lower.plus,", StringComparison.Ordinal));
        Assert.Equal(12, plan.Plan.Harness.Power.NominalV);
        Assert.InRange(plan.Plan.Fuses.Single(f => f.Id == "F1").LoadA!.Value, 3.6, 4.4);
    }

    [Fact]
    public void A_connector_within_the_harness_needs_no_cavity_named_and_takes_two_wires_face_to_face()
    {
        var plan = Of(Head + Twins + Rest);
        var ends = plan.Plan.Wires.Where(w => w.Circuit == "lamp").SelectMany(w => new[] { w.From, w.To }).Where(e => e.At == "joint").ToList();
        Assert.Equal(2, ends.Count);
        Assert.Single(ends.Select(e => e.Pin).Distinct());
        Assert.DoesNotContain(plan.Findings, f => f.Rule is "two-wires-in-cavity" or "grommet-closed-in");
    }

    [Fact]
    public void A_named_cavity_of_a_connector_within_the_harness_is_kept()
    {
        var plan = Of(Head + Twins + Rest.Replace("joint, lamp.1]", "joint.3, lamp.1]", StringComparison.Ordinal)).Plan;
        Assert.All(plan.Wires.Where(w => w.Circuit == "lamp").SelectMany(w => new[] { w.From, w.To }).Where(e => e.At == "joint"), e => Assert.Equal("3", e.Pin));
    }

    /// <summary>One cause, one finding, and a cure that fits a body that returns nothing.</summary>
    [Fact]
    public void Loads_that_lack_a_ground_point_are_one_finding()
    {
        var plan = Of(Head + Twins + Rest.Replace("returns: { 31: minus bar }", "returns: 31", StringComparison.Ordinal).Replace("  lamp: { at", "  horn: { at: rear, blades: { 1: 6.3 mm, 31: 6.3 mm }, coil: { 1: 2 A }, returns: 31 }\n  lamp: { at", StringComparison.Ordinal).Replace("  lamp: { route-by", "  horn: { from: F1, feeds: horn.1 }\n  lamp: { route-by", StringComparison.Ordinal));
        var found = Assert.Single(plan.Findings, f => f.Rule is "no-ground-point" or "no-return");
        Assert.Contains("horn 31 and lamp 31 must be wired to ground", found.Message, StringComparison.Ordinal);
        Assert.Contains("returns: { 31: minus bar }", found.Cure, StringComparison.Ordinal);
    }

    private const string Dynamo = """
            battery: { kind: battery, nominal: 12 V, at: box, posts: { plus: M8, minus: M8 } }
            dynamo: { kind: dynamo, output: 22 A, at: box, studs: { D: M6, E: M6 } }

        """;

    private const string Charging = """
        things:
          minus bar: { at: box, bar: 4 studs M8 }
          lamp: { at: box, blades: { 1: 6.3 mm, 2: 6.3 mm }, lamp: { 1: 2 W } }
          key: { at: box, blades: { 30: 6.3 mm, 15: 6.3 mm }, switch: { 30: 15 } }
          coil: { at: rear, blades: { 1: 6.3 mm, 2: 6.3 mm }, coil: { 1: 4 A }, returns: { 2: minus bar } }
        protection:
          main: { kind: bolt-in, at: box }
          F1: { kind: blade, at: box }
        circuits:
          ground: { from: battery.minus, to: minus bar }
          machine ground: { from: dynamo.E, to: minus bar }
          feed: { from: battery.plus, feeds: main, unfused: short }
          charge: { from: dynamo.D, feeds: main.out, protected-by: main }
          key feed: { from: main, feeds: F1, live: always }
          key supply: { from: F1, feeds: key.30, live: always }
          coil: { from: key.15, feeds: coil.1, protected-by: F1 }
          lamp supply: { from: key.15, feeds: lamp.1, protected-by: F1 }
          charge lamp: { from: lamp.2, feeds: dynamo.D, protected-by: F1 }

        """;

    /// <summary>The charge passes the main fuse; that of the lamp's wire carries 2 W, and the lamp goes out when the machine gives.</summary>
    [Fact]
    public void A_charge_lamp_at_the_dynamo_is_no_charge_lead_and_no_dead_load()
    {
        var plan = Of(Head + Dynamo + Charging);
        Assert.True(plan.Plan.Fuses.Single(f => f.Id == "F1").RatingA < 22);
        Assert.DoesNotContain(plan.Findings, f => f.Rule is "alternator-fuse-small" or "on-but-dead");
    }

    [Fact]
    public void A_charge_fuse_under_the_output_is_still_told()
    {
        var plan = Of(Head + Dynamo + Charging.Replace("main: { kind: bolt-in,", "main: { kind: bolt-in, rating: 20 A,", StringComparison.Ordinal));
        Assert.Contains(plan.Findings, f => f.Rule == "alternator-fuse-small" && f.Message.Contains("its fuse main is 20 A", StringComparison.Ordinal));
    }

    /// <summary>Wires that one large fuse makes too thick for their terminals are one finding with all of them.</summary>
    [Fact]
    public void Wires_too_thick_for_their_terminals_by_one_fuse_are_one_finding()
    {
        var plan = Of(Head + Dynamo + Charging.Replace("F1: { kind: blade,", "F1: { kind: blade, rating: 40 A,", StringComparison.Ordinal), Layout.Replace("measured: 1000 mm", "measured: 1000 mm, zone: hot", StringComparison.Ordinal).Replace("measured: 700 mm", "measured: 700 mm, zone: hot", StringComparison.Ordinal).Replace("{ at: [0, 0, 600] }", "{ at: [0, 0, 600], zone: hot }", StringComparison.Ordinal));
        var found = plan.Findings.Where(f => f.Rule == "no-terminal-fits" && f.Where.Contains("F1")).ToList();
        var one = Assert.Single(found);
        Assert.Contains("wires behind F1 are larger than every terminal of their pins takes, because each must bear its 40 A", one.Message, StringComparison.Ordinal);
        Assert.Contains("mm²", one.Message, StringComparison.Ordinal);
        Assert.True(one.Where.Count(w => plan.Plan.Wires.Any(x => x.Id == w)) > 1);
    }

    private static double Volts(CheckedPlan plan, string node) => plan.Plan.Nodes.Single(n => n.Node == node).Volts["ignition on"]!.Value;

    private static CheckedPlan Of(string description, string layout = Layout)
    {
        var files = new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["a.yaml"] = description, ["layout.yaml"] = layout });
        var outcome = HarnessCompiler.Plan("a.yaml", files, RuleSettings.BuiltIn);
        Assert.Empty(outcome.Diagnostics.Select(d => $"{d.At?.Line}:{d.At?.Column}: {d.Code}: {d.Message}"));
        return outcome.Value!;
    }
}
