using System.Collections.Immutable;
using System.Text.Json;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading.Frozen;

/// <summary>Reads NAME.frozen.json.</summary>
public static class FrozenReader
{
    public static Outcome<FrozenHarness> Read(string file, IFileSource files)
    {
        ArgumentNullException.ThrowIfNull(file);
        var bag = new DiagnosticBag();
        var start = new SourceSpan(file, 1, 1);
        if (new InputFiles(files, bag).Read(file, start) is not { } text)
        {
            return new(null, bag.ToSorted());
        }

        try
        {
            using var json = JsonDocument.Parse(text);
            var root = json.RootElement;
            if (root.GetProperty("schemaVersion").GetInt32() != 1)
            {
                bag.Error(DiagnosticCodes.FileUnreadable, $"'{file}' was written by another version of the program", start, "freeze the harness again");
                return new(null, bag.ToSorted());
            }

            return new(Harness(root), bag.ToSorted());
        }
        catch (JsonException wrong)
        {
            bag.Error(DiagnosticCodes.FileUnreadable, "the file is no whole JSON: it was cut off or edited", start with { Line = (int)(wrong.LineNumber ?? 0) + 1, Column = (int)(wrong.BytePositionInLine ?? 0) + 1 }, "freeze the harness again");
        }
        catch (Exception wrong) when (wrong is KeyNotFoundException or InvalidOperationException or FormatException)
        {
            bag.Error(DiagnosticCodes.FileUnreadable, $"'{file}' is not what 'freeze' writes", start, "freeze the harness again");
        }

        return new(null, bag.ToSorted());
    }

    private static FrozenHarness Harness(JsonElement root) => new()
    {
        Harness = Text(root, "harness"),
        Title = Text(root, "title"),
        Vehicle = Optional(root, "vehicle"),
        Revision = root.GetProperty("revision").GetString(),
        SourceHash = Text(root, "sourceHash"),
        HalfRevisions = root.GetProperty("halves").EnumerateObject().ToImmutableSortedDictionary(p => p.Name, p => p.Value.GetString() ?? "", StringComparer.Ordinal),
        Wires = [.. root.GetProperty("wires").EnumerateArray().Select(Wire).DistinctBy(w => w.Id, StringComparer.Ordinal)],
        Cavities = [.. root.GetProperty("cavities").EnumerateArray().Select(c => new FrozenCavity(Text(c, "connector"), Text(c, "cavity"), Text(c, "wire"), Text(c, "net")))],
        Splices = [.. root.GetProperty("splices").EnumerateArray().Select(s => new FrozenSplice(Text(s, "id"), Text(s, "net"), Text(s, "segment"), s.GetProperty("atMm").GetDouble()) { From = Optional(s, "from"), To = Optional(s, "to") })],
        Chart = root.TryGetProperty("chart", out var chart) ? FrozenChartReader.Read(chart) : null,
    };

    private static FrozenWire Wire(JsonElement wire) => new(
        Text(wire, "id"), Text(wire, "circuit"), Text(wire, "net"), Text(wire, "from"), Text(wire, "to"), Text(wire, "colour"), Text(wire, "wireType"), Text(wire, "size"),
        wire.GetProperty("cutMm") is { ValueKind: JsonValueKind.Number } mm ? mm.GetDouble() : null)
    {
        Half = wire.GetProperty("half").GetString(),
        Segments = [.. wire.GetProperty("segments").EnumerateArray().Select(s => s.GetString() ?? "")],
    };

    private static string? Optional(JsonElement element, string name) => element.TryGetProperty(name, out var value) ? value.GetString() : null;

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString() ?? "";
}
