using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads one thing, source or converter into a <see cref="Thing"/>: where it sits, how wires are fastened to it, what it does electrically.</summary>
internal sealed class ThingReader(InputText name, InputMap map, Draft draft)
{
    private static readonly ImmutableArray<(string Key, ThingKind Kind)> TellingKeys =
    [
        ("mate", ThingKind.Mate),
        ("inline", ThingKind.Inline),
        ("relay", ThingKind.Relay),
        ("switch", ThingKind.Switch),
        ("bar", ThingKind.BusBar),
        ("ground", ThingKind.GroundPoint),
        ("lamp", ThingKind.Lamp),
        ("beams", ThingKind.Lamp),
        ("motor", ThingKind.Motor),
        ("sender", ThingKind.Sender),
    ];

    private readonly PinList _pins = new(name, map, draft);

    public static Thing Read(InputText name, InputMap map, Draft draft) => new ThingReader(name, map, draft).Read();

    /// <summary>A source or converter as a thing; its elements are made from its posts and studs.</summary>
    public static Thing ReadSource(InputText name, InputMap map, ThingKind kind, Draft draft) => new ThingReader(name, map, draft).ReadSource(kind);

    private Thing Read()
    {
        var told = TellingKeys.Where(t => map.Has(t.Key)).ToArray();
        if (told.FirstOrDefault(t => t.Kind is ThingKind.Mate or ThingKind.Inline or ThingKind.BusBar or ThingKind.GroundPoint) is { Key: { } whole }
            && told.FirstOrDefault(t => t.Key != whole) is { Key: { } other })
        {
            InputText[] keys = [.. map.Entries.Select(e => e.Key).Where(k => k.Value == whole || k.Value == other)];
            draft.Bag.Error(DiagnosticCodes.ChosenTwice, $"'{name.Value}' has both '{keys[0].Value}' and '{keys[1].Value}'", keys[1].At, "make two things of it", keys[0].At);
        }

        var kind = told.Length > 0 && told[0].Kind is ThingKind.Mate or ThingKind.Inline or ThingKind.BusBar or ThingKind.GroundPoint
            ? told[0].Kind
            : ChoiceWords.Kind(map.Text("kind")) ?? Starter() ?? (told.Length > 0 ? told[0].Kind : ThingName.Kind(name.Value));
        var special = kind switch
        {
            ThingKind.Mate => ReadMate(),
            ThingKind.Inline => ReadInline(),
            ThingKind.BusBar when map.Has("bar") => ReadBar(),
            ThingKind.GroundPoint when map.TextNode("ground") is { } thread => Common(ThingKind.GroundPoint) with { Pins = [new Pin("1", PinStyle.Stud, thread.Value)], Surface = SurfaceNamed() },
            _ => null,
        };
        if (special is not null)
        {
            return special;
        }

        _pins.ReadFastenings(ElementReader.Mentioned(map).AsSpan());
        var known = kind ?? (_pins.Pins.Any() && _pins.Pins.All(p => p.Style == PinStyle.Stud) && LoadKeys.Of(map).IsEmpty ? ThingKind.Stud : ThingKind.Load);
        var elements = new ElementReader(name, map, _pins, known, draft).Read();
        if (known is ThingKind.Stud or ThingKind.BusBar or ThingKind.FusePanel)
        {
            elements = elements.AddRange(Links([.. _pins.Names]));
        }

        return Finished(Common(known), elements) with { Surface = SurfaceNamed() };
    }

    // a starter has a motor, but turns only while cranking: its name says more than the key
    private ThingKind? Starter() => ThingName.Kind(name.Value) is ThingKind.Starter and var starter ? starter : null;

    private Thing ReadSource(ThingKind kind)
    {
        _pins.ReadFastenings(ElementReader.Mentioned(map).AsSpan());
        var loads = new ElementReader(name, map, _pins, kind, draft).Read();
        if (!_pins.Names.Any())
        {
            draft.Bag.Error(DiagnosticCodes.MissingKey, $"'{name.Value}' has no post, stud or pin to take current from", name.At, "add 'posts: { plus: M8, minus: M8 }' or 'studs: { B+: M6 }'");
            return Finished(Common(kind), loads);
        }

        return Finished(Common(kind), [.. SourcePins.Elements(kind, [.. _pins.Pins], [.. _pins.Names], map), .. loads]);
    }

