using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using HarnessDraw.Checking;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.Findings;

/// <summary>Findings, margins and changed rules as one JSON object; absent knowledge is null.</summary>
internal static class FindingsJson
{
    public static byte[] Write(ImmutableArray<Finding> findings, ImmutableArray<Margin> closest, RuleSettings settings)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new() { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteStartArray("findings");
            foreach (var finding in findings)
            {
                Write(json, finding);
            }

            json.WriteEndArray();
            json.WriteStartArray("closestToLimit");
            foreach (var m in closest)
            {
                json.WriteStartObject();
                json.WriteString("rule", m.Rule);
                json.WriteString("what", m.What);
                json.WriteNumber("value", Math.Round(m.Value, 6));
                json.WriteNumber("limit", Math.Round(m.Limit, 6));
                json.WriteString("unit", m.Unit);
                json.WriteNumber("margin", Math.Round(m.Fraction, 4));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("rulesChanged");
            foreach (var change in settings.Changes)
            {
                json.WriteStringValue(change);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
    }

    private static void Write(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("rule", finding.Rule);
        json.WriteString("severity", FindingsText.SeverityWord(finding.Severity));
        json.WriteString("message", finding.Message);
        json.WriteString("cure", finding.Cure);
        json.WriteString("source", finding.Source);
        json.WriteStartArray("where");
        foreach (var name in finding.Where)
        {
            json.WriteStringValue(name);
        }

        json.WriteEndArray();
        json.WriteString("builds", finding.Builds.ToString());
        WriteAt(json, finding);
        WriteWaiver(json, finding.WaivedBy);
        json.WriteEndObject();
    }

    private static void WriteAt(Utf8JsonWriter json, Finding finding)
    {
        if (finding.At is not { } at)
        {
            json.WriteNull("at");
            return;
        }

        json.WriteStartObject("at");
        json.WriteString("file", at.File);
        json.WriteNumber("line", at.Line);
        json.WriteNumber("column", at.Column);
        json.WriteEndObject();
    }

    private static void WriteWaiver(Utf8JsonWriter json, Waiver? waiver)
    {
        if (waiver is null)
        {
            json.WriteNull("waivedBy");
            return;
        }

        json.WriteStartObject("waivedBy");
        json.WriteString("because", waiver.Because);
        json.WriteString("by", waiver.By);
        json.WriteString("on", waiver.On);
        json.WriteEndObject();
    }
}
