namespace HarnessDraw.Writing.Starter;

/// <summary>A first harness description with comments that say what to change; it draws as it is.</summary>
public static class StarterDescription
{
    public static string Write(StarterAnswers answers, string layoutFile)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var text = new YamlText();
        Head(text, answers, layoutFile);
        Power(text, answers);
        States(text, answers);
        StarterThings.Write(text, answers);
        Protection(text, answers);
        StarterCircuits.Write(text, answers);
        return text.ToString();
    }

    private static void Head(YamlText text, StarterAnswers answers, string layoutFile) => text.Lines($"""
        # A first description. It draws at once; then change it line by line to what your vehicle has.
        # All values are typical ones, not those of your vehicle: read name plates, measure, and check before you build.
        # Every quantity has its unit. Lines after '#' are remarks.
        harness: {YamlText.Quoted($"{answers.Name}, {(answers.BuildsAll ? "whole harness" : "engine bay and front lighting")}")}
        vehicle: {YamlText.Quoted(answers.Name)}
        sheet-title: {"{"} number: '1', revisions: [{"{"} rev: A, on: not dated, what: First draft {"}"}] {"}"}
        vehicle-layout: {YamlText.Quoted(layoutFile)}
        unknown-allowed: yes        # a measurement may be 'unknown': it becomes an open question

        """);

    private static void Power(YamlText text, StarterAnswers answers)
    {
        text.Lines($$"""
            power:
              ground: {{answers.Ground}}          # the pole that is joined to the body
              returns-by: body          # 'wire' where the body is glass fibre or wood
              sources:
                battery: { kind: battery, nominal: {{answers.Voltage}} V, at: battery tray, posts: { plus: M8, minus: M8 }, torque: 10 Nm }
            """);
        // with positive ground only an alternator whose case is no pole will do
        var poles = answers.Ground == "positive" ? "studs: { B-: M6, B+: M6 }, returns: B+" : "studs: { B+: M6 }, grounds-itself: yes";
        switch (answers.Charging)
        {
            case "exciter":
                text.Lines($$"""    alternator: { kind: alternator, output: {{OutputA(answers)}}, at: generator, {{poles}}, blades: { L: 6.3 mm }, draws: { L: 0.2 A }, torque: 5 Nm }""");
                break;
            case "single-wire":
                text.Lines($$"""    alternator: { kind: alternator, output: {{OutputA(answers)}}, at: generator, {{poles}}, torque: 5 Nm }""");
                break;
            case "dynamo":
                text.Lines("    dynamo: { kind: dynamo, output: 25 A, at: generator, studs: { D+: M6 }, grounds-itself: yes, torque: 5 Nm }");
                break;
        }

        text.Lines("");
    }

    /// <summary>Output of a small alternator; at 6 V of one for a small 6 V vehicle: more would lose more on its way than the 0.15 V that a charge lead may. Common practice, no source.</summary>
    private static string OutputA(StarterAnswers answers) => answers.Voltage == "6" ? "25 A" : "45 A";

    // dipped and main beam are never on together, nor are the turn lamps of both sides: each has its own state
    private static void States(YamlText text, StarterAnswers answers)
    {
        if (answers.Lamps == "none")
        {
            return;
        }

        var before = StarterCircuits.BeforeLampFuses(answers);

        // what follows the key alone is named in no state: a state that names it would switch it off in all others
        var running = $"{(answers.Heating == "blower" ? "blower feed, " : "")}{before.Always}parking lamp left, parking lamp right";
        var inner = answers.Lamps == "four" ? ", inner main beam left, inner main beam right" : "";
        text.Lines($$"""
            states:                     # what is on together; the worst of them sizes wires and fuses
              night and rain: { key: run, engine: running, on: [{{running}}, dipped beam left, dipped beam right, turn left{{before.Dipped}}] }
              main beam: { key: run, engine: running, on: [{{running}}, main beam left, main beam right{{inner}}, turn right{{before.Main}}] }

            """);
    }

    private static void Protection(YamlText text, StarterAnswers answers)
    {
        text.Lines("""
            protection:                 # leave the rating out and it is worked out; give it and it is checked
              F1: { kind: bolt-in, on: bus bar }
            """);
        text.LineIf(answers.Lamps != "none", "  F2: { kind: bolt-in, on: bus bar }");
        text.LineIf(answers.Charging != "none", "  F3: { kind: bolt-in, on: bus bar }");
        text.LineIf(answers.CoolingFan == "electric", "  F4: { kind: bolt-in, on: bus bar }");
        var ignition = new[] { 5, 6, 7, 8 }.Concat(answers.Heating == "blower" ? [9] : []);
        var lamps = answers.Lamps switch { "two" => Enumerable.Range(11, 7), "four" => Enumerable.Range(11, 9), _ => [] };
        foreach (var number in ignition.Concat(lamps))
        {
            text.Lines($"  K{number}: {{ kind: blade, {PanelOf(answers, number)} }}");
        }

        text.Lines("");
    }

    // where all is built, a switch stands before a panel and not behind it
    private static string PanelOf(StarterAnswers answers, int fuse) => (answers.BuildsAll, fuse) switch
    {
        // past the ignition switch, which at 6 V would take too much of the blower's volts
        (true, 9) => "on: bus bar",
        (_, < 10) or (true, 17) => "on: ignition fuses",
        (false, _) => "on: lamp fuses",
        (true, 11 or 12) => "on: dipped fuses",
        (true, 15 or 16) => "on: parking fuses",
        _ => "on: main beam fuses",
    };
}
