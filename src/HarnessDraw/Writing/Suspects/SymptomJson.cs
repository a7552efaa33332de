using System.Text.Json;
using HarnessDraw.Planning;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Suspects;

/// <summary>The symptom table as JSON: what is seen, fuses that open, faults that look so.</summary>
public static class SymptomJson
{
    public const int SchemaVersion = 1;

    public static byte[] Of(Plan plan, SymptomTable table)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(table);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, JsonParts.FileOptions))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", SchemaVersion);
            json.WriteString("harness", plan.Harness.Id);
            json.WriteStartObject("build");
            foreach (var (option, choice) in table.Build)
            {
                json.WriteString(option, choice);
            }

            json.WriteEndObject();
            json.Array("rows", table.Rows, (j, row) =>
            {
                j.Array("sees", row.Sees, (k, s) =>
                {
                    k.WriteString("load", s.Load.Name);
                    k.WriteString("seen", s.Seen.Words());
                    k.Strings("states", s.States);
                });
                j.Strings("fusesOpened", row.Blown);
                j.Array("faults", row.Faults, WriteFault);
            });
            json.Array("unseen", table.Unseen, WriteFault);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void WriteFault(Utf8JsonWriter json, Fault fault)
    {
        json.WriteString("fault", fault.Words);
        json.WriteString("where", fault.Where);
        json.Strings("wires", fault.Wires);
        json.Number("weight", fault.Weight, 3);
    }
}
