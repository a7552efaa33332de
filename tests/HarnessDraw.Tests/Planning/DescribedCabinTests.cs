using HarnessDraw.Checking;
using HarnessDraw.Planning;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Planning;

/// <summary>
/// Harnesses as a beginner writes them: what the description says of the cabin counts, whether its side is made or kept, and what it leaves open is chosen so that the
/// rules are content with it. Common practice, no source.
/// </summary>
public class DescribedCabinTests
{
    private const string Layout = """
        vehicle-layout: Small truck
        root: pass
        openings: { pass: { shape: 74 x 114 mm, panel: firewall, holds: firewall } }
        places:
          pass: { at: [0, 0, 700] }
          bay: { at: [500, 300, 700] }
          dash: { at: [-300, 200, 700] }
        paths:
          - { from: pass, to: bay, measured: 800 mm }
          - { from: pass, to: dash, measured: 500 mm }
        surfaces: { body: steel, engine: iron }

        """;

    private const string Head = """
        harness: Test
        vehicle: Small truck
        vehicle-layout: layout.yaml
        power:
          sources:
            battery: { kind: battery, nominal: VOLTS V, at: bay, posts: { plus: M8, minus: M8 } }

        """;

    private const string Things = """
        things:
          ground bay: { at: bay, ground: M8 }
          ground dash: { at: dash, side: cabin, ground: M8 }
          bus bar: { at: bay, bar: 3 studs M8 }
          firewall: { at: pass, mate: bulkhead-24, halves: { engine: A, lighting: B }, builds: bay }
          box: { at: dash, side: cabin, kind: fuse panel, stud: M6 }
          push: { at: dash, side: cabin, blades: { 1: 6.3 mm, 2: 6.3 mm }, switch: { 1: 2 } }
          horn: { at: bay, blade: 6.3 mm, coil: 4 A, grounds-itself: yes }
          blower switch: { at: dash, side: cabin, plug: plain-3, pins: [P, L, H], switch: { P: [L, H] } }
          blower: { at: dash, side: cabin, plug: plain-3, motor: { 1: 4 A, 2: 8 A }, returns: 3 }

        """;

    private const string Rest = """
        protection:
          F1: { kind: bolt-in, on: bus bar }
          K1: { kind: blade, on: box }
          K2: { kind: blade, on: box }
        circuits:
          bar feed: { from: battery, feeds: bus bar, unfused: short }
          battery ground: { from: battery.minus, to: ground bay }
          box feed: { from: F1, enters-by: firewall, feeds: box, live: always }
          horn supply: { from: K1, feeds: push.1, live: always, duty: momentary }
          horn feed: { from: push.2, enters-by: firewall, feeds: horn, live: always, duty: momentary, protected-by: K1 }
          blower supply: { from: K2, feeds: blower switch.P, live: run }
          blower low: { from: blower switch.L, feeds: blower.1, live: run, protected-by: K2 }
          blower high: { from: blower switch.H, feeds: blower.2, live: run, protected-by: K2 }

        """;

    private const string BothSides = "builds: both sides";

    [Theory]
    [InlineData("builds: bay")]
    [InlineData(BothSides)]
    public void Fuses_in_the_cabin_carry_what_lies_behind_their_switches(string builds)
    {
        var plan = Of(Head + Things.Replace("builds: bay", builds, StringComparison.Ordinal) + Rest);
        Assert.Empty(plan.Findings.Where(f => f.Rule is "on-but-dead" or "fuse-overloaded" or "fuse-load-high"));
        Assert.InRange(Fuse(plan, "K1").LoadA!.Value, 3.5, 4.5);
        // two speeds of one motor: the faster alone
        Assert.InRange(Fuse(plan, "K2").LoadA!.Value, 7, 9);
        Assert.InRange(Fuse(plan, "F1").LoadA!.Value, 11, 13);
        Assert.Equal(15, Fuse(plan, "K2").RatingA);
    }

