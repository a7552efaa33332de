using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads sources, converters and protections, each also as a thing.</summary>
internal static class PowerReader
{
    /// <summary>Sources and converters; call it before the things are read.</summary>
    public static PowerSystem ReadSources(Draft draft)
    {
        var power = draft.Root.Map("power");
        var sources = ImmutableArray.CreateBuilder<Source>();
        var batteryV = draft.Blocks("sources", power ?? Empty(draft)).Where(s => s.Map.Text("kind") == "battery").Select(s => s.Map.Number("nominal")).FirstOrDefault(v => v is not null);
        foreach (var (name, map) in draft.Blocks("sources", power ?? Empty(draft)))
        {
            var kind = map.Text("kind") == "battery" ? SourceKind.Battery : SourceKind.Alternator;
            draft.Add(ThingReader.ReadSource(name, map, kind == SourceKind.Battery ? ThingKind.Battery : ThingKind.Alternator, draft), name);
            var nominalV = map.Number("nominal") ?? (kind == SourceKind.Alternator ? batteryV : null);
            if (nominalV is null && map.TextNode("nominal") is null)
            {
                draft.Bag.Error(DiagnosticCodes.MissingKey, $"'{name.Value}' lacks 'nominal'", name.At, "give its nominal volts: 'nominal: 12 V'");
            }

            sources.Add(new Source { Id = name.Value, Kind = kind, IsDynamo = map.Text("kind") == "dynamo", NominalV = nominalV ?? 0, OutputA = map.Number("output"), InternalOhm = map.Number("internal"), At = name.At });
        }

        if (sources.Count == 0 && power is not null)
        {
            draft.Bag.Error(DiagnosticCodes.MissingKey, "there is no source", power.At, "name at least a battery below 'sources:'");
        }

        sources.AddRange(Converters(draft, power));
        var ground = power?.Text("ground") == "positive" ? GroundPolarity.Positive : GroundPolarity.Negative;
        return new PowerSystem(ground, power?.Text("returns-by") == "wire" ? ReturnPath.Wire : ReturnPath.Body, sources.ToImmutable());
    }

    private static ImmutableArray<Source> Converters(Draft draft, InputMap? power)
    {
        var converters = ImmutableArray.CreateBuilder<Source>();
        var blocks = draft.Blocks("converters", power ?? Empty(draft)).ToArray();
        foreach (var (name, map) in blocks)
        {
            draft.Add(ThingReader.ReadSource(name, map, ThingKind.Converter, draft), name);
        }

        foreach (var (name, map) in blocks)
        {
            var from = draft.ThingNamed(map.TextNode("fed-from"), "source", ThingKind.Battery, ThingKind.Alternator, ThingKind.Converter);
            converters.Add(new Source { Id = name.Value, Kind = SourceKind.Converter, NominalV = map.Number("nominal") ?? 0, OutputA = map.Number("output"), InternalOhm = map.Number("internal"), FedFrom = from?.Id, At = name.At });
        }

        foreach (var converter in converters.Where(c => FeedsItself(c, converters)))
        {
            draft.Bag.Error(DiagnosticCodes.Cycle, $"the converter '{converter.Id}' is fed, in the end, from itself", converter.At, "one converter of the ring must be fed from a battery or alternator");
        }

        return converters.ToImmutable();
    }

    private static bool FeedsItself(Source converter, ImmutableArray<Source>.Builder converters)
    {
        var at = converter.FedFrom;
        for (var steps = 0; at is not null && steps <= converters.Count; steps++)
        {
            if (at == converter.Id)
            {
                return true;
            }

            at = converters.FirstOrDefault(c => c.Id == at)?.FedFrom;
        }

        return false;
    }

    /// <summary>Protections; call it after the things are read.</summary>
    public static ImmutableArray<Protection> ReadProtections(Draft draft)
    {
        NameRules.ReportCaseOnly(draft.Root.Map("protection"), "protection", draft.Bag);
        var protections = ImmutableArray.CreateBuilder<Protection>();
        foreach (var (name, map) in draft.Blocks("protection"))
        {
            var on = draft.ThingNamed(map.TextNode("on"), "bus bar, stud or panel", ThingKind.BusBar, ThingKind.Stud, ThingKind.FusePanel, ThingKind.Battery, ThingKind.Starter, ThingKind.Alternator);
            var side = map.Has("side") ? ChoiceWords.Side(map.Text("side")) : on?.Side ?? Side.Bay;
            draft.Add(Fuse(name, map, side, Place(name, map, on, draft)), name);
            protections.Add(new Protection
            {
                Id = name.Value,
                Kind = ChoiceWords.Protection(map.Text("kind")),
                RatingA = map.Number("rating"),
                On = on?.Id,
                LinkAreaMm2 = WireSizes.Read(map.TextNode("link-size"), null, draft).AreaMm2,
                LinkLengthMm = map.Number("link-length"),
                Protects = [.. map.TextNodes("protects").Where(draft.IsCircuit).Select(c => c.Value)],
                At = name.At,
            });
        }

        return protections.ToImmutable();
    }

    private static Thing Fuse(InputText name, InputMap map, Side side, string place)
    {
        // bolt-in fuses and links end in rings, blade fuses and breakers in push-on contacts of their holder
        var bolted = ChoiceWords.Protection(map.Text("kind")) is ProtectionKind.BoltIn or ProtectionKind.FusibleLink;
        var style = bolted ? PinStyle.Stud : PinStyle.Blade;
        var size = bolted ? "M8" : "6.3";
        return new Thing
        {
            Id = name.Value,
            Label = map.Text("label") ?? name.Value.ToUpperInvariant(),
            Kind = ThingKind.Fuse,
            Place = place,
            Side = side,
            Pins = [new Pin("in", style, size), new Pin("out", style, size)],
            Elements = [new Element("fuse", ElementKind.Fuse, "in", "out") { RatedA = map.Number("rating") }],
            Note = map.Text("note"),
            TorqueNm = map.Number("torque"),
            At = name.At,
        };
    }

    private static string Place(InputText name, InputMap map, Thing? on, Draft draft)
    {
        if (map.TextNode("at") is { } at)
        {
            return draft.Thing(at.Value)?.Place ?? at.Value;
        }

        if (on is null && !map.Has("on"))
        {
            draft.Bag.Error(DiagnosticCodes.MissingKey, $"'{name.Value}' does not say where it sits", name.At, "add 'on: bus bar' or 'at: PLACE'");
        }

        return on?.Place ?? "";
    }

    private static InputMap Empty(Draft draft) => new([], draft.Root.At);
}
