namespace HarnessDraw.Writing.Starter;

/// <summary>The circuits of a first description: what feeds what.</summary>
internal static class StarterCircuits
{
    public static void Write(YamlText text, StarterAnswers answers)
    {
        var importance = Importance(answers);
        var (feeds, grounded) = answers.Ground == "negative" ? ("plus", "minus") : ("minus", "plus");

        // the starter's current comes back by them: as thick as its cable usually is
        var ground = answers.Voltage == "6" ? "70 mm2" : "50 mm2";
        text.Lines($$"""
            circuits:                   # routes, sizes, splices, cavities and colours that are left out are worked out
              # power
              starter cable: { from: battery.{{feeds}}, feeds: [starter.B], duty: momentary, live: always, colour: RD, wire-type: cross-linked-125, unfused: 'starter lead is exempt, sleeved and booted' }
              bus bar feed: { from: starter.B, feeds: [bus bar], live: always, colour: RD, wire-type: cross-linked-125, unfused: 'under 1 m from the starter stud, sheathed end to end' }
              battery ground: { from: battery.{{grounded}}, to: engine ground, colour: BK, size: {{ground}} }
              engine strap: { from: body ground, to: engine ground, colour: BK, size: {{ground}} }
              ignition panel feed: { from: F1, enters-by: firewall, half: engine, feeds: [ignition fuses], live: always, draws: 15 A }
            """);
        text.LineIf(answers.Lamps != "none", "  lamp panel feed: { from: F2, enters-by: firewall, half: engine, feeds: [lamp fuses], live: always, draws: 20 A }");
        Charging(text, answers);
        text.Lines($$"""

              # engine
              start trigger: { from: ignition switch.50, enters-by: firewall, half: engine, feeds: [starter.S], duty: momentary, live: start, protected-by: K5 }
              coil feed: { from: K6, enters-by: firewall, half: engine, feeds: [ignition coil.15], live: run, importance: {{importance}} }
              oil signal: { from: gauges.oil, enters-by: firewall, half: engine, feeds: [oil sender], duty: signal, live: run, protected-by: K7 }
              coolant signal: { from: gauges.coolant, enters-by: firewall, half: engine, feeds: [coolant sender], duty: signal, live: run, protected-by: K7 }
              horn feed: { from: K8, enters-by: firewall, half: front lighting, feeds: [horn.1], duty: momentary, live: always }
            """);
        text.LineIf(answers.Heating == "blower", "  blower feed: { from: K9, enters-by: firewall, half: engine, feeds: [blower.1], live: run }");
        if (answers.CoolingFan == "electric")
        {
            text.Lines("""
                  fan feed: { from: F4, feeds: [fan relay.30], live: always }
                  fan motor: { from: fan relay.87, feeds: [fan.1], live: run, protected-by: F4 }
                  fan trigger: { from: K7, enters-by: firewall, half: front lighting, feeds: [fan relay.86], triggers-only: yes, live: run }
                """);
        }

        Lighting(text, answers);
    }

    /// <summary>At 6 V, or on the battery alone, the contacts of a firewall connector take most of the 3 % of a critical circuit.</summary>
    private static string Importance(StarterAnswers answers) => answers.Voltage == "6" || answers.Charging == "none" ? "ordinary" : "critical";

    private static void Charging(YamlText text, StarterAnswers answers)
    {
        text.LineIf(answers.Charging is "exciter" or "single-wire", $"  charge lead: {{ from: alternator.{(answers.Ground == "positive" ? "B-" : "B+")}, feeds: [F3.out], colour: RD, wire-type: cross-linked-125, live: always, protected-by: F3 }}");
        text.LineIf(answers.Charging == "exciter", "  exciter: { from: charge lamp.D, enters-by: firewall, half: engine, feeds: [alternator.L], live: run, protected-by: K7 }");
        text.LineIf(answers.Charging == "dynamo", "  charge lead: { from: dynamo.D+, feeds: [F3.out], colour: RD, wire-type: cross-linked-125, live: always, protected-by: F3 }");
    }

    private static void Lighting(YamlText text, StarterAnswers answers)
    {
        if (answers.Lamps == "none")
        {
            return;
        }

        var importance = Importance(answers);
        text.Lines($$"""

              # front lighting: each side has its own fuse, so that one fault does not put out both lamps
              dipped beam left: { from: K11, enters-by: firewall, half: front lighting, feeds: [headlamp left.56b], live: always, importance: {{importance}} }
              dipped beam right: { from: K12, enters-by: firewall, half: front lighting, feeds: [headlamp right.56b], live: always, importance: {{importance}} }
              main beam left: { from: K13, enters-by: firewall, half: front lighting, feeds: [headlamp left.56a], live: always, importance: {{importance}} }
              main beam right: { from: K14, enters-by: firewall, half: front lighting, feeds: [headlamp right.56a], live: always, importance: {{importance}} }
              parking lamps: { from: K15, enters-by: firewall, half: front lighting, feeds: [parking lamp left.1, parking lamp right.1], live: always, importance: {{importance}} }
              turn left: { from: K16, enters-by: firewall, half: front lighting, feeds: [turn lamp left.1], duty: intermittent, live: always }
              turn right: { from: K16, enters-by: firewall, half: front lighting, feeds: [turn lamp right.1], duty: intermittent, live: always }
            """);
        text.LineIf(answers.Lamps == "four", "  inner main beam left: { from: K17, enters-by: firewall, half: front lighting, feeds: [main lamp left.1], live: always }\n  inner main beam right: { from: K18, enters-by: firewall, half: front lighting, feeds: [main lamp right.1], live: always }");
    }
}