    [Fact]
    public void A_circuit_of_a_mate_made_on_both_sides_passes_its_contact_once()
    {
        var plan = Of(Head + Things.Replace("builds: bay", BothSides, StringComparison.Ordinal) + Rest);
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "firewall-passes");
        Assert.All(plan.Findings.Where(f => f.Rule == "loop-drop"), f => Assert.DoesNotContain("kept", f.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void Where_the_cabin_is_made_its_loads_get_wires_to_a_ground_on_their_side()
    {
        Assert.DoesNotContain(Of(Head + Things + Rest).Plan.Wires, w => w.Circuit == "blower ground");
        var wire = Assert.Single(Of(Head + Things.Replace("builds: bay", BothSides, StringComparison.Ordinal) + Rest).Plan.Wires, w => w.Circuit == "blower ground");
        Assert.Equal(["blower", "ground dash"], new[] { wire.From.At, wire.To.At }.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_fuse_panel_behind_the_key_feeds_its_fuses()
    {
        var text = Head + Things.Replace("  push:", "  key: { at: dash, side: cabin, plug: plain-3, pins: [30, 15], switch: { 30: 15 } }\n  main: { at: dash, side: cabin, stud: M6 }\n  push:", StringComparison.Ordinal)
            + Rest.Replace("  box feed: { from: F1, enters-by: firewall, feeds: box, live: always }", "  key feed: { from: F1, enters-by: firewall, feeds: key.30, live: always }\n  box feed: { from: key.15, feeds: box, live: run, protected-by: F1 }", StringComparison.Ordinal);
        var plan = Of(text);
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "on-but-dead" && f.Message.Contains("horn", StringComparison.Ordinal) && f.Message.Contains("'running'", StringComparison.Ordinal));
        Assert.InRange(Fuse(plan, "F1").LoadA!.Value, 11, 13);
    }

    /// <summary>A load behind a converter is made for what the converter gives: 5 A stay 5 A.</summary>
    [Fact]
    public void Loads_behind_a_converter_have_its_volts()
    {
        var text = Head.Replace("VOLTS", "24", StringComparison.Ordinal) + "  converters:\n    converter: { fed-from: battery, nominal: 12 V, output: 20 A, at: bay, studs: { in: M6, out: M6 }, grounds-itself: yes }\n"
            + Things.Replace("  push:", "  radio: { at: bay, plug: plain-2, draws: { 1: 5 A }, returns: 2 }\n  push:", StringComparison.Ordinal)
            + Rest.Replace("  K1:", "  F2: { kind: blade, at: bay }\n  K1:", StringComparison.Ordinal)
            + "  converter feed: { from: F1, feeds: converter.in, live: always }\n  island: { from: converter.out, feeds: F2.in, live: always, unfused: short }\n  radio: { from: F2, feeds: radio.1, live: always }\n";
        Assert.InRange(Fuse(Of(text), "F2").LoadA!.Value, 4.5, 5.5);
    }

    private const string Starter = """
          starter: { at: bay, stud: { B: M8 }, blades: { S: 6.3 mm }, motor: { B: 130 A }, coil: { S: 10 A }, grounds-itself: yes }
          engine ground: { at: bay, ground: M10, on: engine }
          push:
        """;

    private static string WithStarter => Head + Things.Replace("  push:", Starter, StringComparison.Ordinal) + Rest.Replace("  K2:", "  K3: { kind: blade, on: box }\n  K2:", StringComparison.Ordinal) + """
          starter cable: { from: battery.plus, feeds: starter.B, duty: momentary, live: always, unfused: booted }
          start: { from: K3, enters-by: firewall, feeds: starter.S, duty: momentary, live: start }
          strap: { from: ground bay, to: engine ground }

        """;

    [Fact]
    public void The_fuse_of_a_solenoid_bears_it_while_the_starter_turns()
    {
        var fuse = Fuse(Of(WithStarter), "K3");
        Assert.InRange(fuse.LoadA!.Value, 9, 11);
        Assert.Equal("cranking", fuse.LoadState);
        Assert.True(fuse.RatingA >= 10, $"{fuse.RatingA} A: {fuse.Why}");
    }

    [Fact]
    public void Straps_left_open_are_as_thick_as_the_feed_that_returns_by_them()
    {
        var plan = Of(WithStarter);
        var feed = Assert.Single(plan.Plan.Wires, w => w.Circuit == "starter cable");
        Assert.All(plan.Plan.Wires.Where(w => w.Circuit is "strap" or "battery ground"), w => Assert.True(w.AreaMm2 >= feed.AreaMm2, $"{w.Circuit} {w.AreaMm2} under {feed.AreaMm2}"));
        Assert.DoesNotContain(plan.Findings, f => f.Rule == "strap-small");
    }

    /// <summary>The starter's current goes from the engine straight to the battery; by the strap to the body it goes where that cable is loose. Common practice, no source.</summary>
    [Fact]
    public void A_strap_that_no_starting_current_passes_follows_the_starter_cable()
    {
        var wires = Of(WithStarter.Replace("to: ground bay }", "to: engine ground }", StringComparison.Ordinal)).Plan.Wires;
        var (cable, strap) = (wires.Single(w => w.Circuit == "starter cable"), wires.Single(w => w.Circuit == "strap"));
        // of the 130 A of the motor none: what it carries is the fuse panel's
        Assert.InRange(strap.Worst!.CurrentA, 1, 60);
        Assert.Equal(cable.AreaMm2, strap.AreaMm2);
        Assert.Equal("unfused cable", strap.DecidedBy);
    }

    [Fact]
    public void A_warning_switch_without_its_lamp_is_a_dead_short_and_told_as_one()
    {
        var text = Head + Things.Replace("  push:", "  gauges: { at: dash, side: cabin, kind: load, pins: [brake] }\n  brake fluid: { at: bay, plug: sender-2, switch: { 1: 2 }, returns: 2 }\n  push:", StringComparison.Ordinal)
            + Rest + "  brake signal: { from: gauges.brake, enters-by: firewall, feeds: brake fluid.1, duty: signal, live: run, protected-by: K1 }\n";
        var found = Assert.Single(Of(text).Findings, f => f.Rule == "dead-short");
        Assert.Contains("'brake signal' joins the live pole to ground at brake fluid with no load between", found.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Of(text.Replace("switch: { 1: 2 }, returns: 2 }", "sender: { 1: 50 ohm }, returns: 2 }", StringComparison.Ordinal)).Findings, f => f.Rule == "dead-short");
    }

    /// <summary>The lamp and the exciter share the volts: what the one has the other has not lost.</summary>
    [Fact]
    public void A_charge_lamp_in_series_with_the_exciter_loses_nothing_to_it()
    {
        var text = Head + "    alternator: { kind: alternator, output: 45 A, at: bay, studs: { B+: M6 }, blades: { L: 6.3 mm }, draws: { L: 0.25 A }, grounds-itself: yes }\n"
            + Things.Replace("  push:", "  charge lamp: { at: dash, side: cabin, blades: { 15: 6.3 mm, D: 6.3 mm }, lamp: { 15: 2 W } }\n  push:", StringComparison.Ordinal)
            + Rest + "  lamp supply: { from: K2, feeds: charge lamp.15, live: run }\n  exciter: { from: charge lamp.D, enters-by: firewall, feeds: alternator.L, live: run, protected-by: K2 }\n";
        Assert.DoesNotContain(Of(text).Findings, f => f.Rule == "loop-drop" && f.Message.StartsWith("charge lamp", StringComparison.Ordinal));
    }

    private static FuseChoice Fuse(CheckedPlan plan, string id) => plan.Plan.Fuses.Single(f => f.Id == id);

    private static CheckedPlan Of(string description)
    {
        var files = new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["a.yaml"] = description.Replace("VOLTS", "12", StringComparison.Ordinal), ["layout.yaml"] = Layout });
        var outcome = HarnessCompiler.Plan("a.yaml", files, RuleSettings.BuiltIn);
        Assert.Empty(outcome.Diagnostics.Select(d => $"{d.At?.Line}:{d.At?.Column}: {d.Code}: {d.Message}"));
        return outcome.Value!;
    }
}
