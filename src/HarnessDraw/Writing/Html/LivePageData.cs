using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tracing;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Html;

/// <summary>
/// What the page knows beside the drawing, as JSON: states, options, wires, fuses, loads, cavities, the ways of current with their stops, and
/// volts by point and state, and what every single fault does.
/// </summary>
internal static class LivePageData
{
    private const int VoltDecimals = 2;

    /// <param name="plan">What is shown.</param>
    /// <param name="build">The one build it was cut down to, or null when all options are in it.</param>
    public static string Of(Plan plan, ImmutableSortedDictionary<string, string>? build)
    {
        using var stream = new MemoryStream(128 * 1024);

        // the encoder that is used when none is named escapes <, >, &, quotes and all that is not ASCII
        using (var json = new Utf8JsonWriter(stream))
        {
            var harness = plan.Harness;
            var states = harness.States.Select(s => s.Id).ToImmutableArray();
            json.WriteStartObject();
            json.Array("states", harness.States, WriteState);
            json.Array("options", harness.Options, (j, o) => WriteOption(j, o, build));
            json.Array("colours", ColourCodes.All, WriteColour);
            json.Array("wires", plan.Wires, WriteWire);
            json.Array("fuses", plan.Fuses, WriteFuse);
            json.Array("things", harness.Things, WriteThing);
            json.Array("cavities", [.. plan.Cavities.Where(c => c.Wire is not null)], WriteCavity);
            var ways = new CircuitTracer(plan).All;
            json.Array("ways", ways, WriteWay);
            var volts = plan.Nodes.GroupBy(n => n.Node, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Volts, StringComparer.Ordinal);
            json.Array("points", [.. ways.SelectMany(w => w.Stops).DistinctBy(s => s.Node)], (j, s) => WritePoint(j, s, volts.GetValueOrDefault(s.Node), states));
            new FaultTableData(plan, build).Write(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static void WriteState(Utf8JsonWriter json, OperatingState state)
    {
        json.WriteString("id", state.Id);
        json.WriteString("key", Word(state.Key.ToString()));
        json.WriteString("engine", Word(state.Engine.ToString()));
    }

    private static void WriteOption(Utf8JsonWriter json, Option option, ImmutableSortedDictionary<string, string>? build)
    {
        json.WriteString("id", option.Id);
        var chosen = build?.GetValueOrDefault(option.Id) ?? option.Usual;
        json.Strings("choices", build is null ? option.Choices : [chosen]);
        json.WriteString("chosen", chosen);
        json.WriteString("usual", option.Usual);
    }

    private static void WriteColour(Utf8JsonWriter json, ColourCode colour)
    {
        json.WriteString("code", colour.Code);
        json.WriteString("word", colour.Word);
        json.WriteString("ink", colour.Ink.ToString());
        json.WriteString("dash", colour.BlackDashMm.IsDefaultOrEmpty ? "" : string.Join(' ', colour.BlackDashMm.Select(Svg.SvgNumber.Text)));
        json.WriteBoolean("dark", colour.Dark);
    }

    private static void WriteWire(Utf8JsonWriter json, Wire wire)
    {
        json.WriteString("id", wire.Id);
        json.WriteString("circuit", wire.Circuit);
        json.WriteString("from", wire.From.ToString());
        json.WriteString("to", wire.To.ToString());
        json.WriteString("colour", wire.Colour);
        json.WriteString("size", wire.Awg is null ? $"{wire.SizeLabel} mm²" : wire.SizeLabel);
        json.Number("lengthMm", wire.CutLengthMm, 0);
        json.Strings("protectedBy", wire.ProtectedBy);
        json.Builds(wire.Builds);
    }

    private static void WriteFuse(Utf8JsonWriter json, FuseChoice fuse)
    {
        json.WriteString("id", fuse.Id);
        json.Number("ratingA", fuse.RatingA, 1);
        json.Strings("wires", fuse.Wires);
    }

    private static void WriteThing(Utf8JsonWriter json, Thing thing)
    {
        json.WriteString("id", thing.Id);
        json.WriteString("label", thing.Label);
        json.WriteString("kind", Word(thing.Kind.ToString()));
        json.WriteString("place", thing.Place);
        json.WriteString("side", Word(thing.Side.ToString()));
    }

    private static void WriteCavity(Utf8JsonWriter json, CavityUse cavity)
    {
        json.WriteString("id", $"{cavity.Connector}:{cavity.Cavity}");
        json.WriteString("wire", cavity.Wire);
        json.WriteString("side", Word(cavity.Side.ToString()));
    }

    private static void WriteWay(Utf8JsonWriter json, TraceWay way)
    {
        json.WriteString("title", way.Title);
        json.WriteString("circuit", way.Circuit);
        json.Strings("stops", [.. way.Stops.Select(s => s.Node)]);
        json.Array("hops", way.Hops, WriteHop);
    }

    private static void WriteHop(Utf8JsonWriter json, TraceHop hop)
    {
        json.WriteString("kind", Word(hop.Kind.ToString()));
        if (hop.Words.Length > 0)
        {
            json.WriteString("words", hop.Words);
        }

        if (hop.Wire is { } wire)
        {
            json.WriteString("wire", wire);
        }
    }

    private static void WritePoint(Utf8JsonWriter json, TraceStop point, IReadOnlyDictionary<string, double?>? known, ImmutableArray<string> states)
    {
        json.WriteString("node", point.Node);
        json.WriteString("name", point.Name);
        json.WriteString("where", point.Where);
        json.WriteStartArray("volts");
        foreach (var state in states)
        {
            if (known is not null && known.TryGetValue(state, out var volts) && volts is { } value)
            {
                json.WriteNumberValue(Math.Round(value, VoltDecimals, MidpointRounding.AwayFromZero) + 0.0);
            }
            else
            {
                json.WriteNullValue();
            }
        }

        json.WriteEndArray();
    }

    private static string Word(string name) => string.Concat(name.Select((c, i) => char.IsAsciiLetterUpper(c) ? (i > 0 ? " " : "") + char.ToLowerInvariant(c) : c.ToString()));
}
