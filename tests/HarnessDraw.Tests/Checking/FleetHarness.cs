using System.Globalization;
using System.Text;
using HarnessDraw.Model;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Checking;

/// <summary>One harness in many builds: 64 wires, five options of three choices, two rules between them.</summary>
internal static class FleetHarness
{
    // two wires each, and the two of the battery
    private const int Lamps = 31;

    private const string Layout = """
        vehicle-layout: Small van
        root: pass
        places:
          pass: { at: [0, 0, 600] }
          tray: { at: [200, 300, 700] }
          wing: { at: [600, 500, 650] }
          nose: { at: [1200, 400, 600] }
        paths:
          - { from: pass, to: tray, measured: 500 mm }
          - { from: tray, to: wing, measured: 510 mm }
          - { from: wing, to: nose, measured: 715 mm }

        """;

    /// <param name="firstFuse">Rating of the fuse that three of the lamps hang on.</param>
    public static Harness Read(string firstFuse)
    {
        var text = new StringBuilder("harness: Fleet\nvehicle: Small van\nvehicle-layout: van.yaml\npower:\n  sources:\n    battery: { kind: battery, nominal: 12 V, at: tray, posts: { plus: M8, minus: M8 } }\n");
        text.Append("options:\n  rear: { one of: [plain, tow, lift], usual: plain }\n  roof: { one of: [bare, rack, bar], usual: bare }\n  front: { one of: [none, plough, winch], usual: none }\n  body: { one of: [box, crane, tank], usual: box }\n  cab: { one of: [day, sleeper, crew], usual: day }\n  rules: [tow needs rack, crane excludes plough]\n");
        string?[] only = [null, "rear: tow", "front: plough", "roof: rack", "body: crane", "cab: sleeper"];
        text.Append("things:\n  bus bar: { at: tray, bar: 12 studs M8 }\n  ground left: { at: wing, ground: M8 }\n  ground right: { at: nose, ground: M8 }\n");
        for (var i = 0; i < Lamps; i++)
        {
            var with = only[OptionOf(i)] is { } option ? $", only-with: {{ {option} }}" : "";
            text.Append(CultureInfo.InvariantCulture, $"  lamp {i}: {{ at: nose, blades: {{ 1: 6.3 mm, 2: 6.3 mm }}, lamp: {{ 1: 5 A }}, returns: {{ 2: ground {(i % 2 == 0 ? "left" : "right")} }}{with} }}\n");
        }

        text.Append("protection:\n");
        for (var f = 1; f <= Lamps; f++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  F{f}: {{ kind: blade, on: bus bar{(f == 1 ? $", rating: {firstFuse}" : "")} }}\n");
        }

        text.Append("circuits:\n  bar feed: { from: battery.plus, feeds: bus bar.1, unfused: short and booted }\n  battery ground: { from: battery.minus, to: ground left }\n");
        for (var i = 0; i < Lamps; i++)
        {
            var fuse = i is 0 or 5 or 10 ? 1 : i + 1;
            text.Append(CultureInfo.InvariantCulture, $"  light {i}: {{ from: F{fuse}, feeds: lamp {i}.1{(only[OptionOf(i)] is { } option ? $", only-with: {{ {option} }}" : "")} }}\n");
        }

        var read = HarnessReader.Read("d/fleet.yaml", new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["d/fleet.yaml"] = text.ToString(), ["d/van.yaml"] = Layout }));
        return read.Value ?? throw new InvalidOperationException(string.Join('\n', read.Diagnostics.Select(d => d.Message)));
    }

    // lamp 0 is in every build, lamp 5 with 'tow', lamp 10 with 'plough'
    private static int OptionOf(int lamp) => lamp switch { 0 => 0, 5 => 1, 10 => 2, _ => lamp % 6 };
}
