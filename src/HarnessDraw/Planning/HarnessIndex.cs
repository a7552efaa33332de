using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>Look-ups over one harness, made once a run.</summary>
internal sealed class HarnessIndex
{
    private readonly Dictionary<string, Thing> things = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Circuit> circuits = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Zone> zones = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Place> places = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Protection> protections = new(StringComparer.Ordinal);
    private readonly Dictionary<string, WireType> wireTypes = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ConnectorPart> connectors = new(StringComparer.Ordinal);

    public HarnessIndex(Harness harness)
    {
        Harness = harness;
        Fill(things, harness.Things, t => t.Id);
        Fill(circuits, harness.Circuits, c => c.Id);
        Fill(zones, harness.Layout.Zones, z => z.Id);
        Fill(places, harness.Layout.Places, p => p.Id);
        Fill(protections, harness.Protections, p => p.Id);
        Fill(wireTypes, harness.Catalogue.WireTypes, w => w.Id);
        Fill(connectors, harness.Catalogue.Connectors, c => c.Id);
        UsualWire = harness.Catalogue.WireTypes.FirstOrDefault(w => w.IsUsual) ?? harness.Catalogue.WireTypes.FirstOrDefault()
            ?? new WireType("none", "No wire in the catalogue", 105, false, [], "");
        NominalV = harness.Power.NominalV;
    }

    public Harness Harness { get; }
    public WireType UsualWire { get; }
    public double NominalV { get; }

    public Thing? Thing(string id) => things.GetValueOrDefault(id);

    public Circuit Circuit(string id) => circuits[id];

    public Protection? Protection(string id) => protections.GetValueOrDefault(id);

    public Place? Place(string? id) => id is null ? null : places.GetValueOrDefault(id);

    public ConnectorPart? Connector(string? id) => id is null ? null : connectors.GetValueOrDefault(id);

    public WireType WireTypeOf(Circuit circuit) =>
        circuit.WireType is { } id && wireTypes.TryGetValue(id, out var type) ? type : UsualWire;

    public Zone? Zone(string? id) => id is null ? null : zones.GetValueOrDefault(id);

    public double AmbientC(string? zone, PlanningOptions options) => Zone(zone)?.AmbientC ?? options.UsualAmbientC;

    public bool IsWet(string? zone) => Zone(zone)?.Exposure is Exposure.Spray or Exposure.Splash;

    public string PlaceOf(PinRef pin) => Thing(pin.Thing)?.Place ?? Harness.Layout.Root;

    public Pin? PinOf(PinRef pin)
    {
        if (Thing(pin.Thing) is not { } thing)
        {
            return null;
        }

        if (pin.Pin is null)
        {
            return thing.Pins.Length == 1 || IsOneNode(thing) ? thing.Pins.FirstOrDefault() : null;
        }

        // asked for every wire's end again and again: no closure
        foreach (var own in thing.Pins)
        {
            if (own.Name == pin.Pin)
            {
                return own;
            }
        }

        return null;
    }

    public bool IsStud(PinRef pin) => PinOf(pin)?.Style == PinStyle.Stud || (PinOf(pin) is null && Thing(pin.Thing) is { } t && IsOneNode(t));

    public bool IsMate(PinRef pin) => Thing(pin.Thing)?.Kind is ThingKind.Mate or ThingKind.Inline;

    /// <summary>
    /// Pins that stand on the metal of the vehicle without a wire of ours: what a thing of the kept cabin returns by, and the far side of a switch that grounds itself,
    /// where no circuit names the pin.
    /// </summary>
    public IEnumerable<string> SelfGrounded(Thing thing)
    {
        if (Harness.Power.Returns != ReturnPath.Body)
        {
            return [];
        }

        var returns = !Harness.IsBuilt(thing.Side) ? thing.Returns.Select(r => r.Pin) : [];
        var contacts = thing.GroundsItself ? thing.Elements.Where(e => e is { Kind: ElementKind.Contact, WorkedBy: null, PinB: not null } && thing.Elements.All(o => o.PinA != e.PinB)).Select(e => e.PinB!) : [];
        return returns.Concat(contacts).Distinct(StringComparer.Ordinal).Where(p => !Named.Contains((thing.Id, p)));
    }

    private HashSet<(string Thing, string? Pin)> Named => field ??= [.. Harness.Circuits.SelectMany(c => c.Feeds.Append(c.From).OfType<PinRef>()).Select(p => (p.Thing, p.Pin))];

    /// <summary>Things all of whose pins are one piece of metal.</summary>
    public static bool IsOneNode(Thing thing) => thing.Kind is ThingKind.BusBar or ThingKind.Stud or ThingKind.FusePanel or ThingKind.GroundPoint;

    private static void Fill<T>(Dictionary<string, T> into, IEnumerable<T> rows, Func<T, string> id)
    {
        foreach (var row in rows)
        {
            into.TryAdd(id(row), row);
        }
    }
}
