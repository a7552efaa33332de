namespace HarnessDraw.Tests.Cli;

/// <summary>A fault sown into the small harness that 'new' writes: the rule that finds it, and what is replaced in the description and in the layout.</summary>
public sealed record CureSeed(string Rule, (string From, string To)[] Description, (string From, string To)[] Layout)
{
    public override string ToString() => Rule;
}

/// <summary>A fault for each kind of cure.</summary>
internal static class CureSeeds
{
    public static CureSeed[] All { get; } =
    [
        Of("fuse-above-contact", [("blower feed: { from: K9, enters-by: firewall, half: engine,", "blower feed: { from: K9, enters-by: firewall, cavity: A12, size: 1 mm2,"), ("  K9: { kind: blade,", "  K9: { kind: blade, rating: 15 A,")]),
        Of("short-will-not-open-fuse", [("  blower feed: {", "  blower feed: { size: 0.75 mm2,"), ("  K9: { kind: blade,", "  K9: { kind: blade, rating: 15 A,")], layout: [("to: heater box, estimated: 600 mm", "to: heater box, estimated: 9000 mm")]),
        Of("fusible-link-size", [("F4: { kind: bolt-in, on: bus bar }", "F4: { kind: fusible link, on: bus bar, rating: 30 A, link-size: 6 mm2, link-length: 150 mm }")]),
        Of("fusible-link-size", [("F4: { kind: bolt-in, on: bus bar }", "F4: { kind: fusible link, on: bus bar, rating: 30 A, link-length: 400 mm }")]),
        Of("fusible-link-in-cabin", [("K9: { kind: blade, on: ignition fuses }", "K9: { kind: fusible link, on: ignition fuses }")]),
        Of("unfused-too-long", [("  F4: { kind: bolt-in, on: bus bar }", "  F4: { kind: bolt-in, at: radiator }"), ("  fan feed: {", "  fan bar feed: { from: bus bar, feeds: [F4.in], live: always }\n  fan feed: {")]),
        Of("sources-joined-unfused", [("motor: { B: 150 A }, ", ""), ("    alternator: {", "    second battery: { kind: battery, nominal: 12 V, at: battery tray, posts: { plus: M8, minus: M8 }, torque: 10 Nm }\n    alternator: {"), ("  engine strap: {", "  second ground: { from: second battery.minus, to: engine ground, colour: BK, size: 70 mm2 }\n  link lead: { from: battery.plus, feeds: [second battery.plus], live: always, colour: RD, size: 70 mm2 }\n  engine strap: {")]),
        Of("shared-lamp-fuse", [("feeds: [parking lamp left.1]", "feeds: [parking lamp left.1, parking lamp right.1]"), ("  parking lamp right: { from: K16, enters-by: firewall, half: front lighting, feeds: [parking lamp right.1], live: always, importance: critical }\n", ""), ("parking lamp left, parking lamp right, ", "parking lamp left, "), ("  K16: { kind: blade, on: lamp fuses }\n", "")]),
        Of("critical-with-nuisance", [("  blower feed: { from: K9,", "  blower feed: { from: K6,")]),
        Of("cranking-sag", [("at: battery tray, posts", "at: battery tray, internal: 30 mohm, posts")]),
        Of("cross-linked-in-fuel", [("  oil signal: {", "  oil signal: { wire-type: cross-linked-125,")], layout: [("engine: { ambient: 85 degC, exposure: splash }", "engine: { ambient: 85 degC, exposure: fuel }")]),
        Of("cross-linked-replaced", [("  oil signal: {", "  oil signal: { replaces: cross-linked-125,")]),
        Of("insulation-below-zone", layout: [("engine: { ambient: 85 degC", "engine: { ambient: 110 degC")]),
        Of("no-terminal-fits", [("  oil signal: {", "  oil signal: { size: 0.35 mm2,")]),
        Of("no-terminal-fits", [("  K15: { kind: blade,", "  K15: { kind: blade, rating: 30 A,")]),
        Of("size-not-in-catalogue", [("  oil signal: {", "  oil signal: { size: 16 AWG,")]),
        Of("fuse-far-above-load", [("  K15: { kind: blade,", "  K15: { kind: blade, rating: 15 A,")]),
        Of("two-wires-on-blade", [("  blower feed: {", "  test lead: { from: ignition coil.1, feeds: [oil sender], size: 2.5 mm2, live: run, protected-by: K7 }\n  blower feed: {")]),
        Of("contact-overloaded", [("blower feed: { from: K9, enters-by: firewall, half: engine,", "blower feed: { from: K9, enters-by: firewall, cavity: A12,"), ("motor: { '1': 70 W }", "motor: { '1': 110 W }")]),
        Of("live-beside-sender", [("horn feed: { from: K8, enters-by: firewall, half: front lighting,", "horn feed: { from: K8, enters-by: firewall, cavity: A12,"), ("oil signal: { from: gauges.oil, enters-by: firewall, half: engine,", "oil signal: { from: gauges.oil, enters-by: firewall, cavity: A13,")]),
        Of("left-beside-right", [("dipped beam left: { from: K11, enters-by: firewall, half: front lighting,", "dipped beam left: { from: K11, enters-by: firewall, cavity: B2,"), ("main beam left: { from: K13, enters-by: firewall, half: front lighting,", "main beam left: { from: K13, enters-by: firewall, cavity: B3,")]),
        Of("keep-apart-broken", [("circuits:  ", "keep-apart: [[horn feed, fan trigger]]\ncircuits:  "), ("horn feed: { from: K8, enters-by: firewall, half: front lighting,", "horn feed: { from: K8, enters-by: firewall, cavity: B9,"), ("fan trigger: { from: K7, enters-by: firewall, half: front lighting,", "fan trigger: { from: K7, enters-by: firewall, cavity: B10,")]),
        Of("two-wires-in-cavity", [("coolant signal: { from: gauges.coolant, enters-by: firewall, half: engine,", "coolant signal: { from: gauges.coolant, enters-by: firewall, cavity: A16,"), ("oil signal: { from: gauges.oil, enters-by: firewall, half: engine,", "oil signal: { from: gauges.oil, enters-by: firewall, cavity: A14,"), ("horn feed: { from: K8, enters-by: firewall, half: front lighting,", "horn feed: { from: K8, enters-by: firewall, cavity: B9,"), ("fan trigger: { from: K7, enters-by: firewall, half: front lighting,", "fan trigger: { from: K7, enters-by: firewall, cavity: B9,")]),
        Of("wrong-half", [("horn feed: { from: K8, enters-by: firewall, half: front lighting,", "horn feed: { from: K8, enters-by: firewall, half: front lighting, cavity: A12,")]),
        Of("net-differs-across-mate", [("horn feed: { from: K8, enters-by: firewall, half: front lighting,", "horn feed: { from: K8, enters-by: firewall, cavity: B9,"), ("circuits:  ", "kept:\n  pins:\n    B9: { comes-from: K7 }\n    B10: { comes-from: K8 }\n\ncircuits:  "), ("fan trigger: { from: K7, enters-by: firewall, half: front lighting,", "fan trigger: { from: K7, enters-by: firewall, cavity: B10,")]),
        Of("live-pins-bare", [("plug: relay-4-heavy,", "plug: relay-4-heavy, contacts: pins,")]),
        Of("colour-changes-at-firewall", [("circuits:  ", "kept:\n  pins:\n    B9: { comes-from: K8, colour: GY }\n\ncircuits:  "), ("horn feed: { from: K8, enters-by: firewall, half: front lighting,", "horn feed: { from: K8, enters-by: firewall, half: front lighting, cavity: B9, colour: VT,")]),
        Of("seal-does-not-grip", [("  blower feed: {", "  blower feed: { size: 10 mm2,")]),
        Of("no-return", [("horn: { at: horn, plug: power-2, coil: { '1': 50 W }, returns: '2' }", "horn: { at: horn, plug: power-2, coil: { '1': 50 W } }")]),
        Of("no-return", [("parking lamp left: { at: left lamps, plug: lamp-2, lamp: { '1': 5 W }, returns: '2' }", "parking lamp left: { at: left lamps, plug: lamp-2, lamp: { '1': 5 W } }")]),
        Of("return-through-non-metal", [("front ground: { at: wing front, ground: M8,", "front ground: { at: wing front, on: wing, ground: M8,")], layout: [("surfaces: { body: steel", "surfaces: { wing: glass fibre, body: steel")]),
        Of("battery-not-bonded", [("  battery ground: { from: battery.minus, to: engine ground, colour: BK, size: 50 mm2 }\n", "")]),
        Of("ground-crowded", NoLampGrounds),
        Of("ground-back-feed", [.. NoLampGrounds, ("coil: { '1': 50 W }, returns: '2' }", "coil: { '1': 50 W }, returns: { '2': body ground } }"), ("main beam right, turn right]", "main beam right, turn left]"), ("  front ground: {", "  lamp ground: { at: left lamps, ground: M8, on: body, torque: 9 Nm, note: bare }\n  front ground: {"), ("  parking lamp left: { at: left lamps, plug: lamp-2, lamp: { '1': 5 W }, returns: '2' }", "  parking lamp left: { at: left lamps, plug: lamp-2, lamp: { '1': 5 W }, returns: { '2': lamp ground } }"), ("  turn lamp left: { at: left lamps, plug: sealed-2, lamp: { '1': 21 W }, returns: '2' }", "  turn lamp left: { at: left lamps, plug: sealed-2, lamp: { '1': 21 W }, returns: { '2': lamp ground } }"), ("  turn lamp right: { at: right lamps, plug: sealed-2, lamp: { '1': 21 W }, returns: '2' }", "  turn lamp right: { at: right lamps, plug: sealed-2, lamp: { '1': 21 W }, returns: { '2': front ground } }"), ("feeds: [turn lamp left.1], duty: intermittent, live: always }", "feeds: [turn lamp left.1, turn lamp right.1], duty: intermittent, live: always }"), ("  turn right: { from: K17, enters-by: firewall, half: front lighting, feeds: [turn lamp right.1], duty: intermittent, live: always }\n", "")]),
        Of("trigger-feeds-load", [("  fan trigger: { from: K7, enters-by: firewall, half: front lighting, feeds: [fan relay.86],", "  fan trigger: { from: K7, enters-by: firewall, half: front lighting, feeds: [fan.1],"), ("  fan motor: { from: fan relay.87, feeds: [fan.1], live: run, protected-by: F4 }\n", "")]),
        Of("headlamps-through-switch", [("circuits:  ", "kept:\n  pins: { B5: { comes-from: K11, through: [lamp switch], adds: 60 mohm } }\n\ncircuits:  "), ("  gauges: {", "  lamp switch: { at: dash, side: cabin, switch: { '30': ['56'] } }\n  gauges: {"), ("dipped beam left: { from: K11, enters-by: firewall, half: front lighting,", "dipped beam left: { from: K11, enters-by: firewall, cavity: B5,")]),
        Of("coil-above-contact", [("ignition switch: { at: dash, side: cabin, switch: { '30': ['15', '50'] } }", "ignition switch: { at: dash, side: cabin, switch: { '30': ['15', '50'] }, contact: 4 A }")]),
        Of("ammeter-below-output", [("  charge lead: { from: alternator.B+, feeds: [F3.out], colour: RD, wire-type: cross-linked-125, live: always, protected-by: F3 }", "  charge lead: { from: alternator.B+, feeds: [ammeter.A], colour: RD, wire-type: cross-linked-125, live: always, protected-by: F3 }\n  ammeter lead: { from: ammeter.B, feeds: [F3.out], colour: RD, wire-type: cross-linked-125, live: always, protected-by: F3 }"), ("  engine ground: {", "  ammeter: { at: wing rear, kind: switch, switch: { A: [B] }, studs: { A: M6, B: M6 }, contact: 30 A, torque: 5 Nm }\n  engine ground: {")]),
        Of("coil-unsuppressed", [("suppression: resistor", "suppression: none")]),
        Of("diode-reversed", [("suppression: resistor }", "suppression: resistor }, diode: ['86', '85']")]),
        Of("one-wire-keeps-exciter", [("states:  ", "options:\n  charging: { one of: [exciter, single wire], usual: exciter }\n\nstates:  ")]),
        Of("motor-fed-twice", [("states:  ", "options:\n  heat: { one of: [plain, fast], usual: plain }\n\nstates:  "), ("  fan feed: {", "  blower fast: { from: K9, enters-by: firewall, half: engine, feeds: [blower.1], live: run, only-with: { heat: fast } }\n  fan feed: {")]),
        Of("flasher-underloaded", [("  gauges: {", "  flasher: { at: dash, side: cabin, kind: load, pins: [in, L], least-load: 1.5 A }\n  gauges: {"), ("  turn left: { from: K17,", "  turn left: { from: flasher.L, protected-by: K17,"), ("turn lamp left: { at: left lamps, plug: sealed-2, lamp: { '1': 21 W }", "turn lamp left: { at: left lamps, plug: sealed-2, lamp: { '1': 3 W }")]),
        Of("signal-beside-charge-lead", [("  blower feed: {", "  tachometer: { from: gauges.tacho, enters-by: firewall, half: engine, feeds: [alternator.W], duty: signal, live: run, protected-by: K7 }\n  blower feed: {"), ("pins: [oil, coolant]", "pins: [oil, coolant, tacho]"), ("blades: { L: 6.3 mm }", "blades: { L: 6.3 mm, W: 6.3 mm }")]),
        Of("key-off-drain", [("  gauges: {", "  clock: { at: radiator, plug: lamp-2, electronics: { '1': 0.2 A }, returns: '2' }\n  gauges: {"), ("  blower feed: {", "  clock feed: { from: K8, enters-by: firewall, half: front lighting, feeds: [clock.1], live: always }\n  blower feed: {")]),
        Of("green-yellow-used", [("  oil signal: {", "  oil signal: { colour: GN/YE,")]),
        Of("exciter-run-on", [("  exciter: { from: charge lamp.D,", "  exciter: { from: ignition switch.15,")]),
    ];

    // the lamps of both sides then go to the ground point of the wing
    private static (string From, string To)[] NoLampGrounds => [.. new[] { "left", "right" }.Select(s => ($"  {s} lamp ground: {{ at: {s} lamps, ground: M6, torque: 6 Nm, note: 'bare metal, seal after' }}\n", ""))];

    private static CureSeed Of(string rule, (string From, string To)[]? description = null, (string From, string To)[]? layout = null) => new(rule, description ?? [], layout ?? []);
}
