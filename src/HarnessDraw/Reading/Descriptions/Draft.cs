using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>What the readers of one description share while it is resolved: what is known so far and where messages go.</summary>
internal sealed class Draft(InputMap root, Catalogue catalogue, VehicleLayout? layout, DiagnosticBag bag)
{
    private readonly Dictionary<string, Thing> _things = new(StringComparer.Ordinal);
    private readonly HashSet<string> _withoutPins = new(StringComparer.Ordinal);

    public InputMap Root { get; } = root;

    public Catalogue Catalogue { get; } = catalogue;

    /// <summary>Null when the layout could not be read; then places are not checked.</summary>
    public VehicleLayout? Layout { get; } = layout;

    public DiagnosticBag Bag { get; } = bag;

    public OptionSet Options { get; set; } = OptionSet.None;

    /// <summary>In the order of the description: sources, converters, things, protections.</summary>
    public List<Thing> Things { get; } = [];

    public ImmutableArray<string> PlaceNames { get; } = layout is null ? [] : [.. layout.Places.Select(p => p.Id)];

    public ImmutableArray<string> CircuitNames { get; } = [.. root.Map("circuits")?.Entries.Select(e => e.Key.Value) ?? []];

    /// <summary>True when a mate splits the harness into sides; without one all wires are made.</summary>
    public bool HasMates => Things.Any(t => t.Kind == ThingKind.Mate);

    /// <summary>True when the wires on this side are made.</summary>
    public bool IsBuilt(Side side) => side == Side.Bay || !HasMates || Things.Any(t => t.BothSidesBuilt);

    public Thing? Thing(string id) => _things.GetValueOrDefault(id);

    public void Add(Thing thing, InputText name)
    {
        if (_things.TryGetValue(thing.Id, out var first))
        {
            Bag.Error(DiagnosticCodes.DuplicateName, $"'{thing.Id}' is the name of two things", name.At, "rename one of them", first.At);
            Bag.Doubt(thing.Id);
            return;
        }

        _things.Add(thing.Id, thing);
        Things.Add(thing);
    }

    /// <summary>A thing that is named, of one of the kinds; reported when it is not there or of another kind.</summary>
    public Thing? ThingNamed(InputText? name, string kindInWords, params ReadOnlySpan<ThingKind> kinds)
    {
        if (name is null)
        {
            return null;
        }

        var thing = Thing(name.Value);
        if (thing is not null && (kinds.IsEmpty || kinds.Contains(thing.Kind)))
        {
            return thing;
        }

        var wanted = kinds.ToArray();
        string[] fitting = [.. Things.Where(t => wanted.Length == 0 || wanted.Contains(t.Kind)).Select(t => t.Id)];
        if (thing is null)
        {
            if (!kinds.IsEmpty && Root.Map("protection")?.Has(name.Value) == true)
            {
                Bag.Error(DiagnosticCodes.WrongKind, $"'{name.Value}' is a protection and not a {kindInWords}", name.At, NameRules.Listed(fitting, kindInWords));
                return null;
            }

            NameRules.Report(name, fitting, kindInWords, Bag);
        }
        else
        {
            Bag.Error(DiagnosticCodes.WrongKind, $"'{name.Value}' is not a {kindInWords}", name.At, NameRules.Listed(fitting, kindInWords));
        }

        return null;
    }

    /// <summary>True for a circuit; anything else is reported, but not name by name where the whole block is missing, which is a mistake of its own.</summary>
    public bool IsCircuit(InputText name) => Root.Map("circuits") is not null && NameRules.Known(name, CircuitNames, "circuit", Bag);

    /// <summary>A connector of the catalogue by its name; null, and reported, when there is none. Of the thing that has it nothing is said about pins then.</summary>
    public ConnectorPart? ConnectorNamed(InputText? name, InputText thing)
    {
        if (name is null)
        {
            return null;
        }

        var part = Catalogue.Connectors.FirstOrDefault(c => c.Id == name.Value);
        if (part is null)
        {
            // those of one family first: 'motor-3' may want 'motor-4'
            var family = name.Value[..(name.Value.LastIndexOf('-') + 1)];
            string[] like = [.. Catalogue.Connectors.Select(c => c.Id).Where(c => family.Length > 0 && c.StartsWith(family, StringComparison.Ordinal))];
            NameRules.Report(name, like.Length > 1 ? like : [.. Catalogue.Connectors.Select(c => c.Id)], "connector in the catalogue", Bag, listed: like.Length > 1);
            _withoutPins.Add(thing.Value);
        }

        return part;
    }

    /// <summary>True when the pins of a thing cannot be known because its connector is not in the catalogue.</summary>
    public bool IsWithoutPins(string thing) => _withoutPins.Contains(thing);

    /// <summary>Reports a pin that a thing lacks, unless the thing's connector is unknown: that mistake has been told, and its pins cannot be known.</summary>
    public void PinError(string thing, string text, SourceSpan at, string? hint, SourceSpan? see = null)
    {
        if (!IsWithoutPins(thing))
        {
            Bag.Error(DiagnosticCodes.UnknownPin, text, at, hint, see);
        }
    }

    /// <summary>Blocks of a named section, in the order typed; an empty value counts as an empty block.</summary>
    public IEnumerable<(InputText Name, InputMap Map)> Blocks(string key, InputMap? of = null) =>
        ((of ?? Root).Map(key)?.Entries ?? []).Select(e => (e.Key, e.Value as InputMap ?? new InputMap([], e.Value.At)));
}
