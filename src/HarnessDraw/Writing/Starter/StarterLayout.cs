namespace HarnessDraw.Writing.Starter;

/// <summary>A first vehicle layout: an engine bay with estimated runs, to be measured and changed.</summary>
public static class StarterLayout
{
    public static string Write(StarterAnswers answers)
    {
        ArgumentNullException.ThrowIfNull(answers);
        var text = new YamlText();
        text.Lines($"""
            # The vehicle seen from above. Numbers are mm: x from the {(answers.BuildsAll ? "dash" : "firewall")} towards the nose, y to the vehicle's right, z up.
            # Every run below is an estimate: lay a string along the real route, tape it at the branches, and change
            # 'estimated' to 'measured'. 'measured: unknown' is allowed too when the description says 'unknown-allowed: yes'.
            vehicle-layout: {YamlText.Quoted(answers.BuildsAll ? answers.Name : $"{answers.Name}, engine bay")}
            root: {$"{answers.Root}",-12}          # stations are measured from here
            """);
        text.LineIf(!answers.BuildsAll, """
            openings:
              pass-through: { shape: 74 x 114 mm, panel: firewall, holds: firewall }
            """);
        text.Lines("");
        Places(text, answers);
        Paths(text, answers);
        text.Lines("""

            zones:                      # highest temperature and what may reach a wire
              wet: { ambient: 60 degC, exposure: spray }
              engine: { ambient: 85 degC, exposure: splash }
            surfaces: { body: steel, engine: iron }
            keep-clear: [{ what: exhaust, at: [450, 330, 250], by: 100 mm }]
            outline:                    # drawn behind the harness; an SVG file beside this one does as well
              - { line: body, closed: yes, points: [[-60, -700], [900, -700], [1180, -640], [1220, 0], [1180, 640], [900, 700], [-60, 700]] }
              - { line: engine, closed: yes, points: [[150, -170], [780, -170], [780, 170], [150, 170]] }
            """);
        return text.ToString();
    }

    private static void Places(YamlText text, StarterAnswers answers)
    {
        text.Lines($$"""
            places:
              {{answers.Root}}: { at: [0, -300, 640] }
              wing rear: { at: [80, -600, 700], zone: wet, branch: POWER }
              battery tray: { at: [260, -600, 640], zone: wet }
              wing front: { at: [860, -600, 640], zone: wet }
              engine rear: { at: [160, -60, 700], zone: engine }
              starter: { at: [260, -180, 260], zone: engine, branch: STARTER }
              thermostat: { at: [640, -40, 640], zone: engine, branch: ENGINE }
              horn: { at: [1060, -420, 520], zone: wet, branch: HORN }
            """);
        text.LineIf(answers.Charging != "none", "  generator: { at: [720, 170, 420], zone: engine, branch: CHARGING }");
        text.LineIf(answers.Heating == "blower", "  heater box: { at: [30, 260, 700], zone: wet, branch: HEATER }");
        text.LineIf(answers.CoolingFan == "electric", "  radiator: { at: [1040, -140, 480], zone: wet, branch: FAN }");
        text.LineIf(answers.Lamps != "none", "  left lamps: { at: [1140, -540, 600], zone: wet, branch: LEFT LAMPS }");
        text.LineIf(answers.Lamps != "none", "  right lamps: { at: [1140, 540, 600], zone: wet, branch: RIGHT LAMPS }");
        text.Lines("");
    }

    private static void Paths(YamlText text, StarterAnswers answers)
    {
        text.Lines($$"""
            paths:
              - { from: {{answers.Root}}, to: wing rear, estimated: 400 mm, clips-every: 150 mm, zone: wet }
              - { from: wing rear, to: battery tray, estimated: 220 mm, clips-every: 200 mm, zone: wet }
              - { from: wing rear, to: wing front, estimated: 820 mm, clips-every: 200 mm, zone: wet }
              - { from: {{answers.Root}}, to: engine rear, estimated: 420 mm, clips-every: 150 mm, zone: engine, moves: 15 mm }
              - { from: engine rear, to: starter, estimated: 560 mm, clips-every: 150 mm, zone: engine }
              - { from: battery tray, to: starter, estimated: 800 mm, clips-every: 200 mm, zone: engine, moves: 15 mm }
              - { from: engine rear, to: thermostat, estimated: 540 mm, clips-every: 150 mm, zone: engine }
              - { from: wing front, to: horn, estimated: 340 mm, clips-every: 150 mm, zone: wet }
            """);
        text.LineIf(answers.Charging != "none", "  - { from: thermostat, to: generator, estimated: 360 mm, clips-every: 150 mm, zone: engine }");
        text.LineIf(answers.Heating == "blower", $"  - {{ from: {answers.Root}, to: heater box, estimated: 600 mm, clips-every: 150 mm, zone: wet }}");
        text.LineIf(answers.CoolingFan == "electric", "  - { from: horn, to: radiator, estimated: 320 mm, clips-every: 150 mm, zone: wet }");
        text.LineIf(answers.Lamps != "none", "  - { from: wing front, to: left lamps, estimated: 320 mm, clips-every: 150 mm, zone: wet }");
        text.LineIf(answers.Lamps != "none", "  - { from: left lamps, to: right lamps, estimated: 1100 mm, clips-every: 200 mm, zone: wet }");
    }
}
