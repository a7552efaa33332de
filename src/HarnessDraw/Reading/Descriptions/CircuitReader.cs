using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads one circuit: resolves its pins, mate, colour, size, duty. Nets are made from it by <see cref="NetBuilder"/>.</summary>
internal sealed class CircuitReader(Draft draft, PinResolver pins)
{
    public CircuitDraft Read(InputText name, InputMap map)
    {
        var broken = false;
        var froms = Pins(map.TextNodes("from"), PinUse.Source, ref broken);
        var feeds = Pins(map.TextNodes("feeds"), PinUse.Sink, ref broken);
        var to = Pins(map.TextNodes("to"), PinUse.Sink, ref broken).Select(p => ((PinRef, InputText)?)p).FirstOrDefault();
        var route = Route(map, ref broken);
        var mate = draft.ThingNamed(map.TextNode("enters-by"), "mate", ThingKind.Mate);
        broken |= mate is null && map.Has("enters-by");
        if (map.Has("route-by") && map.EntryOf("enters-by") is { } twice)
        {
            draft.Bag.Error(DiagnosticCodes.ChosenTwice, $"'{name.Value}' has both 'route-by' and 'enters-by'", twice.Key.At, "name the mate in 'route-by' alone");
        }

        if (to is not null && !feeds.IsEmpty)
        {
            draft.Bag.Error(DiagnosticCodes.ChosenTwice, $"'{name.Value}' has both 'feeds' and 'to'", map.EntryOf("to")!.Key.At, "a circuit of returns has 'to', one that brings current to loads has 'feeds': make two of it");
        }

        if (to is { } ground)
        {
            broken |= !IsReturnTarget(ground.Item1, ground.Item2);
        }

        return new CircuitDraft(name, map, Circuit(name, map, mate, froms, feeds, to?.Item1, route))
        {
            Froms = froms,
            Feeds = feeds,
            To = to,
            Mate = mate,
            Cavities = Cavities(map, mate),
            Colours = Colours(name, map, Math.Max(froms.Length, feeds.Length)),
            RouteBy = route,
            ByHand = HandWires(map, ref broken),
            Broken = broken,
        };
    }

    private Circuit Circuit(InputText name, InputMap map, Thing? mate, ImmutableArray<(PinRef Pin, InputText)> froms, ImmutableArray<(PinRef Pin, InputText)> feeds, PinRef? to, ImmutableArray<(PinRef Pin, InputText)> route)
    {
        var (duty, dutyText) = DutyText.Read(map.TextNode("duty"), name.Value, draft.Bag);
        var type = WireType(map.TextNode("wire-type")) ?? WireType(draft.Root.TextNode("wire-type"));
        var (areaMm2, awg) = WireSizes.Read(map.TextNode("size"), type, draft);
        ImmutableArray<PinRef> ends = [.. feeds.Select(f => f.Pin)];
        return new Circuit
        {
            Id = name.Value,
            From = froms.Select(f => f.Pin).FirstOrDefault() ?? route.Select(r => r.Pin).FirstOrDefault(),
            Feeds = to is not null ? [to] : ends.IsEmpty && route.Length > 1 ? [route[^1].Pin] : ends,
            EntersBy = mate?.Id ?? route.Select(r => r.Pin.Thing).FirstOrDefault(t => draft.Thing(t)?.Kind == ThingKind.Mate),
            Half = Half(map.TextNode("half"), mate),
            Duty = duty,
            DutyText = dutyText,
            Importance = map.Text("importance") == "critical" ? Importance.Critical : Importance.Ordinary,
            Colour = map.TextNodes("colour") is { IsEmpty: false } colours ? ColourText.Read(colours[0], draft.Bag) : null,
            AreaMm2 = areaMm2,
            Awg = awg,
            WireType = type?.Id,
            ReplacesWireType = WireType(map.TextNode("replaces"))?.Id,
            TriggersOnly = map.YesNo("triggers-only") ?? false,
            UnfusedBecause = map.Text("unfused"),
            ProtectedBy = [.. map.TextNodes("protected-by").Select(p => draft.ThingNamed(p, "protection", ThingKind.Fuse)).OfType<Thing>().Select(p => p.Id)],
            IsReturn = to is not null,
            OnlyWith = draft.Options.ReadCondition(map.Map("only-with"), $"the circuit '{name.Value}'", draft.Bag),
            WhenNotFitted = map.Text("when-not-fitted"),
            Cable = Cable(name, map),
            CurrentA = map.TextNode("draws")?.Unit is "A" or "mA" ? map.Number("draws") : null,
            At = name.At,
        };
    }

    private ImmutableArray<(PinRef, InputText)> Pins(ImmutableArray<InputText> texts, PinUse use, ref bool broken)
    {
        var found = ImmutableArray.CreateBuilder<(PinRef, InputText)>();
        foreach (var text in texts)
        {
            if (pins.Resolve(text, use) is { } pin)
            {
                found.Add((pin, text));
            }
            else
            {
                broken = true;
            }
        }

        return found.ToImmutable();
    }

