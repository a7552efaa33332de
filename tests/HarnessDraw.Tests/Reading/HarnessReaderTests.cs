using HarnessDraw.Model;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Reading;

public class HarnessReaderTests
{
    private static readonly SmallVehicle Usual = new();

    private static Harness WithCircuits(string circuits, string rest = "") => (Usual with { Circuits = "circuits:\n" + circuits + "\n", Rest = rest }).Harness();

    private static Harness WithThings(string things) => (Usual with { Things = "things:\n  bus bar: { at: tray, bar: 3 studs M8 }\n" + things + "\n", Circuits = "circuits: {}\n", Protection = "" }).Harness();

    [Theory]
    [InlineData("brackmere-six")]
    [InlineData("dunmarrow-18")]
    [InlineData("aldervane-coach")]
    public void The_shipped_examples_are_read_without_a_message(string name)
    {
        var outcome = HarnessReader.Read(Repository.PathOf("examples", name + ".yaml"), new DiskFiles());
        Assert.Empty(outcome.Diagnostics.Select(d => $"{d.At?.File}:{d.At?.Line}:{d.At?.Column} {d.Code} {d.Message}"));
        Assert.All(outcome.Value!.Nets, n => Assert.NotEmpty(n.Ends));
    }

    [Theory]
    [InlineData("dynamo", true)]
    [InlineData("alternator", false)]
    public void A_dynamo_is_known_by_its_kind(string kind, bool isDynamo)
    {
        var usual = new SmallVehicle();
        var charger = (usual with { Power = usual.Power.TrimEnd() + $"\n    charger: {{ kind: {kind}, output: 20 A, at: wing, studs: {{ D: M6 }}, grounds-itself: yes }}\n" }).Harness().Power.Sources.Single(s => s.Id == "charger");
        Assert.Equal((SourceKind.Alternator, isDynamo), (charger.Kind, charger.IsDynamo));
    }

    [Fact]
    public void A_circuit_from_the_cabin_becomes_a_net_from_the_mate_to_its_loads_in_the_bay()
    {
        var harness = WithCircuits("  dipped beam: { from: F7, enters-by: firewall, cavity: B9, feeds: [headlamp left.56b, horn.1], half: lighting }");
        var net = Assert.Single(harness.Nets);
        Assert.Equal(new PinRef("firewall", null), net.Root);
        Assert.Equal("B9", net.FixedCavity);
        Assert.Equal(["headlamp left.56b", "horn.1"], net.Ends.Select(e => e.ToString()));
        Assert.Equal("B", harness.CircuitOf("dipped beam").Half);
    }

    [Fact]
    public void A_signal_into_the_kept_cabin_needs_no_cabin_pin()
    {
        var net = Assert.Single(WithCircuits("  signal: { from: horn.1, enters-by: firewall, duty: signal }").Nets);
        Assert.Equal("horn.1", net.Root.ToString());
        Assert.Equal([new PinRef("firewall", null)], net.Ends);
    }

    [Fact]
    public void A_route_may_cross_the_firewall_twice_and_feed_several_loads_at_its_end()
    {
        var harness = WithCircuits("  lamps: { route-by: [F1, firewall.A1, light switch.30, light switch.56, firewall], feeds: [headlamp left.56a, headlamp left.56b] }");
        Assert.Equal(["lamps", "lamps:2"], harness.Nets.Select(n => n.Id));
        Assert.Equal("F1.out -> firewall", $"{harness.Nets[0].Root} -> {harness.Nets[0].Ends[0]}");
        Assert.Equal("A1", harness.Nets[0].FixedCavity);
        Assert.Equal(new PinRef("firewall", null), harness.Nets[1].Root);
        Assert.Equal(2, harness.Nets[1].Ends.Length);
        Assert.Equal("firewall", harness.CircuitOf("lamps").EntersBy);
    }

    [Fact]
    public void A_route_through_a_fuse_enters_at_in_and_leaves_at_out()
    {
        var harness = (Usual with { Protection = "protection:\n  F1: { kind: bolt-in, on: bus bar }\n  F2: { kind: blade, at: wing }\n", Circuits = "circuits:\n  a: { route-by: [F1, F2, horn.1] }\n" }).Harness();
        Assert.Equal(["F1.out F2.in", "F2.out horn.1"], harness.Nets.Select(n => $"{n.Root} {n.Ends[0]}"));
    }