    private Thing Finished(Thing thing, ImmutableArray<Element> elements) => thing with
    {
        ConnectorPart = _pins.Plug?.Id,
        Pins = _pins.ToPins(),
        Elements = elements,
        Returns = ElementReader.Returns(map),
        GroundsItself = map.YesNo("grounds-itself") == true,
        TorqueNm = map.Number("torque"),
        Contacts = map.Text("contacts") == "pins" ? ContactGender.Pins : ContactGender.Sockets,
    };

    private Thing Common(ThingKind kind)
    {
        var side = ChoiceWords.Side(map.Text("side"));
        var place = map.TextNode("at");
        return new Thing
        {
            Id = name.Value,
            Label = map.Text("label") ?? ThingName.Label(name.Value),
            SideMark = ThingName.SideMark(name.Value),
            Kind = kind,
            Place = place?.Value ?? "",
            Side = side,
            OnlyWith = draft.Options.ReadCondition(map.Map("only-with"), $"'{name.Value}'", draft.Bag),
            Note = map.Text("note"),
            Suppression = map.Map("relay")?.Text("suppression"),
            Allowances = AllowanceReader.Read(map.Map("allowances"), draft.Bag),
            LeastLoadA = map.Number("least-load"),
            TorqueNm = map.Number("torque"),
            At = name.At,
        };
    }

    private Thing ReadMate()
    {
        var part = draft.ConnectorNamed(map.TextNode("mate"), name);
        if (part is { IsBulkhead: false })
        {
            draft.Bag.Error(DiagnosticCodes.WrongKind, $"'{part.Id}' is not a bulkhead connector", map.TextNode("mate")!.At, NameRules.Listed([.. draft.Catalogue.Connectors.Where(c => c.IsBulkhead).Select(c => c.Id)], "bulkhead connector"));
        }

        return Common(ThingKind.Mate) with
        {
            ConnectorPart = part?.Id,
            Pins = CavitiesOf(part),
            Halves = Halves(part),
            BothSidesBuilt = map.Text("builds") == "both sides",
        };
    }

    private ImmutableArray<HalfName> Halves(ConnectorPart? part)
    {
        string[] letters = [.. (part?.Cavities ?? []).Select(c => c.Half).OfType<string>().Distinct()];
        var halves = ImmutableArray.CreateBuilder<HalfName>();
        foreach (var entry in map.Map("halves")?.Entries ?? [])
        {
            if (entry.Value is InputText letter && (part is null || NameRules.Known(letter, letters, $"half of {part.Id}", draft.Bag)))
            {
                halves.Add(new HalfName(entry.Key.Value, letter.Value));
            }
        }

        return halves.ToImmutable();
    }

    private Thing ReadInline()
    {
        var part = draft.ConnectorNamed(map.TextNode("inline"), name);
        return Common(ThingKind.Inline) with { ConnectorPart = part?.Id, Pins = CavitiesOf(part) };
    }

    private static ImmutableArray<Pin> CavitiesOf(ConnectorPart? part) =>
        [.. (part?.Cavities ?? []).Select(c => new Pin(c.Name, PinStyle.Cavity, c.Size) { Half = c.Half })];

    // '3 studs M8'
    private Thing ReadBar()
    {
        const int mostStuds = 40;
        var text = map.TextNode("bar");
        var words = text?.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries) ?? [];
        if (text is null || words.Length != 3 || words[1] is not ("studs" or "stud") || !int.TryParse(words[0], System.Globalization.NumberStyles.None, null, out var count) || count is 0 or > mostStuds)
        {
            if (text is not null)
            {
                draft.Bag.Error(DiagnosticCodes.Quantity, $"the bar of '{name.Value}' is '{text.Value}', but a count of studs and their thread are expected", text.At, "write it like '3 studs M8'");
            }

            return Common(ThingKind.BusBar);
        }

        ImmutableArray<Pin> pins = [.. Enumerable.Range(1, count).Select(n => new Pin($"{n}", PinStyle.Stud, words[2]))];
        return Common(ThingKind.BusBar) with { Pins = pins, Elements = Links([.. pins.Select(p => p.Name)]) };
    }

    private static ImmutableArray<Element> Links(ImmutableArray<string> names) =>
        [.. names.Skip(1).Zip(names).Select(pair => new Element($"link {pair.Second}-{pair.First}", ElementKind.Link, pair.Second, pair.First))];

    private string? SurfaceNamed()
    {
        var surface = map.TextNode("on");
        return surface is not null && draft.Layout is { } layout && !NameRules.Known(surface, [.. layout.Surfaces.Select(s => s.Id)], "surface", draft.Bag) ? null : surface?.Value;
    }
}