    // the first name is where current comes from
    private ImmutableArray<(PinRef, InputText)> Route(InputMap map, ref bool broken)
    {
        var texts = map.TextNodes("route-by");
        return texts.IsEmpty ? [] : [.. Pins(texts[..1], PinUse.Source, ref broken), .. Pins(texts[1..], PinUse.Sink, ref broken)];
    }

    private bool IsReturnTarget(PinRef pin, InputText at)
    {
        var thing = draft.Thing(pin.Thing)!;
        if (thing.Kind is ThingKind.GroundPoint or ThingKind.Stud or ThingKind.BusBar or ThingKind.Battery or ThingKind.Alternator or ThingKind.Converter or ThingKind.Inline or ThingKind.ControlUnit)
        {
            return true;
        }

        draft.Bag.Error(DiagnosticCodes.WrongKind, $"'{at.Value}' is no ground point, stud or battery post to return to", at.At, "pins that are fed stand in 'feeds'");
        return false;
    }

    private ImmutableArray<string> Cavities(InputMap map, Thing? mate)
    {
        var typed = map.TextNodes("cavity");
        if (typed.IsEmpty || mate is null)
        {
            if (!typed.IsEmpty && !map.Has("enters-by"))
            {
                draft.Bag.Error(DiagnosticCodes.MissingKey, "a cavity is fixed, but no mate is named", typed[0].At, "add 'enters-by:'; in 'route-by' write 'firewall.B9'");
            }

            return [];
        }

        if (draft.IsWithoutPins(mate.Id))
        {
            return [];
        }

        string[] names = [.. mate.Pins.Select(p => p.Name)];
        return [.. typed.Where(c => NameRules.Known(c, names, $"cavity of '{mate.Id}'", draft.Bag)).Select(c => c.Value)];
    }

    // the first was read as the circuit's own
    private ImmutableArray<string> Colours(InputText name, InputMap map, int conductors)
    {
        var typed = map.TextNodes("colour");
        if (typed.Length < 2)
        {
            return [];
        }

        if (!map.Has("cable") || typed.Length != conductors)
        {
            draft.Bag.Error(DiagnosticCodes.ListLength, $"'{name.Value}' has {typed.Length} colours", typed[1].At, map.Has("cable") ? $"the cable has {conductors} conductors: give one colour each" : "only a cable has several: give one");
        }

        return [typed[0].Value, .. typed.Skip(1).Select(t => ColourText.Read(t, draft.Bag)).OfType<string>()];
    }

    private string? Half(InputText? text, Thing? mate)
    {
        if (text is null || mate is null)
        {
            return null;
        }

        var half = mate.Halves.FirstOrDefault(h => h.Name == text.Value || h.Letter == text.Value);
        if (half is null)
        {
            NameRules.Report(text, [.. mate.Halves.SelectMany(h => new[] { h.Name, h.Letter })], $"half of '{mate.Id}'", draft.Bag);
        }

        return half?.Letter;
    }

    private WireType? WireType(InputText? text)
    {
        var type = text is null ? null : draft.Catalogue.WireTypes.FirstOrDefault(w => w.Id == text.Value);
        if (text is not null && type is null)
        {
            NameRules.Report(text, [.. draft.Catalogue.WireTypes.Select(w => w.Id)], "wire type in the catalogue", draft.Bag);
        }

        return type;
    }

    private Cable? Cable(InputText name, InputMap map)
    {
        if (map.Map("cable") is not { } cable)
        {
            return null;
        }

        var screen = cable.Map("screen");
        var grounded = screen?.TextNode("grounded-at") is { } at ? pins.Resolve(at, PinUse.Sink) : null;
        return new Cable(cable.Text("id") ?? name.Value, cable.Number("twisted"), screen is not null || cable.YesNo("screen") == true, grounded);
    }

    private ImmutableArray<HandWire> HandWires(InputMap map, ref bool broken)
    {
        var wires = ImmutableArray.CreateBuilder<HandWire>();
        foreach (var wire in map.List("by-hand").OfType<InputMap>())
        {
            var from = wire.TextNode("from") is { } f ? pins.Resolve(f, PinUse.Source) : null;
            var to = wire.TextNode("to") is { } t ? pins.Resolve(t, PinUse.Sink) : null;
            if (from is null || to is null || wire.TextNode("wire") is not { } id)
            {
                broken = true;
                continue;
            }

            if (from == to && from.Pin is not null)
            {
                draft.Bag.Error(DiagnosticCodes.NotACable, $"the wire '{id.Value}' leads from {from} to itself", wire.TextNode("to")!.At);
            }

            var (areaMm2, awg) = WireSizes.Read(wire.TextNode("size"), WireType(map.TextNode("wire-type")), draft);
            wires.Add(new HandWire
            {
                Id = id.Value,
                From = from,
                To = to,
                AreaMm2 = areaMm2,
                Awg = awg,
                Colour = ColourText.Read(wire.TextNode("colour"), draft.Bag),
                Route = [.. wire.TextNodes("route").Where(p => draft.Layout is null || NameRules.Known(p, draft.PlaceNames, "place", draft.Bag)).Select(p => p.Value)],
                CutLengthMm = wire.Number("cut"),
                At = id.At,
            });
        }

        return wires.ToImmutable();
    }
}