    [Fact]
    public void A_mate_that_is_built_on_both_sides_gets_nets_on_both()
    {
        var harness = (Usual with
        {
            Things = Usual.Things.Replace("halves:", "builds: both sides, halves:", StringComparison.Ordinal).Replace("at: dash, side: cabin", "at: pass, side: cabin", StringComparison.Ordinal),
            Protection = Usual.Protection.Replace("at: dash", "at: pass", StringComparison.Ordinal),
        }).Harness();
        Assert.Equal([Side.Cabin, Side.Bay], harness.Nets.Select(n => n.Side));
        Assert.Equal("F7.out -> firewall", $"{harness.Nets[0].Root} -> {harness.Nets[0].Ends[0]}");
    }

    [Fact]
    public void Without_a_mate_all_wires_are_made()
    {
        var harness = (Usual with
        {
            Things = "things:\n  bus bar: { at: tray, bar: 3 studs M8 }\n  lamp: { at: nose, plug: lamp-2, lamp: 5 W, returns: 2 }\n  switch: { at: pass, side: cabin, switch: { 30: 56 } }\n",
            Circuits = "circuits:\n  feed: { from: F1, feeds: switch.30 }\n  lamp: { from: switch.56, feeds: lamp }\n",
            Protection = "protection:\n  F1: { kind: bolt-in, on: bus bar }\n",
        }).Harness();
        Assert.Equal(["F1.out switch.30", "switch.56 lamp.1"], harness.Nets.Select(n => $"{n.Root} {n.Ends[0]}"));
    }

    [Fact]
    public void Wires_given_by_hand_keep_every_word_and_make_a_net_for_each_group()
    {
        var harness = WithCircuits("""
              horn:
                by-hand:
                  - { wire: 012, from: F1, to: horn.1, size: 1.5 mm2, colour: BN/WH, route: [tray, wing, nose], cut: 640 mm }
                  - { wire: 7E05, from: horn.1, to: headlamp left.56a, size: 16 AWG }
                  - { wire: NO, from: horn.2, to: ground left }
            """);
        Assert.Equal(2, harness.Nets.Length);
        Assert.Equal(["012", "7E05"], harness.Nets[0].ByHand.Select(w => w.Id));
        Assert.Equal(640, harness.Nets[0].ByHand[0].CutLengthMm);
        Assert.Equal("16", harness.Nets[0].ByHand[1].Awg);
        Assert.InRange(harness.Nets[0].ByHand[1].AreaMm2!.Value, 1.2, 1.33);
        Assert.Equal("NO", harness.Nets[1].ByHand[0].Id);
    }

    [Fact]
    public void A_twisted_pair_gets_a_net_a_conductor()
    {
        var harness = WithCircuits("  pair: { from: [headlamp left.56a, headlamp left.56b], feeds: [horn.1, horn.2], cable: { twisted: 33 mm, screen: { drain: yes, grounded-at: ground left } } }");
        Assert.Equal(2, harness.Nets.Length);
        var cable = harness.CircuitOf("pair").Cable!;
        Assert.Equal((33.0, true, "ground left.1"), (cable.TwistPitchMm, cable.Screened, cable.ScreenGroundedAt!.ToString()));
    }

    [Fact]
    public void Returns_by_hand_have_their_ground_as_root()
    {
        var harness = WithCircuits("  lamp ground: { from: headlamp left.31, to: ground left }");
        Assert.True(harness.CircuitOf("lamp ground").IsReturn);
        Assert.Equal("ground left.1", Assert.Single(harness.Nets).Root.ToString());
    }

    [Fact]
    public void A_lamp_knows_its_beams_its_return_and_its_side()
    {
        var lamp = Usual.Harness().ThingOf("headlamp left");
        Assert.Equal((ThingKind.Lamp, "HEADLAMP", "L", "lamp-3"), (lamp.Kind, lamp.Label, lamp.SideMark, lamp.ConnectorPart));
        Assert.Equal([(60.0, "56a", "31"), (55.0, "56b", "31")], lamp.Elements.Select(e => (e.PowerW!.Value, e.PinA, e.PinB!)));
        Assert.Equal(new ReturnPin("31", "ground left"), Assert.Single(lamp.Returns));
        Assert.All(lamp.Pins, p => Assert.Equal("6.3", p.Size));
    }

