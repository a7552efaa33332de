using System.Text.Json;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Suspects;

/// <summary>A diagnosis as JSON.</summary>
public static class DiagnosisJson
{
    public const int SchemaVersion = 1;

    public static byte[] Of(Diagnosis diagnosis)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, JsonParts.FileOptions))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", SchemaVersion);
            json.WriteString("harness", diagnosis.Bench.Plan.Harness.Id);
            json.WriteNumber("tried", diagnosis.Tried);
            json.Strings("remarks", diagnosis.Remarks);
            json.Array("groups", diagnosis.Groups, Group);
            json.Array("pairs", diagnosis.Pairs, (j, p) =>
            {
                j.WriteString("first", p.First.Words);
                j.WriteString("second", p.Second.Words);
                j.WriteString("shared", p.Shared);
            });
            if (diagnosis.Next is { } next)
            {
                json.WriteStartObject("next");
                Next(json, diagnosis.Bench, next);
                json.WriteEndObject();
            }
            else
            {
                json.WriteNull("next");
            }

            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void Group(Utf8JsonWriter json, ExplainedGroup group)
    {
        json.Number("probability", group.Group.Probability, 4);
        json.Array("faults", group.Group.Suspects, (j, s) =>
        {
            j.WriteString("fault", s.Fault.Words);
            j.WriteString("part", s.Fault.Part);
            j.WriteString("where", s.Fault.Where);
            j.Strings("wires", s.Fault.Wires);
            j.Number("probability", s.Probability, 4);
        });
        json.Strings("explains", group.Explains);
        json.Strings("doesNotExplain", group.Unexplained);
    }

    private static void Next(Utf8JsonWriter json, FaultBench bench, NextTest next)
    {
        json.WriteString("test", DiagnosisText.Words(bench, next));
        json.WriteString("state", bench.States[next.State].Id);
        json.Number("minutes", next.Minutes, 1);
        json.Number("bits", next.Bits, 3);
        json.Array("outcomes", next.Outcomes, (j, o) =>
        {
            var volts = next.Kind is TestKind.Volts or TestKind.Lost;
            j.WriteString("seen", volts ? null : o.Words);
            j.Number("lowV", volts ? o.LowV : null, 2);
            j.Number("highV", volts ? o.HighV : null, 2);
            j.Number("probability", o.Probability, 4);
            j.Strings("leaves", [.. o.Leaves.Select(l => l.Fault.Words)]);
        });
    }
}
