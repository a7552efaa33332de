using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Makes the electrical elements of one thing: loads with their returns, relay coil and contacts, switch contacts.</summary>
internal sealed class ElementReader(InputText thing, InputMap map, PinList pins, ThingKind kind, Draft draft)
{
    private readonly ImmutableArray<ReturnPin> _returns = Returns(map);

    /// <summary>'returns' in its three spellings.</summary>
    public static ImmutableArray<ReturnPin> Returns(InputMap map) => map.Find("returns") switch
    {
        InputMap byPin => [.. byPin.Entries.Select(e => new ReturnPin(e.Key.Value, (e.Value as InputText)?.Value))],
        _ => [.. map.Texts("returns").Select(p => new ReturnPin(p, null))],
    };

    /// <summary>Every pin name that keys other than the fastenings speak of, in a stable order.</summary>
    public static ImmutableArray<string> Mentioned(InputMap map)
    {
        var relay = map.Map("relay");
        return
        [
            .. new[]
            {
                LoadKeys.Of(map).Select(l => l.Pin).OfType<string>(),
                relay?.Texts("coil") ?? [],
                RelayPairs(relay, "makes").Concat(RelayPairs(relay, "breaks")).SelectMany(p => new[] { p.A.Value, p.B.Value }),
                (map.Map("switch")?.Entries ?? []).SelectMany(e => new[] { e.Key.Value }.Concat(map.Map("switch")!.Texts(e.Key.Value))),
                map.Texts("diode"),
                Returns(map).Select(r => r.Pin),
            }.SelectMany(x => x).Distinct(),
        ];
    }

    public ImmutableArray<Element> Read()
    {
        var elements = ImmutableArray.CreateBuilder<Element>();
        foreach (var returned in _returns)
        {
            pins.Mention(returned.Pin, map.Find("returns")!.At);
        }

        ReadRelay(elements);
        ReadSwitch(elements);
        ReadDiode(elements);
        ReadLoads(elements);
        if (kind == ThingKind.Starter && elements.Count == 0)
        {
            AddStarter(elements);
        }

        return elements.ToImmutable();
    }

    private void ReadLoads(ImmutableArray<Element>.Builder elements)
    {
        var loads = LoadKeys.Of(map);
        var fed = loads.Select(l => l.Pin ?? FirstFed()).OfType<string>().ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < loads.Length; i++)
        {
            var load = loads[i];
            var pin = load.Pin ?? FirstFed();
            if (pin is null)
            {
                draft.PinError(thing.Value, $"'{thing.Value}' has a load but no pin to feed it by", load.At, "give it a plug, blades, studs or leads");
                continue;
            }

            if (!pins.Mention(pin, load.At))
            {
                continue;
            }

            var elementKind = KindOf(load, pin);
            elements.Add(new Element($"{load.Key} {pin}", elementKind, pin, ReturnOf(load, i, loads.Length, fed))
            {
                CurrentA = load.Figure.Unit is "A" or "mA" ? load.Figure.Number : null,
                PowerW = load.Figure.Unit is "W" or "kW" ? load.Figure.Number : null,
                ResistanceOhm = elementKind == ElementKind.Sender ? load.Figure.Number : loads.Length == 1 ? map.Number("resistance") : null,
                NominalV = map.Number("nominal"),
                PeakA = map.Number("stalls"),
            });
        }