    [Fact]
    public void A_relay_has_a_coil_and_contacts_that_the_coil_works()
    {
        var relay = WithThings("  fan relay: { at: nose, plug: relay-5, relay: { coil: [85, 86], makes: [30, 87], breaks: [30, 87a], coil-draws: 0.17 A, contact: 30 A } }").ThingOf("fan relay");
        Assert.Equal(["coil", "makes 30-87", "breaks 30-87a"], relay.Elements.Select(e => e.Id));
        Assert.Equal(0.17, relay.Elements[0].CurrentA);
        Assert.Equal(("coil", 30.0), (relay.Elements[1].WorkedBy, relay.Elements[1].RatedA!.Value));
        Assert.Equal(5, relay.Pins.Length);
    }

    [Fact]
    public void Pins_may_be_renamed_onto_the_cavities_of_a_plug()
    {
        var pump = WithThings("  pump: { at: nose, plug: lamp-2, pins: { plus: 2, 53: 1 }, motor: { plus: 3 A }, stalls: 9 A, returns: 53 }").ThingOf("pump");
        Assert.Equal([("plus", "2"), ("53", "1")], pump.Pins.Select(p => (p.Name, p.Cavity!)));
        Assert.Equal(9, pump.Elements[0].PeakA);
        Assert.Equal(ThingKind.Motor, pump.Kind);
    }

    [Fact]
    public void Kinds_come_from_keys_and_names()
    {
        var harness = WithThings("""
              starter: { at: nose, stud: { B: M8 }, blades: { S: 6.3 mm } }
              oil sender: { at: nose, blade: 6.3 mm }
              junction: { at: nose, stud: M6 }
              joint: { at: nose, inline: sealed-4 }
              g: { at: nose, ground: M8, on: bonnet, note: bare metal }
              screen: { at: nose, heater: 120 W, blade: 6.3 mm, grounds-itself: yes }
            """);
        Assert.Equal([ThingKind.Starter, ThingKind.Sender, ThingKind.Stud, ThingKind.Inline, ThingKind.GroundPoint, ThingKind.Load], harness.Things.Skip(2).Take(6).Select(t => t.Kind));
        Assert.Equal([ElementKind.Motor, ElementKind.Coil], harness.ThingOf("starter").Elements.Select(e => e.Kind));
        Assert.Equal("bonnet", harness.ThingOf("g").Surface);
        Assert.Null(harness.ThingOf("screen").Elements[0].PinB);
    }

    [Fact]
    public void Unknown_measurements_become_open_questions_when_they_are_allowed()
    {
        var harness = (Usual with { Rest = "unknown-allowed: yes\n", Layout = Usual.Layout.Replace("measured: 500 mm", "measured: unknown", StringComparison.Ordinal) }).Harness();
        Assert.Single(harness.OpenQuestions);
        Assert.Equal((LengthKnown.Unknown, (double?)null), (harness.Layout.Paths[0].Known, harness.Layout.Paths[0].LengthMm));
    }

    [Fact]
    public void The_layout_is_read_in_millimetres_whatever_the_unit()
    {
        var layout = Usual.Harness().Layout;
        Assert.Equal([500, 508, 711.2], layout.Paths.Select(p => Math.Round(p.LengthMm!.Value, 6)));
        Assert.Equal(715, layout.Paths[2].AgainMm);
        Assert.Equal([true, false], layout.Surfaces.Select(s => s.Conducts));
        Assert.Equal((60.0, Exposure.Spray), (layout.Zones[0].AmbientC!.Value, layout.Zones[0].Exposure));
    }

