using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>
/// Builds the pins of one thing from its studs, blades, leads and plug. Pins that its loads, contacts and returns speak of are added: as
/// cavities of the plug that no other name has taken, or as 6.3 mm blades where the thing says nothing of how it is wired.
/// </summary>
internal sealed class PinList(InputText thing, InputMap map, Draft draft)
{
    private const string UsualBlade = "6.3";
    private readonly List<Pin> _pins = [];
    private readonly List<CavityPart> _free = [];
    private bool _fastened;

    public ConnectorPart? Plug { get; private set; }

    public ImmutableArray<Pin> ToPins()
    {
        // cavities without a name of their own keep theirs
        return [.. _pins, .. _free.Where(c => !Has(c.Name)).Select(c => new Pin(c.Name, PinStyle.Cavity, c.Size) { Half = c.Half })];
    }

    /// <summary>Pins so far, by name, in order.</summary>
    public IEnumerable<string> Names => _pins.Select(p => p.Name).Concat(_free.Select(c => c.Name));

    public IEnumerable<Pin> Pins => _pins;

    public bool Has(string name) => _pins.Any(p => p.Name == name);

    public void ReadFastenings(params ReadOnlySpan<string> mentioned)
    {
        ReadStuds();
        ReadBlades();
        foreach (var lead in map.TextNodes("leads"))
        {
            Add(new Pin(lead.Value, PinStyle.Lead, ""), lead);
        }

        _fastened = _pins.Count > 0;
        UsePlug(draft.ConnectorNamed(map.TextNode("plug"), thing), mentioned);
    }

    /// <summary>Takes the cavities of a catalogue connector; names in 'pins' (and <paramref name="mentioned"/>) that are cavities take these first.</summary>
    public void UsePlug(ConnectorPart? part, params ReadOnlySpan<string> mentioned)
    {
        Plug = part;
        var named = map.Find("pins") as InputMap;
        var listed = map.Find("pins") is InputList list ? [.. list.Items.OfType<InputText>()] : ImmutableArray<InputText>.Empty;
        if (part is null)
        {
            foreach (var pin in listed)
            {
                Add(new Pin(pin.Value, PinStyle.Blade, UsualBlade), pin);
                _fastened = true;
            }

            if (named is not null && !map.Has("plug"))
            {
                draft.Bag.Error(DiagnosticCodes.MissingKey, $"'{thing.Value}' gives cavities to its pins but has no plug", named.At, "add 'plug:', or list the pins in brackets");
            }

            return;
        }

        _fastened = true;
        var taken = TakeNamed(part, named);
        var wanted = listed.Select(p => p.Value).Concat(mentioned.ToArray()).ToHashSet(StringComparer.Ordinal);
        foreach (var cavity in part.Cavities.Where(c => !taken.Contains(c.Name)))
        {
            if (wanted.Contains(cavity.Name) && !Has(cavity.Name))
            {
                _pins.Add(new Pin(cavity.Name, PinStyle.Cavity, cavity.Size) { Half = cavity.Half });
            }
            else
            {
                _free.Add(cavity);
            }
        }

        foreach (var pin in listed.Where(p => !Has(p.Value)))
        {
            Mention(pin.Value, pin.At);
        }
    }

    /// <summary>Makes sure that a pin is there that something speaks of; false (with a message) when it cannot be.</summary>
    public bool Mention(string name, SourceSpan at)
    {
        if (Has(name))
        {
            return true;
        }

        if (_free.Count > 0)
        {
            var cavity = _free.Find(c => c.Name == name) ?? _free[0];
            _free.Remove(cavity);
            _pins.Add(new Pin(name, PinStyle.Cavity, cavity.Size) { Cavity = cavity.Name == name ? null : cavity.Name, Half = cavity.Half });
            return true;
        }

        if (!_fastened)
        {
            _pins.Add(new Pin(name, PinStyle.Blade, UsualBlade));
            return true;
        }

        var why = Plug is null ? "" : $"; its plug {Plug.Id} has {Plug.Cavities.Length} cavities and all have other names";
        draft.PinError(thing.Value, $"'{thing.Value}' has no pin '{name}'{why}", at, NearestName.Hint(name, Names) ?? NameRules.Listed([.. Names], "pin"));
        return false;
    }

    private HashSet<string> TakeNamed(ConnectorPart part, InputMap? named)
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        foreach (var entry in named?.Entries ?? [])
        {
            if (entry.Value is not InputText cavityName)
            {
                continue;
            }

            var cavity = part.Cavities.FirstOrDefault(c => c.Name == cavityName.Value);
            if (cavity is null)
            {
                draft.Bag.Error(DiagnosticCodes.UnknownPin, $"{part.Id} has no cavity '{cavityName.Value}'", cavityName.At, NearestName.Hint(cavityName.Value, part.Cavities.Select(c => c.Name)) ?? NameRules.Listed([.. part.Cavities.Select(c => c.Name)], "cavity"));
            }
            else if (!taken.Add(cavity.Name))
            {
                draft.Bag.Error(DiagnosticCodes.DuplicateName, $"the cavity '{cavity.Name}' is given to two pins", cavityName.At);
            }
            else
            {
                Add(new Pin(entry.Key.Value, PinStyle.Cavity, cavity.Size) { Cavity = cavity.Name == entry.Key.Value ? null : cavity.Name, Half = cavity.Half }, entry.Key);
            }
        }

        return taken;
    }

    private void ReadStuds()
    {
        foreach (var key in new[] { "stud", "studs", "posts" })
        {
            if (map.TextNode(key) is { } single)
            {
                Add(new Pin(Unnamed(), PinStyle.Stud, single.Value), single);
            }

            foreach (var entry in map.Map(key)?.Entries ?? [])
            {
                Add(new Pin(entry.Key.Value, PinStyle.Stud, (entry.Value as InputText)?.Value ?? ""), entry.Key);
            }
        }
    }

    private void ReadBlades()
    {
        foreach (var key in new[] { "blade", "blades" })
        {
            if (map.TextNode(key) is { Number: { } widthMm } single)
            {
                Add(new Pin(Unnamed(), PinStyle.Blade, Units.NumberText.Brief(widthMm)), single);
            }

            foreach (var entry in map.Map(key)?.Entries ?? [])
            {
                var width = (entry.Value as InputText)?.Number;
                Add(new Pin(entry.Key.Value, PinStyle.Blade, width is { } mm ? Units.NumberText.Brief(mm) : UsualBlade), entry.Key);
            }
        }
    }

    private string Unnamed() => Enumerable.Range(1, _pins.Count + 1).Select(n => $"{n}").First(n => !Has(n));

    private void Add(Pin pin, InputText at)
    {
        if (Has(pin.Name))
        {
            draft.Bag.Error(DiagnosticCodes.DuplicateName, $"'{thing.Value}' has two pins '{pin.Name}'", at.At);
            return;
        }

        _pins.Add(pin);
    }
}
