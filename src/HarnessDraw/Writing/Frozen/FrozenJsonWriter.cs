using System.Text.Json;
using HarnessDraw.Comparing;
using HarnessDraw.Model;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Frozen;

/// <summary>NAME.frozen.json, what a built harness has, and the changes between two states as JSON and text.</summary>
public static class FrozenJsonWriter
{
    public const int SchemaVersion = 1;

    public static byte[] Write(FrozenHarness frozen)
    {
        ArgumentNullException.ThrowIfNull(frozen);
        return Whole(json =>
        {
            json.WriteNumber("schemaVersion", SchemaVersion);
            json.WriteString("harness", frozen.Harness);
            json.WriteString("title", frozen.Title);
            json.WriteString("vehicle", frozen.Vehicle);
            json.WriteString("revision", frozen.Revision);
            json.WriteString("sourceHash", frozen.SourceHash);
            json.WriteStartObject("halves");
            foreach (var (half, revision) in frozen.HalfRevisions)
            {
                json.WriteString(half, revision);
            }

            json.WriteEndObject();
            json.Array("wires", frozen.Wires, WriteWire);
            json.Array("cavities", frozen.Cavities, (j, c) =>
            {
                j.WriteString("connector", c.Connector);
                j.WriteString("cavity", c.Cavity);
                j.WriteString("wire", c.Wire);
                j.WriteString("net", c.Net);
            });
            json.Array("splices", frozen.Splices, (j, s) =>
            {
                j.WriteString("id", s.Id);
                j.WriteString("net", s.Net);
                j.WriteString("segment", s.Segment);
                j.WriteString("from", s.From);
                j.WriteString("to", s.To);
                j.Number("atMm", s.AtMm, 3);
            });
            if (frozen.Chart is { } chart)
            {
                FrozenChartJson.Write(json, chart);
            }
        });
    }

    public static byte[] Changes(HarnessChanges changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        return Whole(json =>
        {
            json.WriteNumber("schemaVersion", SchemaVersion);
            json.WriteString("harness", changes.New.Harness);
            json.WriteString("oldRevision", changes.Old.Revision);
            json.WriteString("newRevision", changes.New.Revision);
            json.WriteNumber("unchanged", changes.Unchanged);
            json.Array("changes", changes.Changes, (j, c) =>
            {
                j.WriteString("kind", HarnessComparer.Word(c.Kind));
                j.WriteString("wire", c.Wire);
                j.WriteString("circuit", c.Circuit);
                j.WriteString("how", c.How);
            });
        });
    }

    /// <summary>A line a change, a mark in front that reads without colour.</summary>
    public static string Text(HarnessChanges changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        var lines = changes.Changes.Select(c => $"{HarnessComparer.Word(c.Kind),-7}{c.Wire,-6}{c.Circuit}: {c.How}");
        var counts = string.Join(", ", Enum.GetValues<ChangeKind>().Select(k => $"{changes.Changes.Count(c => c.Kind == k)} to {HarnessComparer.Word(k)}"));
        return $"{changes.New.Title}, revision {changes.Old.Revision ?? "none"} to {changes.New.Revision ?? "none"}\n{string.Concat(lines.Select(l => l + "\n"))}{counts}; {changes.Unchanged} stay as they are\n";
    }

    private static void WriteWire(Utf8JsonWriter json, FrozenWire wire)
    {
        json.WriteString("id", wire.Id);
        json.WriteString("circuit", wire.Circuit);
        json.WriteString("net", wire.Net);
        json.WriteString("half", wire.Half);
        json.WriteString("from", wire.From);
        json.WriteString("to", wire.To);
        json.WriteString("colour", wire.Colour);
        json.WriteString("wireType", wire.WireType);
        json.WriteString("size", wire.Size);
        json.Number("cutMm", wire.CutMm, 3);
        json.Strings("segments", wire.Segments);
    }

    private static byte[] Whole(Action<Utf8JsonWriter> write)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, JsonParts.FileOptions))
        {
            json.WriteStartObject();
            write(json);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }
}
