using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.Findings;

/// <summary>A way to feed a new load as it is told: its fuse, its wires and the findings that come with it.</summary>
public sealed record FitRow(FuseChoice Fuse, bool IsNewFuse, string? Holder, ImmutableArray<Wire> Wires, ImmutableArray<Finding> New, int OtherChanges);

/// <summary>The ways to feed a new load, as text and as JSON.</summary>
public static class FitWriter
{
    public static string Text(string load, string place, ImmutableArray<FitRow> rows)
    {
        var text = new StringBuilder($"{load} at {place}: {rows.Length} {(rows.Length == 1 ? "way" : "ways")} tried, the best first\n");
        for (var i = 0; i < rows.Length; i++)
        {
            var row = rows[i];
            var share = row.Fuse is { RatingA: > 0 and { } rating, LoadA: { } loadA } ? string.Create(CultureInfo.InvariantCulture, $"{rating:0.#} A, {loadA:0.#} A of it used, {100 * loadA / rating:0} %") : "no rating fits";
            share += row.Fuse.Why is { } why ? $"; {why}" : "";
            text.Append(CultureInfo.InvariantCulture, $"\n{i + 1}. behind {(row.IsNewFuse ? $"a new fuse on {row.Holder}" : $"fuse {row.Fuse.Id}")}: {share}\n");
            foreach (var wire in row.Wires)
            {
                text.Append($"   {wire.Id}: {PointWords.Of(wire.From)} to {PointWords.Of(wire.To)}{(wire.Segments.IsEmpty ? "" : $", by {string.Join(' ', wire.Segments)}")}, {Length(wire)}, {wire.SizeLabel}{(wire.Awg is null ? " mm2" : "")}, decided by {wire.DecidedBy}\n");
            }

            text.Append(row.OtherChanges == 0 ? "   everything else stays as it is\n" : $"   {row.OtherChanges} other {(row.OtherChanges == 1 ? "figure of the plan changes" : "figures of the plan change")}\n");
            foreach (var finding in row.New)
            {
                text.Append($"   new {finding.Severity.ToString().ToLowerInvariant()} {finding.Rule}: {finding.Message}\n");
            }

            text.Append(row.New.IsEmpty ? "   no new finding\n" : "");
        }

        return text.Append(rows.IsEmpty ? "No fuse has room for it and no holder takes another: feed it from the battery by a fuse of its own.\n" : "\nThe file is as it was.\n").ToString();
    }

    public static byte[] Json(string load, string place, ImmutableArray<FitRow> rows)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, new() { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("schemaVersion", 1);
            json.WriteString("load", load);
            json.WriteString("at", place);
            json.WriteStartArray("ways");
            foreach (var row in rows)
            {
                json.WriteStartObject();
                json.WriteString("fuse", row.Fuse.Id);
                json.WriteBoolean("newFuse", row.IsNewFuse);
                json.WriteString("holder", row.Holder);
                Number(json, "ratingA", row.Fuse.RatingA);
                Number(json, "loadA", row.Fuse.LoadA);
                json.WriteStartArray("wires");
                foreach (var wire in row.Wires)
                {
                    json.WriteStartObject();
                    json.WriteString("id", wire.Id);
                    json.WriteString("from", wire.From.ToString());
                    json.WriteString("to", wire.To.ToString());
                    json.WriteNumber("areaMm2", wire.AreaMm2);
                    Number(json, "cutLengthMm", wire.CutLengthMm);
                    json.WriteString("segments", string.Join(' ', wire.Segments));
                    json.WriteString("decidedBy", wire.DecidedBy);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteNumber("otherChanges", row.OtherChanges);
                json.WriteStartArray("newFindings");
                foreach (var finding in row.New)
                {
                    json.WriteStartObject();
                    json.WriteString("rule", finding.Rule);
                    json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
                    json.WriteString("message", finding.Message);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return buffer.WrittenSpan.ToArray();
    }

    private static string Length(Wire wire) => wire.CutLengthMm is { } mm ? string.Create(CultureInfo.InvariantCulture, $"{mm:0} mm") : "unknown length";

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } known)
        {
            json.WriteNumber(name, known);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
