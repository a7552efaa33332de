using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.Findings;

/// <summary>Findings as SARIF 2.1.0: rules with their metadata, results with place, waivers as suppressions.</summary>
internal static class FindingsSarif
{
    private const string Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    public static byte[] Write(ImmutableArray<Finding> findings, string version)
    {
        // findings of planning may carry rules that are not in the catalogue: they get a bare entry
        var rules = RuleCatalogue.Infos.Select(i => i.Id).Concat(findings.Select(f => f.Rule)).Distinct(StringComparer.Ordinal).ToImmutableArray();
        var index = rules.Select((id, i) => (id, i)).ToDictionary(p => p.id, p => p.i, StringComparer.Ordinal);
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new() { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", Schema);
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            WriteTool(json, rules, version);
            json.WriteString("columnKind", "utf16CodeUnits");
            json.WriteStartArray("results");
            foreach (var finding in findings)
            {
                WriteResult(json, finding, index[finding.Rule]);
            }

            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return [.. buffer.WrittenSpan, (byte)'\n'];
    }

    private static void WriteTool(Utf8JsonWriter json, ImmutableArray<string> rules, string version)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "HarnessDraw");
        json.WriteString("version", version);
        json.WriteStartArray("rules");
        foreach (var id in rules)
        {
            json.WriteStartObject();
            json.WriteString("id", id);
            if (RuleCatalogue.Info(id) is { } info)
            {
                WriteMessage(json, "shortDescription", info.Title);
                WriteMessage(json, "fullDescription", info.Why);
                WriteMessage(json, "help", $"Source: {info.Source}");
                json.WriteStartObject("defaultConfiguration");
                json.WriteString("level", Level(info.Severity));
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteResult(Utf8JsonWriter json, Finding finding, int rule)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", finding.Rule);
        json.WriteNumber("ruleIndex", rule);
        json.WriteString("level", Level(finding.Severity));
        var builds = finding.Builds.IsAlways ? "" : $"Only with {finding.Builds}: ";
        WriteMessage(json, "message", $"{builds}{finding.Message}{(finding.Cure is null ? "" : $" {finding.Cure}")}");
        WriteLocations(json, finding);
        if (finding.WaivedBy is { } waiver)
        {
            json.WriteStartArray("suppressions");
            json.WriteStartObject();
            json.WriteString("kind", "external");
            json.WriteString("status", "accepted");
            json.WriteString("justification", $"{waiver.Because} ({waiver.By}, {waiver.On})");
            json.WriteEndObject();
            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    private static void WriteLocations(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartArray("locations");
        json.WriteStartObject();
        if (finding.At is { } at)
        {
            json.WriteStartObject("physicalLocation");
            json.WriteStartObject("artifactLocation");
            json.WriteString("uri", Uri(at.File));
            json.WriteEndObject();
            json.WriteStartObject("region");
            json.WriteNumber("startLine", Math.Max(1, at.Line));
            json.WriteNumber("startColumn", Math.Max(1, at.Column));
            json.WriteNumber("endColumn", Math.Max(1, at.Column) + Math.Max(1, at.Length));
            json.WriteEndObject();
            json.WriteEndObject();
        }

        json.WriteStartArray("logicalLocations");
        foreach (var name in finding.Where)
        {
            json.WriteStartObject();
            json.WriteString("name", name);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void WriteMessage(Utf8JsonWriter json, string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", text);
        json.WriteEndObject();
    }

    private static string Level(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    // a relative path stays one: every part of it escaped, slashes forward (RFC 3986)
    private static string Uri(string file) => string.Join('/', file.Replace('\\', '/').Split('/').Select(System.Uri.EscapeDataString));
}
