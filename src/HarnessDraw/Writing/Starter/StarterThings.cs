namespace HarnessDraw.Writing.Starter;

/// <summary>The loads, switches, studs and ground points of a first description.</summary>
internal static class StarterThings
{
    public static void Write(YamlText text, StarterAnswers answers)
    {
        text.Lines($$"""
            things:                     # whatever wires end in, and where it sits
              firewall: { at: pass-through, mate: bulkhead-44, halves: { engine: A, front lighting: B } }
              bus bar: { at: wing rear, bar: 4 studs M8, torque: 9 Nm }
              starter: { at: starter, stud: { B: M8 }, blades: { S: 6.3 mm }, motor: { B: {{StarterCurrent(answers)}} }, coil: { S: 60 W }, grounds-itself: yes, torque: 9 Nm }
              engine ground: { at: starter, ground: M10, on: engine, torque: 22 Nm, note: 'bare boss, star washer' }
              body ground: { at: wing rear, ground: M8, torque: 9 Nm, note: 'bare metal, seal after' }
              front ground: { at: wing front, ground: M8, torque: 9 Nm, note: 'bare metal, seal after' }
              ignition coil: { at: wing rear, studs: { '15': M4, '1': M4 }, coil: { '15': {{CoilPower(answers)}} }, grounds-itself: yes, torque: 1.5 Nm }
              oil sender: { at: thermostat, blade: 6.3 mm, sender: 40 ohm, grounds-itself: yes }
              coolant sender: { at: thermostat, blade: 6.3 mm, sender: 40 ohm, grounds-itself: yes }
              horn: { at: horn, blades: { '1': 6.3 mm, '31': 6.3 mm }, coil: { '1': 50 W }, returns: '31' }
            """);
        text.LineIf(answers.Heating == "blower", "  blower: { at: heater box, plug: motor-2, motor: { '1': " + (answers.Voltage == "6" ? "15 W" : "70 W") + " }, returns: '2' }");
        if (answers.CoolingFan == "electric")
        {
            var fan = answers.Voltage == "6" ? "25 W" : "100 W";
            text.Lines($$"""
                  fan relay: { at: wing front, plug: relay-4-heavy, relay: { coil: ['86', '85'], makes: ['30', '87'], coil-draws: 2 W, contact: 40 A, suppression: resistor }, returns: '85' }
                  fan: { at: radiator, plug: power-2, motor: { '1': {{fan}} }, returns: '2' }
                """);
        }

        if (answers.Lamps != "none")
        {
            var (main, dipped) = answers.Voltage == "6" ? ("25 W", "25 W") : ("40 W", "35 W");
            text.Lines($$"""
                  headlamp left: { at: left lamps, plug: lamp-3, beams: { 56a: {{main}}, 56b: {{dipped}} }, returns: '31' }
                  headlamp right: { at: right lamps, plug: lamp-3, beams: { 56a: {{main}}, 56b: {{dipped}} }, returns: '31' }
                  parking lamp left: { at: left lamps, plug: lamp-2, lamp: { '1': 5 W }, returns: '2' }
                  parking lamp right: { at: right lamps, plug: lamp-2, lamp: { '1': 5 W }, returns: '2' }
                  turn lamp left: { at: left lamps, plug: lamp-2, lamp: { '1': 21 W }, returns: '2' }
                  turn lamp right: { at: right lamps, plug: lamp-2, lamp: { '1': 21 W }, returns: '2' }
                """);
            text.LineIf(answers.Lamps == "four", "  main lamp left: { at: left lamps, plug: motor-2, lamp: { '1': " + (answers.Voltage == "6" ? "12 W" : "40 W") + " }, returns: '2' }");
            text.LineIf(answers.Lamps == "four", "  main lamp right: { at: right lamps, plug: motor-2, lamp: { '1': " + (answers.Voltage == "6" ? "12 W" : "40 W") + " }, returns: '2' }");
        }

        text.Lines("""

              # what stays in the cabin: named so that the wires know where they come from
              lamp fuses: { at: dash, side: cabin, kind: fuse panel, stud: M6 }
              ignition fuses: { at: dash, side: cabin, kind: fuse panel, stud: M6 }
              ignition switch: { at: dash, side: cabin, switch: { '30': ['15', '50'] } }
              gauges: { at: dash, side: cabin, kind: load, pins: [oil, coolant] }
            """);
        text.LineIf(answers.Charging == "exciter", "  charge lamp: { at: dash, side: cabin, pins: [15, D], lamp: { 15: 2 W } }");
        text.Lines("");
    }

    /// <summary>Power of an ignition coil with its ballast; common practice, no source.</summary>
    private static string CoilPower(StarterAnswers answers) => answers.Voltage == "6" ? "18 W" : "40 W";

    /// <summary>Cranking current of a small engine; common practice, no source.</summary>
    private static string StarterCurrent(StarterAnswers answers) => answers.Voltage == "24" ? "80 A" : "150 A";
}
