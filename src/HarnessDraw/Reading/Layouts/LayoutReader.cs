using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads a vehicle layout from its checked tree: places, paths, zones, openings, surfaces, body lines.</summary>
public sealed class LayoutReader
{
    private static readonly ImmutableArray<string> Metals = ["steel", "stainless steel", "iron", "cast iron", "aluminium", "aluminum", "copper", "brass", "zinc", "magnesium", "metal"];

    private readonly DiagnosticBag _bag;
    private readonly InputMap _map;
    private readonly ImmutableArray<string> _zones;
    private readonly ImmutableArray<string> _places;

    private LayoutReader(InputMap map, DiagnosticBag bag)
    {
        _bag = bag;
        _map = map;
        _zones = NamesIn("zones");
        _places = NamesIn("places");
    }

    /// <summary>The layout; null when the root is no block. Mistakes are reported and what they touch is left out.</summary>
    public static VehicleLayout? Read(InputNode root, ShapeChecker checker, DiagnosticBag bag)
    {
        ArgumentNullException.ThrowIfNull(checker);
        ArgumentNullException.ThrowIfNull(bag);
        checker.Check(root, LayoutShapes.Layout, "the vehicle layout");
        return root is InputMap map ? new LayoutReader(map, bag).Layout() : null;
    }

    private VehicleLayout Layout()
    {
        NameRules.ReportCaseOnly(_map.Map("places"), "place", _bag);
        return new VehicleLayout
        {
            Title = _map.Text("vehicle-layout") ?? "",
            Root = PlaceNamed(_map.TextNode("root")) ?? "",
            Places = [.. Blocks("places").Select(Place)],
            Paths = Paths(),
            Zones = [.. Blocks("zones").Select(Zone)],
            Openings = [.. Blocks("openings").Select(Opening).OfType<Opening>()],
            Surfaces = [.. Entries("surfaces").Select(Surface)],
            KeepClear = [.. _map.List("keep-clear").OfType<InputMap>().Select(KeepClear)],
            Outline = [.. _map.Find("outline") is InputList lines ? lines.Items.OfType<InputMap>().Select(Line) : []],
        };
    }

    private Place Place((InputText Name, InputMap Map) place)
    {
        var at = Numbers(place.Map.List("at"), 3);
        return new Place(place.Name.Value, at[0], at[1], at[2]) { Zone = ZoneNamed(place.Map), Branch = place.Map.Text("branch"), Behind = place.Map.Text("behind"), At = place.Name.At };
    }

    private ImmutableArray<Model.Path> Paths()
    {
        var paths = ImmutableArray.CreateBuilder<Model.Path>();
        var used = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var map in _map.List("paths").OfType<InputMap>())
        {
            var from = PlaceNamed(map.TextNode("from"));
            var to = PlaceNamed(map.TextNode("to"));
            if (from is null || to is null)
            {
                continue;
            }

            if (from == to)
            {
                _bag.Error(DiagnosticCodes.Cycle, $"a path leads from '{from}' to itself", map.TextNode("to")!.At);
                continue;
            }

            var name = $"{from} - {to}";
            var times = used[name] = used.GetValueOrDefault(name) + 1;
            paths.Add(Path(map, times == 1 ? name : $"{name}:{times}", from, to));
        }