        if (loads.IsEmpty && kind == ThingKind.Sender && FirstFed() is { } signal)
        {
            elements.Add(new Element($"sender {signal}", ElementKind.Sender, signal, OtherOfTwo(signal, [signal])) { ResistanceOhm = map.Number("resistance") });
        }
    }

    // a starter's stud feeds its motor, its blade the solenoid
    private ElementKind KindOf(LoadTyped load, string pin) =>
        load.Key != "draws" ? load.Kind
        : kind switch
        {
            ThingKind.Starter => pins.Pins.First(p => p.Name == pin).Style == PinStyle.Stud ? ElementKind.Motor : ElementKind.Coil,
            ThingKind.Lamp => ElementKind.Lamp,
            ThingKind.Motor => ElementKind.Motor,
            ThingKind.Alternator => ElementKind.Coil,
            ThingKind.ControlUnit or ThingKind.Converter => ElementKind.Electronic,
            _ => load.Kind,
        };

    private void AddStarter(ImmutableArray<Element>.Builder elements)
    {
        foreach (var pin in pins.Pins)
        {
            elements.Add(pin.Style == PinStyle.Stud
                ? new Element($"motor {pin.Name}", ElementKind.Motor, pin.Name, null)
                : new Element($"coil {pin.Name}", ElementKind.Coil, pin.Name, null));
        }
    }

    private string? FirstFed() => pins.Names.FirstOrDefault(n => _returns.All(r => r.Pin != n));

    private string? ReturnOf(LoadTyped load, int index, int count, HashSet<string> fed)
    {
        if (!_returns.IsEmpty)
        {
            return _returns[_returns.Length == count ? index : 0].Pin;
        }

        var pin = load.Pin ?? FirstFed()!;
        if (map.YesNo("grounds-itself") == true || OtherOfTwo(pin, fed) is not null)
        {
            return map.YesNo("grounds-itself") == true ? null : OtherOfTwo(pin, fed);
        }

        var mayGroundItself = kind is ThingKind.Starter or ThingKind.Sender or ThingKind.Alternator or ThingKind.Battery or ThingKind.Converter;
        if (!mayGroundItself || map.YesNo("grounds-itself") == false)
        {
            draft.Bag.Error(DiagnosticCodes.NoReturn, $"'{thing.Value}' has no way back for the current of {load.Key} {pin}", load.At, "add 'returns: PIN', or 'grounds-itself: yes'");
        }

        return null;
    }

    private string? OtherOfTwo(string pin, HashSet<string> fed)
    {
        string[] names = [.. pins.Names];
        return names.Length == 2 && names.Contains(pin) ? names.First(n => n != pin) is { } other && !fed.Contains(other) ? other : null : null;
    }

    private void ReadRelay(ImmutableArray<Element>.Builder elements)
    {
        if (map.Map("relay") is not { } relay)
        {
            return;
        }

        var coil = relay.TextNodes("coil");
        if (coil.Length == 2 && coil.Count(p => pins.Mention(p.Value, p.At)) == 2)
        {
            var draws = relay.TextNode("coil-draws");
            elements.Add(new Element("coil", ElementKind.Coil, coil[0].Value, coil[1].Value)
            {
                CurrentA = draws?.Unit is "A" or "mA" ? draws.Number : null,
                PowerW = draws?.Unit is "W" or "kW" ? draws.Number : null,
                ResistanceOhm = relay.Number("coil-resistance"),
                NominalV = map.Number("nominal"),
            });
            if (relay.Text("suppression") == "diode")
            {
                // the cathode of a relay's own diode is at 86, which is the fed end; DIN 72552 names the ends, the diode's place is common practice
                var (anode, cathode) = coil[0].Value == "86" ? (coil[1].Value, coil[0].Value) : (coil[0].Value, coil[1].Value);
                elements.Add(new Element("diode", ElementKind.Diode, anode, cathode));
            }
        }

        foreach (var key in new[] { "makes", "breaks" })
        {
            foreach (var (a, b) in RelayPairs(relay, key))
            {
                AddContact(elements, $"{key} {a.Value}-{b.Value}", a, b, "coil", relay.Number("contact"));
            }
        }
    }

    private void ReadDiode(ImmutableArray<Element>.Builder elements)
    {
        if (map.TextNodes("diode") is [var anode, var cathode] && pins.Mention(anode.Value, anode.At) && pins.Mention(cathode.Value, cathode.At))
        {
            elements.Add(new Element("diode", ElementKind.Diode, anode.Value, cathode.Value));
        }
    }

    private void ReadSwitch(ImmutableArray<Element>.Builder elements)
    {
        foreach (var entry in map.Map("switch")?.Entries ?? [])
        {
            foreach (var to in map.Map("switch")!.TextNodes(entry.Key.Value))
            {
                AddContact(elements, $"contact {entry.Key.Value}-{to.Value}", entry.Key, to, null, map.Number("contact"));
            }
        }
    }

    private void AddContact(ImmutableArray<Element>.Builder elements, string id, InputText a, InputText b, string? workedBy, double? ratedA)
    {
        if (a.Value == b.Value)
        {
            draft.Bag.Error(DiagnosticCodes.Cycle, $"a contact of '{thing.Value}' joins the pin '{a.Value}' to itself", b.At);
            return;
        }

        if (pins.Mention(a.Value, a.At) && pins.Mention(b.Value, b.At))
        {
            elements.Add(new Element(id, ElementKind.Contact, a.Value, b.Value) { WorkedBy = workedBy, RatedA = ratedA });
        }
    }

    // [30, 87] or [[30, 87], [30b, 87b]]
    private static IEnumerable<(InputText A, InputText B)> RelayPairs(InputMap? relay, string key)
    {
        var items = relay?.List(key) ?? [];
        if (items.Length == 2 && items[0] is InputText a && items[1] is InputText b)
        {
            return [(a, b)];
        }

        return items.OfType<InputList>().Where(p => p.Items.Length == 2).Select(p => (p.Items[0], p.Items[1])).Where(p => p is (InputText, InputText)).Select(p => ((InputText)p.Item1, (InputText)p.Item2));
    }
}
