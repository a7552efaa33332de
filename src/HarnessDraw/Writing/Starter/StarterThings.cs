namespace HarnessDraw.Writing.Starter;

/// <summary>The loads, switches, studs and ground points of a first description.</summary>
internal static class StarterThings
{
    public static void Write(YamlText text, StarterAnswers answers)
    {
        text.Lines($$"""
            things:                     # whatever wires end in, and where it sits
            """);
        text.LineIf(!answers.BuildsAll, "  firewall: { at: pass-through, mate: bulkhead-44, halves: { engine: A, front lighting: B } }");
        text.Lines($$"""
              bus bar: { at: battery tray, bar: 4 studs M8, torque: 9 Nm }
              starter: { at: starter, stud: { B: M8 }, blades: { S: 6.3 mm }, motor: { B: {{StarterCurrent(answers)}} }, coil: { S: 60 W }, grounds-itself: yes, torque: 9 Nm }
              engine ground: { at: starter, ground: M10, on: engine, torque: 22 Nm, note: 'bare boss, star washer' }
              body ground: { at: wing rear, ground: M8, torque: 9 Nm, note: 'bare metal, seal after' }
              front ground: { at: wing front, ground: M8, torque: 9 Nm, note: 'bare metal, seal after' }
              ignition coil: { at: wing rear, studs: { '15': M4, '1': M4 }, coil: { '15': {{CoilPower(answers)}} }, grounds-itself: yes, torque: 1.5 Nm }
              oil sender: { at: thermostat, blade: 6.3 mm, sender: 40 ohm, grounds-itself: yes }
              coolant sender: { at: thermostat, blade: 6.3 mm, sender: 40 ohm, grounds-itself: yes }
              horn: { at: horn, plug: power-2, coil: { '1': 50 W }, returns: '2' }
            """);
        text.LineIf(answers.Heating == "blower", "  blower: { at: heater box, plug: motor-2, motor: { '1': " + (answers.Voltage == "6" ? "15 W" : "70 W") + " }, returns: '2' }");
        if (answers.CoolingFan == "electric")
        {
            var fan = answers.Voltage == "6" ? "25 W" : "100 W";
            text.Lines($$"""
                  fan relay: { at: wing front, plug: relay-4-heavy, relay: { coil: ['86', '85'], makes: ['30', '87'], coil-draws: 2 W, contact: 40 A, suppression: resistor }, returns: '85' }
                  fan: { at: radiator, plug: motor-2, motor: { '1': {{fan}} }, returns: '2' }
                """);
        }

        if (answers.Lamps != "none")
        {
            var (main, dipped) = answers.Voltage == "6" ? ("25 W", "25 W") : ("40 W", "35 W");
            text.Lines($$"""
                  left lamp ground: { at: left lamps, ground: M6, torque: 6 Nm, note: 'bare metal, seal after' }
                  right lamp ground: { at: right lamps, ground: M6, torque: 6 Nm, note: 'bare metal, seal after' }
                  headlamp left: { at: left lamps, plug: lamp-3, beams: { 56a: {{main}}, 56b: {{dipped}} }, returns: '31' }
                  headlamp right: { at: right lamps, plug: lamp-3, beams: { 56a: {{main}}, 56b: {{dipped}} }, returns: '31' }
                  parking lamp left: { at: left lamps, plug: lamp-2, lamp: { '1': 5 W }, returns: '2' }
                  parking lamp right: { at: right lamps, plug: lamp-2, lamp: { '1': 5 W }, returns: '2' }
                  turn lamp left: { at: left lamps, plug: sealed-2, lamp: { '1': 21 W }, returns: '2' }
                  turn lamp right: { at: right lamps, plug: sealed-2, lamp: { '1': 21 W }, returns: '2' }
                """);
            text.LineIf(answers.Lamps == "four", "  main lamp left: { at: left lamps, plug: motor-2, lamp: { '1': " + (answers.Voltage == "6" ? "12 W" : "40 W") + " }, returns: '2' }");
            text.LineIf(answers.Lamps == "four", "  main lamp right: { at: right lamps, plug: motor-2, lamp: { '1': " + (answers.Voltage == "6" ? "12 W" : "40 W") + " }, returns: '2' }");
        }

        if (answers.BuildsAll)
        {
            AtDash(text, answers);
        }
        else
        {
            InCabin(text, answers);
        }

        text.Lines("");
    }

