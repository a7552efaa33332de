using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Reading;

/// <summary>A small invented vehicle whose description the tests change section by section. '§' marks the place where a message must point.</summary>
internal sealed record SmallVehicle
{
    public const string File = "d/van-harness.yaml";
    public const char Mark = '§';

    public string Head { get; init; } = "harness: Test\nvehicle: Small van\nvehicle-layout: van.yaml\n";

    public string Power { get; init; } = """
        power:
          sources:
            battery: { kind: battery, nominal: 12 V, at: tray, posts: { plus: M8, minus: M8 } }

        """;

    public string Things { get; init; } = """
        things:
          bus bar: { at: tray, bar: 3 studs M8 }
          ground left: { at: wing, ground: M8 }
          headlamp left: { at: nose, plug: lamp-3, beams: { 56a: 60 W, 56b: 55 W }, returns: { 31: ground left } }
          horn: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, coil: { 1: 5 A } }
          firewall: { at: pass, mate: bulkhead-24, halves: { engine: A, lighting: B } }
          light switch: { at: dash, side: cabin, switch: { 30: [56, 58] } }
          panel: { at: dash, side: cabin, stud: M6 }

        """;

    public string Protection { get; init; } = """
        protection:
          F1: { kind: bolt-in, on: bus bar }
          F7: { kind: blade, rating: 15 A, at: dash, side: cabin }

        """;

    public string Circuits { get; init; } = """
        circuits:
          dipped beam: { from: F7, enters-by: firewall, feeds: headlamp left.56b }

        """;

    public string Rest { get; init; } = "";

    public string Layout { get; init; } = """
        vehicle-layout: Small van
        root: pass
        places:
          pass: { at: [0, 0, 600] }
          tray: { at: [200, 300, 700], zone: wet }
          wing: { at: [600, 500, 650] }
          nose: { at: [1200, 400, 600] }
        paths:
          - { from: pass, to: tray, measured: 500 mm }
          - { from: tray, to: wing, estimated: 20 in, clips-every: 150 mm }
          - { from: wing, to: nose, measured: 2 ft 4 in, again: 715 mm, moves: 20 mm }
        zones: { wet: { ambient: 60 degC, exposure: spray } }
        surfaces: { body: steel, bonnet: glass fibre }

        """;

    public string Text => Head + Power + Things + Protection + Circuits + Rest;

    public Outcome<Harness> Read() => HarnessReader.Read(File, Files());

    public Harness Harness()
    {
        var outcome = Read();
        Assert.Empty(outcome.Diagnostics.Select(d => $"{d.At?.Line}:{d.At?.Column}: {d.Code}: {d.Message}"));
        return outcome.Value!;
    }

    /// <summary>Reads, and finds the message that points at the mark.</summary>
    public Diagnostic MessageAtMark()
    {
        var (file, text) = Text.Contains(Mark) ? ("d/van-harness.yaml", Text) : ("d/van.yaml", Layout);
        var at = text.IndexOf(Mark);
        Assert.True(at >= 0, "no mark");
        var line = text[..at].Count(c => c == '\n') + 1;
        var column = at - text.LastIndexOf('\n', at);
        var messages = Read().Diagnostics;
        var found = messages.FirstOrDefault(d => d.At is { } place && place.File == file && place.Line == line && place.Column == column);
        Assert.True(found is not null, $"nothing points at {line}:{column}; there is: " + string.Join(" | ", messages.Select(d => $"{d.At?.File}:{d.At?.Line}:{d.At?.Column} {d.Code}: {d.Message}")));
        return found;
    }

    /// <summary>The vehicle's files, with pictures or fonts beside them.</summary>
    public MemoryFiles Files(IReadOnlyDictionary<string, byte[]>? binaries = null) => new(new Dictionary<string, string>(StringComparer.Ordinal)
    {
        [File] = Text.Replace(Mark.ToString(), "", StringComparison.Ordinal),
        ["d/van.yaml"] = Layout.Replace(Mark.ToString(), "", StringComparison.Ordinal),
    }, binaries);
}
