using System.Collections.Immutable;
using System.Text.Json;
using HarnessDraw.Model;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Lists;

/// <summary>Lists as JSON: an object a row, named by the heads; absent knowledge is null, columns to tick are left out.</summary>
public static class ListJsonWriter
{
    public const int SchemaVersion = 1;

    public static byte[] Write(Harness harness, string build, ImmutableArray<ListTable> tables)
    {
        ArgumentNullException.ThrowIfNull(harness);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, JsonParts.FileOptions))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", SchemaVersion);
            json.WriteString("harness", harness.Id);
            json.WriteString("revision", harness.Drawing.Revisions.IsDefaultOrEmpty ? null : harness.Drawing.Revisions[^1].Rev);
            json.WriteString("sourceHash", harness.SourceHash);
            json.WriteString("build", build);
            foreach (var table in tables)
            {
                json.Array(table.Name, table.Rows, (j, row) => WriteRow(j, table, row));
            }

            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void WriteRow(Utf8JsonWriter json, ListTable table, ImmutableArray<ListCell> row)
    {
        foreach (var (column, cell) in table.Columns.Zip(row))
        {
            switch (column.Kind)
            {
                case CellKind.Number:
                    json.Number(column.Head, cell.Number, column.Decimals);
                    break;
                case CellKind.Text:
                    json.WriteString(column.Head, cell.Text);
                    break;
            }
        }
    }
}
