namespace HarnessDraw.Writing.Starter;

/// <summary>The circuits of a first description: what feeds what.</summary>
internal static class StarterCircuits
{
    public static void Write(YamlText text, StarterAnswers answers)
    {
        var (feeds, grounded) = answers.Ground == "negative" ? ("plus", "minus") : ("minus", "plus");

        // the starter's current comes back by them: as thick as its cable usually is
        var ground = answers.Voltage == "6" ? "70 mm2" : "50 mm2";
        text.Lines($$"""
            circuits:                   # routes, sizes, splices, cavities and colours that are left out are worked out
              # power
              starter cable: { from: battery.{{feeds}}, feeds: [starter.B], duty: momentary, live: always, colour: RD, wire-type: cross-linked-125, unfused: 'starter lead is exempt, sleeved and booted' }
              bus bar feed: { from: battery.{{feeds}}, feeds: [bus bar], live: always, colour: RD, wire-type: cross-linked-125, unfused: 'under 180 mm from the battery post, sheathed end to end' }
              battery ground: { from: battery.{{grounded}}, to: engine ground, colour: BK, size: {{ground}} }
              engine strap: { from: body ground, to: engine ground, colour: BK, size: {{ground}} }
            """);
        Panels(text, answers);
        Charging(text, answers);
        Engine(text, answers);
        Lighting(text, answers);
    }

    /// <summary>Circuits that only lead to fuses behind the light switch, by the state in which they are on; without them the cabin's own wiring does it.</summary>
    public static (string Always, string Dipped, string Main) BeforeLampFuses(StarterAnswers answers) =>
        answers.BuildsAll ? ("parking feed, ", ", beam feed, dipped feed", ", beam feed, main beam feed") : ("", "", "");

    /// <summary>At 6 V, or on the battery alone, the contacts of a firewall connector take most of the 3 % of a critical circuit; so do switches and fuses where all is built.</summary>
    private static string Importance(StarterAnswers answers) => answers.Voltage == "6" || answers.Charging == "none" || answers.BuildsAll ? "ordinary" : "critical";

    private static string Through(StarterAnswers answers, string half) => answers.BuildsAll ? "" : $"enters-by: firewall, half: {half}, ";

    private static void Panels(YamlText text, StarterAnswers answers)
    {
        var lamps = answers.Lamps != "none";
        if (!answers.BuildsAll)
        {
            text.Lines("  ignition panel feed: { from: F1, enters-by: firewall, half: engine, feeds: [ignition fuses], live: always, draws: 15 A }");
            text.LineIf(lamps, "  lamp panel feed: { from: F2, enters-by: firewall, half: engine, feeds: [lamp fuses], live: always, draws: 20 A }");
            return;
        }

        text.Lines($$"""
              ignition feed: { from: F1, feeds: [ignition switch.30], live: always }
              ignition fuse feed: { from: ignition switch.15, feeds: [ignition fuses], live: run, protected-by: F1 }
              start feed: { from: K5, feeds: [start button.1], duty: momentary, live: run }
              warning lamp feed: { from: K7, feeds: [oil lamp.15, coolant lamp.15{{(answers.Charging == "exciter" ? ", charge lamp.15" : "")}}], live: run }
            """);
        text.LineIf(lamps, """
              light switch feed: { from: F2, feeds: [light switch.30], live: always }
              beam feed: { from: light switch.56, feeds: [dip switch.56], live: always, protected-by: F2 }
              dipped feed: { from: dip switch.56b, feeds: [dipped fuses], live: always, protected-by: F2 }
              main beam feed: { from: dip switch.56a, feeds: [main beam fuses], live: always, protected-by: F2 }
              parking feed: { from: light switch.58, feeds: [parking fuses], live: always, protected-by: F2 }
              flasher feed: { from: K17, feeds: [flasher.49], duty: intermittent, live: run }
              turn switch feed: { from: flasher.49a, feeds: [turn switch.49a], duty: intermittent, live: run, protected-by: K17 }
            """);
    }

