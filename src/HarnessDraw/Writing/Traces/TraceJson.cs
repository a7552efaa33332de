using System.Text.Json;
using HarnessDraw.Tracing;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Traces;

/// <summary>A trace as JSON: every way with its stops and hops in order, volts by state.</summary>
public static class TraceJson
{
    public const int SchemaVersion = 1;

    public static byte[] Of(Trace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, JsonParts.FileOptions))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", SchemaVersion);
            json.WriteString("traced", trace.Name);
            json.Array("ways", trace.Ways, Way);
            json.Strings("notKnown", trace.NotKnown);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void Way(Utf8JsonWriter json, TraceWay way)
    {
        json.WriteString("title", way.Title);
        json.WriteString("circuit", way.Circuit);
        json.WriteString("load", way.Load);
        json.WriteStartObject("states");
        json.WriteString("off", way.OffState);
        json.WriteString("on", way.OnState);
        json.WriteString("cranking", way.CrankState);
        json.WriteString("running", way.RunState);
        json.WriteEndObject();
        json.Array("stops", way.Stops, Stop);
        json.Array("hops", way.Hops, Hop);
    }

    private static void Stop(Utf8JsonWriter json, TraceStop stop)
    {
        json.WriteString("point", stop.Node);
        json.WriteString("name", stop.Name);
        json.WriteString("where", stop.Where);
        json.WriteString("probe", stop.Probe);
        json.Number("minutes", stop.Minutes, 1);
        json.Number("offV", stop.OffV, 3);
        json.Number("onV", stop.OnV, 3);
        json.Number("crankingV", stop.CrankV, 3);
        json.Number("runningV", stop.RunV, 3);
        json.Number("goodToV", stop.LimitV, 3);
        json.Number("lostV", stop.LostV, 3);
    }

    private static void Hop(Utf8JsonWriter json, TraceHop hop)
    {
        json.WriteString("kind", JsonNamingPolicy.CamelCase.ConvertName(hop.Kind.ToString()));
        json.WriteString("words", hop.Words);
        json.WriteString("wire", hop.Wire);
        json.WriteString("colour", hop.Colour);
        json.WriteString("size", hop.Size);
        json.Number("lengthMm", hop.CutLengthMm, 0);
        json.WriteBoolean("estimated", hop.Estimated);
        json.Number("dropV", hop.DropV, 3);
        json.Strings("sharedWith", hop.Shared);
    }
}