    [Fact]
    public void The_datum_of_an_opening_is_read_in_millimetres_and_may_be_unknown()
    {
        var usual = Usual with { Layout = Usual.Layout + "openings: { pass: { shape: 62 x 98 mm, datum: { from: left seam, across: 5 in, up: 85 mm } } }\n" };
        Assert.Equal(new("left seam", 127, 85), usual.Harness().Layout.Openings[0].Datum);
        var open = (usual with { Rest = "unknown-allowed: yes\n", Layout = usual.Layout.Replace("85 mm", "unknown", StringComparison.Ordinal) }).Harness();
        Assert.Equal(new("left seam", 127, null), open.Layout.Openings[0].Datum);
    }

    [Fact]
    public void An_island_of_12_volts_behind_a_converter_has_its_own_nominal()
    {
        var harness = (Usual with
        {
            Power = "power:\n  sources:\n    battery: { kind: battery, nominal: 24 V, at: tray, posts: { plus: M8, minus: M8 } }\n  converters:\n    down: { fed-from: battery, nominal: 12 V, output: 20 A, at: tray, studs: { in: M6, out: M6 } }\n",
            Circuits = "circuits:\n  horn: { from: down, feeds: horn.1, protected-by: F1 }\n  feed: { from: battery, feeds: bus bar, unfused: short and booted }\n  lamp: { from: F1, feeds: headlamp left.56a }\n",
        }).Harness();
        Assert.Equal([12, 24, 24], harness.Circuits.Select(c => c.NominalV));
        Assert.Equal("short and booted", harness.CircuitOf("feed").UnfusedBecause);
    }

    [Fact]
    public void A_condition_keeps_options_in_order_and_passes_to_the_circuit_from_its_load()
    {
        var harness = (Usual with
        {
            Things = Usual.Things.Replace("horn: { ", "horn: { only-with: { tone: [one, two] }, ", StringComparison.Ordinal),
            Circuits = "circuits:\n  horn: { from: F1, feeds: horn.1 }\n",
            Rest = "options:\n  tone: { one of: [none, one, two], usual: one }\n  rules: [none excludes none]\n".Replace("none excludes none", "one excludes two", StringComparison.Ordinal),
        }).Harness();
        Assert.Equal("tone=one|two", harness.CircuitOf("horn").OnlyWith.ToString());
        Assert.Equal("tone=one|two", harness.Nets[0].OnlyWith.ToString());
        Assert.False(Assert.Single(harness.OptionRules).Needs);
    }

    [Fact]
    public void The_usual_states_name_the_lamps_alone_and_give_way_to_those_described()
    {
        Assert.Equal(["off", "ignition on", "cranking", "running", "night and rain"], Usual.Harness().States.Select(s => s.Id));
        Assert.Equal(["dipped beam"], Usual.Harness().States[^1].On);
        var described = (Usual with { Rest = "states:\n  running: { key: run, engine: running, on: dipped beam }\n" }).Harness();
        Assert.Equal(["dipped beam"], described.States[3].On);
    }

    [Fact]
    public void A_lamp_from_which_a_circuit_goes_on_warns_and_is_no_lamp_of_the_night()
    {
        var harness = (Usual with
        {
            Things = Usual.Things.TrimEnd() + "\n  oil lamp: { at: dash, side: cabin, pins: [15, G], lamp: { 15: 2 W } }\n  oil sender: { at: nose, blade: 6.3 mm, sender: 40 ohm, grounds-itself: yes }\n",
            Circuits = Usual.Circuits + "  warning feed: { from: F7, feeds: oil lamp.15, live: run }\n  oil signal: { from: oil lamp.G, enters-by: firewall, feeds: oil sender, duty: signal, live: run, protected-by: F7 }\n",
        }).Harness();
        Assert.Equal(["dipped beam"], harness.States[^1].On);
    }

    [Fact]
    public void The_hash_changes_with_any_input_file_but_not_with_line_ends()
    {
        var hash = Usual.Harness().SourceHash;
        Assert.Equal(10, hash.Length);
        Assert.Equal(hash, (Usual with { Layout = Usual.Layout.Replace("\n", "\r\n", StringComparison.Ordinal) }).Harness().SourceHash);
        Assert.NotEqual(hash, (Usual with { Layout = Usual.Layout.Replace("500 mm", "501 mm", StringComparison.Ordinal) }).Harness().SourceHash);
    }
}