    private static void Charging(YamlText text, StarterAnswers answers)
    {
        text.LineIf(answers.Charging is "exciter" or "single-wire", $"  charge lead: {{ from: alternator.{(answers.Ground == "positive" ? "B-" : "B+")}, feeds: [F3.out], colour: RD, wire-type: cross-linked-125, live: always, protected-by: F3 }}");
        text.LineIf(answers.Charging == "exciter", $"  exciter: {{ from: charge lamp.D, {Through(answers, "engine")}feeds: [alternator.L], live: run, protected-by: K7 }}");
        text.LineIf(answers.Charging == "dynamo", "  charge lead: { from: dynamo.D+, feeds: [F3.out], colour: RD, wire-type: cross-linked-125, live: always, protected-by: F3 }");
    }

    private static void Engine(YamlText text, StarterAnswers answers)
    {
        var (engine, front) = (Through(answers, "engine"), Through(answers, "front lighting"));
        var (start, oil, coolant, horn) = answers.BuildsAll ? ("start button.2", "oil lamp.G", "coolant lamp.G", "run") : ("ignition switch.50", "gauges.oil", "gauges.coolant", "always");
        text.Lines($$"""

              # engine
              start trigger: { from: {{start}}, {{engine}}feeds: [starter.S], duty: momentary, live: start, protected-by: K5 }
              coil feed: { from: K6, {{engine}}feeds: [ignition coil.15], live: run, importance: {{Importance(answers)}} }
              oil signal: { from: {{oil}}, {{engine}}feeds: [oil sender], duty: signal, live: run, protected-by: K7 }
              coolant signal: { from: {{coolant}}, {{engine}}feeds: [coolant sender], duty: signal, live: run, protected-by: K7 }
              horn feed: { from: K8, {{front}}feeds: [horn.1], duty: momentary, live: {{horn}} }
            """);
        text.LineIf(answers.Heating == "blower", answers.BuildsAll
            ? "  blower switch feed: { from: K9, feeds: [blower switch.1], live: always }\n  blower feed: { from: blower switch.2, feeds: [blower.1], live: run, protected-by: K9 }"
            : $"  blower feed: {{ from: K9, {engine}feeds: [blower.1], live: run }}");
        text.LineIf(answers.CoolingFan == "electric", $$"""
              fan feed: { from: F4, feeds: [fan relay.30], live: always, colour: RD }
              fan motor: { from: fan relay.87, feeds: [fan.1], live: run, protected-by: F4 }
              fan trigger: { from: K7, {{front}}feeds: [fan relay.86], triggers-only: yes, live: run }
            """);
    }

    private static void Lighting(YamlText text, StarterAnswers answers)
    {
        if (answers.Lamps == "none")
        {
            return;
        }

        var (front, importance) = (Through(answers, "front lighting"), Importance(answers));
        var (left, right, live) = answers.BuildsAll ? ("turn switch.L", "turn switch.R", "run, protected-by: K17") : ("K17", "K17", "always");
        text.Lines($$"""

              # front lighting: each side has its own fuse, so that one fault does not put out both lamps
              dipped beam left: { from: K11, {{front}}feeds: [headlamp left.56b], live: always, importance: {{importance}} }
              dipped beam right: { from: K12, {{front}}feeds: [headlamp right.56b], live: always, importance: {{importance}} }
              main beam left: { from: K13, {{front}}feeds: [headlamp left.56a], live: always, importance: {{importance}} }
              main beam right: { from: K14, {{front}}feeds: [headlamp right.56a], live: always, importance: {{importance}} }
              parking lamp left: { from: K15, {{front}}feeds: [parking lamp left.1], live: always, importance: {{importance}} }
              parking lamp right: { from: K16, {{front}}feeds: [parking lamp right.1], live: always, importance: {{importance}} }
              turn left: { from: {{left}}, {{front}}feeds: [turn lamp left.1], duty: intermittent, live: {{live}} }
              turn right: { from: {{right}}, {{front}}feeds: [turn lamp right.1], duty: intermittent, live: {{live}} }
            """);
        text.LineIf(answers.Lamps == "four", $$"""
              inner main beam left: { from: K18, {{front}}feeds: [main lamp left.1], live: always }
              inner main beam right: { from: K19, {{front}}feeds: [main lamp right.1], live: always }
            """);
    }
}