        return paths.ToImmutable();
    }

    private Model.Path Path(InputMap map, string id, string from, string to)
    {
        var measured = map.EntryOf("measured");
        var estimated = map.EntryOf("estimated");
        if (measured is null && estimated is null)
        {
            _bag.Error(DiagnosticCodes.MissingKey, $"the path {id} has no length", map.At, "give 'measured: 420 mm', 'estimated: 420 mm', or 'measured: unknown'");
        }
        else if (measured is not null && estimated is not null)
        {
            _bag.Error(DiagnosticCodes.ChosenTwice, $"the path {id} is measured and estimated", estimated.Key.At, "keep one; a second measurement is 'again'", measured.Key.At);
        }

        var lengthMm = map.Number("measured") ?? map.Number("estimated");
        return new Model.Path(id, from, to)
        {
            LengthMm = lengthMm,
            Known = lengthMm is null ? LengthKnown.Unknown : measured is null ? LengthKnown.Estimated : LengthKnown.Measured,
            AgainMm = map.Number("again"),
            ClipsEveryMm = map.Number("clips-every"),
            Zone = ZoneNamed(map),
            MovesMm = map.Number("moves"),
            At = map.At,
        };
    }

    private static Zone Zone((InputText Name, InputMap Map) zone) =>
        new(zone.Name.Value, zone.Map.Number("ambient"), ChoiceWords.Exposure(zone.Map.Text("exposure")), zone.Name.At);

    private Opening? Opening((InputText Name, InputMap Map) opening)
    {
        var shape = opening.Map.TextNode("shape");
        if (PlaceNamed(opening.Name) is not { } place || shape?.Number is not { } widthMm || shape.Second is not { } heightMm)
        {
            return null;
        }

        var edge = string.Join(", ", opening.Map.Texts("edge"));
        return new Opening(place, widthMm, heightMm, shape.NumberText == "round")
        {
            Panel = opening.Map.Text("panel"),
            RoomWidthMm = opening.Map.Number("room"),
            RoomHeightMm = opening.Map.Second("room"),
            Holds = opening.Map.Text("holds"),
            Datum = opening.Map.Map("datum") is { } datum ? new(datum.Text("from") ?? "", datum.Number("across"), datum.Number("up")) : null,
            OldOpening = edge.Length == 0 ? null : edge,
            At = opening.Name.At,
        };
    }

    private static Surface Surface(InputEntry entry)
    {
        var map = entry.Value as InputMap;
        var material = map?.Text("material") ?? (entry.Value as InputText)?.Value ?? "";
        return new Surface(entry.Key.Value, material, map?.YesNo("conducts") ?? Metals.Contains(material.ToLowerInvariant()));
    }

    private static KeepClear KeepClear(InputMap map)
    {
        var at = Numbers(map.List("at"), 3);
        return new KeepClear(map.Text("what") ?? "", at[0], at[1], at[2], map.Number("by") ?? 0, map.At)
        {
            To = map.List("to") is { IsDefaultOrEmpty: false } end && Numbers(end, 3) is var to ? (to[0], to[1], to[2]) : null,
            Forbidden = map.YesNo("forbidden") ?? false,
        };
    }

    private static BodyLine Line(InputMap map) =>
        new(map.Text("line") ?? "", [.. map.List("points").OfType<InputList>().Select(p => Numbers(p.Items, 2)).Select(p => new PlanPoint(p[0], p[1]))], map.YesNo("closed") ?? false);

    private string? ZoneNamed(InputMap map) =>
        map.TextNode("zone") is { } zone && NameRules.Known(zone, _zones, "zone", _bag) ? zone.Value : null;

    private string? PlaceNamed(InputText? name) =>
        name is not null && NameRules.Known(name, _places, "place", _bag) ? name.Value : null;

    private static double[] Numbers(ImmutableArray<InputNode> items, int count)
    {
        var numbers = new double[count];
        for (var i = 0; i < Math.Min(count, items.Length); i++)
        {
            numbers[i] = (items[i] as InputText)?.Number ?? 0;
        }

        return numbers;
    }

    private ImmutableArray<string> NamesIn(string key) => [.. Entries(key).Select(e => e.Key.Value)];

    private ImmutableArray<InputEntry> Entries(string key) => _map.Map(key)?.Entries ?? [];

    private IEnumerable<(InputText Name, InputMap Map)> Blocks(string key) =>
        Entries(key).Select(e => (e.Key, e.Value as InputMap ?? new InputMap([], e.Value.At)));
}
