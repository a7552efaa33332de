using System.Buffers;
using System.Collections.Immutable;
using System.Text.Json;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;

namespace HarnessDraw.Writing.PlanFile;

/// <summary>
/// NAME.plan.json, the plan for other programs (form: <see cref="PlanSchema"/>). Millimetres to 0.001, volts and amperes to 0.0001, degrees to 0.01; absent
/// knowledge is null. Two-space indent, LF, UTF-8 without a mark.
/// </summary>
public static class PlanJsonWriter
{
    private const int MmDecimals = 3;
    private const int ElectricDecimals = 4;

    /// <summary>The whole file; <paramref name="refused"/> says why there is no wall chart, if so.</summary>
    public static byte[] Write(Plan plan, ImmutableArray<Finding> findings, ChartFigures? chart = null, string? refused = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        using var buffer = new ByteBlocks();
        using (var json = new Utf8JsonWriter(buffer, JsonParts.FileOptions))
        {
            json.WriteStartObject();
            WriteHead(json, plan);
            json.Array("wires", plan.Wires, WriteWire);
            json.Array("segments", plan.Tree.Segments, WriteSegment);
            json.Array("splices", plan.Splices, WriteSplice);
            json.Array("cavities", plan.Cavities, WriteCavity);
            json.Array("fuses", plan.Fuses, WriteFuse);
            json.Array("options", plan.Harness.Options, WriteOption);
            json.Array("findings", findings.IsDefault ? [] : findings, FindingJson.Write);
            json.Array("nodes", plan.Nodes, WriteNode);
            WriteLayout(json, chart, refused);
            json.WriteEndObject();
        }

        buffer.Write("\n"u8);
        return buffer.ToArray();
    }

    private static void WriteHead(Utf8JsonWriter json, Plan plan)
    {
        json.WriteNumber("schemaVersion", PlanSchema.Version);
        json.WriteString("harness", plan.Harness.Id);
        json.WriteString("title", plan.Harness.Title);
        json.WriteString("vehicle", plan.Harness.Vehicle);
        json.WriteString("sourceHash", plan.Harness.SourceHash);
        json.WriteNumber("buildCount", plan.BuildCount);
    }

    private static void WriteWire(Utf8JsonWriter json, Wire wire)
    {
        json.WriteString("id", wire.Id);
        json.WriteString("circuit", wire.Circuit);
        json.WriteString("net", wire.Net);
        json.WriteString("cable", wire.Cable);
        WriteEnd(json, "from", wire.From);
        WriteEnd(json, "to", wire.To);
        json.WriteString("colour", wire.Colour);
        json.Number("areaMm2", wire.AreaMm2, ElectricDecimals);
        json.WriteString("awg", wire.Awg);
        json.Number("pathLengthMm", wire.PathLengthMm, MmDecimals);
        json.Number("cutLengthMm", wire.CutLengthMm, MmDecimals);
        json.WriteBoolean("estimated", wire.Estimated);
        json.Strings("segments", wire.Segments);
        json.Builds(wire.Builds);
        WriteWorst(json, wire.Worst);
        json.Number("ampacityA", wire.AmpacityA, ElectricDecimals);
        json.Strings("protectedBy", wire.ProtectedBy);
        json.WriteString("decidedBy", wire.DecidedBy);
        json.WriteString("runnerUp", wire.RunnerUp);
        json.Number("margin", wire.Margin, ElectricDecimals);
    }

    private static void WriteEnd(Utf8JsonWriter json, string name, WireEnd end)
    {
        json.WriteStartObject(name);
        json.WriteString("at", end.At);
        json.WriteString("pin", end.Pin);
        json.WriteString("terminal", end.Terminal);
        json.WriteString("seal", end.Seal);
        json.Number("strip", end.StripMm, MmDecimals);
        json.WriteEndObject();
    }

    private static void WriteWorst(Utf8JsonWriter json, WorstState? worst)
    {
        if (worst is null)
        {
            json.WriteNull("worst");
            return;
        }

        json.WriteStartObject("worst");
        json.WriteString("state", worst.State);
        json.Number("currentA", worst.CurrentA, ElectricDecimals);
        json.Number("dropV", worst.DropV, ElectricDecimals);
        json.Number("temperatureC", worst.TemperatureC, 2);
        json.WriteEndObject();
    }

    private static void WriteSegment(Utf8JsonWriter json, Segment segment)
    {
        json.WriteString("id", segment.Id);
        json.WriteString("from", segment.From);
        json.WriteString("to", segment.To);
        json.Number("lengthMm", segment.LengthMm, MmDecimals);
        json.Strings("wires", segment.Wires);
        json.Number("diameterMm", segment.DiameterMm, MmDecimals);
        json.WriteString("covering", segment.Covering);
    }

    private static void WriteSplice(Utf8JsonWriter json, Splice splice)
    {
        json.WriteString("id", splice.Id);
        json.WriteString("circuit", splice.Circuit);
        json.WriteString("segment", splice.Segment);
        json.Number("atMm", splice.AtMm, MmDecimals);
        json.Strings("wires", splice.Wires);
    }

    private static void WriteCavity(Utf8JsonWriter json, CavityUse use)
    {
        json.WriteString("connector", use.Connector);
        json.WriteString("side", use.Side == Side.Bay ? "bay" : "cabin");
        json.WriteString("cavity", use.Cavity);
        json.WriteString("wire", use.Wire);
        json.Builds(use.Builds);
        json.WriteString("plug", use.Plug);
    }

    private static void WriteFuse(Utf8JsonWriter json, FuseChoice fuse)
    {
        json.WriteString("id", fuse.Id);
        json.WriteString("kind", FuseKind(fuse.Kind));
        json.Number("ratingA", fuse.RatingA, ElectricDecimals);
        json.Number("largestA", fuse.LargestA, ElectricDecimals);
        json.Number("loadA", fuse.LoadA, ElectricDecimals);
        json.WriteString("loadState", fuse.LoadState);
        json.WriteString("why", fuse.Why);
        json.Strings("wires", fuse.Wires);
    }

    private static string FuseKind(ProtectionKind kind) => kind switch
    {
        ProtectionKind.BoltIn => "bolt-in",
        ProtectionKind.Blade => "blade",
        ProtectionKind.FusibleLink => "fusible link",
        ProtectionKind.Breaker => "breaker",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "no such kind of fuse"),
    };

    private static void WriteOption(Utf8JsonWriter json, Option option)
    {
        json.WriteString("id", option.Id);
        json.Strings("choices", option.Choices);
        json.WriteString("usual", option.Usual);
    }

    private static void WriteNode(Utf8JsonWriter json, NodeVolts node)
    {
        json.WriteString("node", node.Node);
        json.WriteStartObject("volts");
        foreach (var (state, volts) in node.Volts.OrderBy(v => v.Key, StringComparer.Ordinal))
        {
            json.Number(state, volts, ElectricDecimals);
        }

        json.WriteEndObject();
    }

    private static void WriteLayout(Utf8JsonWriter json, ChartFigures? chart, string? refused)
    {
        json.WriteStartObject("layout");
        json.Number("crossings", chart?.Crossings, 0);
        json.Number("crossingsStraightLaneBound", chart?.CrossingsStraightLaneBound, 0);
        json.Number("crossingsLowerBound", chart?.CrossingsLowerBound, 0);
        json.WriteString("reason", chart?.BoundReason);
        json.WriteString("paper", chart?.Paper);
        json.WriteString("refused", refused);
        json.WriteEndObject();
    }
}
