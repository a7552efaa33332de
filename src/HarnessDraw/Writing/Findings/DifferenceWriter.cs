using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using HarnessDraw.Comparing;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.Findings;

/// <summary>What a tried change does, as text for reading and as JSON for other programs.</summary>
public static class DifferenceWriter
{
    public static string Text(ImmutableArray<string> tried, PlanDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        var text = new StringBuilder();
        foreach (var line in tried)
        {
            text.Append($"tried: {line}\n");
        }

        text.Append(difference.Changes.IsEmpty ? "\nThe plan stays as it is.\n" : "\nThe plan:\n");
        foreach (var change in difference.Changes)
        {
            text.Append(change switch
            {
                { Before: null } => $"  {change.Kind} {change.Id}: added {change.What} {change.After}\n",
                { After: null } => $"  {change.Kind} {change.Id}: no {change.What} any more (was {change.Before})\n",
                _ => $"  {change.Kind} {change.Id}: {change.What} {change.Before} -> {change.After}\n",
            });
        }

        Append(text, "New findings", difference.New);
        Append(text, "Findings that are gone", difference.Gone);
        if (!difference.Altered.IsEmpty)
        {
            text.Append("\nFindings with other figures:\n");
            foreach (var altered in difference.Altered)
            {
                text.Append($"  {Line(altered.After)}\n    was: {altered.Before.Message}\n");
            }
        }

        return text.Append(difference.New.IsEmpty && difference.Gone.IsEmpty && difference.Altered.IsEmpty ? "\nNo finding comes or goes.\n" : "").Append("\nThe file is as it was.\n").ToString();
    }

    public static byte[] Json(ImmutableArray<string> tried, PlanDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new() { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteStartArray("tried");
            foreach (var line in tried)
            {
                json.WriteStringValue(line);
            }

            json.WriteEndArray();
            json.WriteStartArray("changes");
            foreach (var change in difference.Changes)
            {
                json.WriteStartObject();
                json.WriteString("kind", change.Kind);
                json.WriteString("id", change.Id);
                json.WriteString("what", change.What);
                json.WriteString("before", change.Before);
                json.WriteString("after", change.After);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteAll(json, "newFindings", difference.New);
            WriteAll(json, "goneFindings", difference.Gone);
            WriteAll(json, "alteredFindings", [.. difference.Altered.Select(a => a.After)]);
            json.WriteEndObject();
        }

        return buffer.WrittenSpan.ToArray();
    }

    private static void Append(StringBuilder text, string head, ImmutableArray<Finding> findings)
    {
        if (!findings.IsEmpty)
        {
            text.Append($"\n{head}:\n");
            foreach (var finding in findings)
            {
                text.Append($"  {Line(finding)}\n");
            }
        }
    }

    private static string Line(Finding finding) => $"{finding.Severity.ToString().ToLowerInvariant()} {finding.Rule}: {finding.Message}{(finding.WaivedBy is null ? "" : " (waived)")}";

    private static void WriteAll(Utf8JsonWriter json, string name, ImmutableArray<Finding> findings)
    {
        json.WriteStartArray(name);
        foreach (var finding in findings)
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
            json.WriteString("message", finding.Message);
            json.WriteString("cure", finding.Cure);
            json.WriteBoolean("waived", finding.WaivedBy is not null);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