    private static void InCabin(YamlText text, StarterAnswers answers)
    {
        text.Lines("""

              # what stays in the cabin: named so that the wires know where they come from
              lamp fuses: { at: dash, side: cabin, kind: fuse panel, stud: M6 }
              ignition fuses: { at: dash, side: cabin, kind: fuse panel, stud: M6 }
              ignition switch: { at: dash, side: cabin, switch: { '30': ['15', '50'] } }
              gauges: { at: dash, side: cabin, kind: load, pins: [oil, coolant] }
            """);
        text.LineIf(answers.Charging == "exciter", "  charge lamp: { at: dash, side: cabin, pins: [15, D], lamp: { 15: 2 W } }");
    }

    private static void AtDash(YamlText text, StarterAnswers answers)
    {
        text.Lines("""

              # the driver's place: everything there is built too
              ignition switch: { at: dash, studs: { '30': M5, '15': M5 }, switch: { '30': '15' }, contact: 40 A, torque: 2 Nm }
              start button: { at: dash, blades: { '1': 6.3 mm, '2': 6.3 mm }, switch: { '1': '2' }, contact: 20 A }
              ignition fuses: { at: dash, kind: fuse panel, stud: M6, torque: 6 Nm }
              oil lamp: { at: dash, blades: { '15': 6.3 mm, G: 6.3 mm }, lamp: { '15': 2 W } }
              coolant lamp: { at: dash, blades: { '15': 6.3 mm, G: 6.3 mm }, lamp: { '15': 2 W } }
            """);
        text.LineIf(answers.Heating == "blower", "  blower switch: { at: dash, studs: { '1': M4, '2': M4 }, switch: { '1': '2' }, contact: 15 A, torque: 1.5 Nm }");
        text.LineIf(answers.Charging == "exciter", "  charge lamp: { at: dash, blades: { '15': 6.3 mm, D: 6.3 mm }, lamp: { '15': 2 W } }");
        text.LineIf(answers.Lamps != "none", """
              light switch: { at: dash, studs: { '30': M5, '56': M5, '58': M5 }, switch: { '30': ['56', '58'] }, contact: 30 A, torque: 2 Nm }
              dip switch: { at: dash, studs: { '56': M5, 56a: M5, 56b: M5 }, switch: { '56': [56a, 56b] }, contact: 30 A, torque: 2 Nm }
              dipped fuses: { at: dash, kind: fuse panel, stud: M6, torque: 6 Nm }
              main beam fuses: { at: dash, kind: fuse panel, stud: M6, torque: 6 Nm }
              parking fuses: { at: dash, kind: fuse panel, stud: M6, torque: 6 Nm }
              flasher: { at: dash, blades: { '49': 6.3 mm, 49a: 6.3 mm }, switch: { '49': 49a }, contact: 10 A }
              turn switch: { at: dash, blades: { 49a: 6.3 mm, L: 6.3 mm, R: 6.3 mm }, switch: { 49a: [L, R] }, contact: 10 A }
            """);
    }

    /// <summary>Power of an ignition coil with its ballast; common practice, no source.</summary>
    private static string CoilPower(StarterAnswers answers) => answers.Voltage == "6" ? "18 W" : "40 W";

    /// <summary>Cranking current of a small engine; common practice, no source.</summary>
    private static string StarterCurrent(StarterAnswers answers) => answers.Voltage == "24" ? "80 A" : "150 A";
}
