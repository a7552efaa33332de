using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Which end of a protection a bare name means.</summary>
internal enum PinUse
{
    /// <summary>Current comes from it: 'F1' means 'F1.out'.</summary>
    Source,

    /// <summary>Current goes to it: 'F1' means 'F1.in'.</summary>
    Sink,
}

/// <summary>Turns 'headlamp left.56b' into a pin; completes bare names where they are clear, reports all others with the nearest.</summary>
internal sealed class PinResolver(Draft draft)
{
    private readonly Dictionary<PinRef, int> _studUses = [];

    public PinRef? Resolve(InputText text, PinUse use)
    {
        if (draft.Thing(text.Value) is { } whole)
        {
            return Complete(whole, text, use);
        }

        for (var dot = text.Value.LastIndexOf('.'); dot > 0; dot = text.Value.LastIndexOf('.', dot - 1))
        {
            if (draft.Thing(text.Value[..dot].TrimEnd()) is { } thing)
            {
                return PinOf(thing, text.Value[(dot + 1)..].TrimStart(), text);
            }
        }

        ReportThing(text);
        return null;
    }

    private PinRef? PinOf(Thing thing, string pin, InputText text)
    {
        if (thing.Pins.Any(p => p.Name == pin))
        {
            var found = new PinRef(thing.Id, pin);
            Count(thing, found);
            return found;
        }

        string[] names = [.. thing.Pins.Select(p => p.Name)];
        var nearest = NearestName.Of(pin, names);
        var hint = nearest is not null ? $"did you mean '{thing.Id}.{nearest}'?" : NameRules.Listed(names, "pin");
        draft.PinError(thing.Id, $"'{thing.Id}' has no pin '{pin}'", text.At, hint, thing.At);
        return null;
    }

    private PinRef? Complete(Thing thing, InputText text, PinUse use)
    {
        switch (thing.Kind)
        {
            case ThingKind.Mate or ThingKind.Inline:
                return new PinRef(thing.Id, null);
            case ThingKind.Fuse:
                return new PinRef(thing.Id, use == PinUse.Source ? "out" : "in");
            case ThingKind.BusBar or ThingKind.Stud or ThingKind.GroundPoint when thing.Pins.Length > 0:
                var stud = thing.Pins.Select(p => new PinRef(thing.Id, p.Name)).MinBy(p => _studUses.GetValueOrDefault(p))!;
                Count(thing, stud);
                return stud;
            case ThingKind.Battery or ThingKind.Alternator or ThingKind.Converter when SourcePin(thing, use) is { } pole:
                return new PinRef(thing.Id, pole);
        }

        string[] candidates = [.. thing.Pins.Select(p => p.Name).Where(p => thing.Returns.All(r => r.Pin != p))];
        if (candidates.Length == 1)
        {
            return new PinRef(thing.Id, candidates[0]);
        }

        var loads = thing.Elements.Where(e => e.Kind is not (ElementKind.Contact or ElementKind.Link)).Select(e => e.PinA).Distinct().ToArray();
        if (use == PinUse.Sink && loads.Length == 1 && thing.Kind != ThingKind.Relay)
        {
            return new PinRef(thing.Id, loads[0]);
        }

        var what = candidates.Length == 0 ? "has no pin that could be meant" : "has several pins; say which";
        draft.PinError(thing.Id, $"'{thing.Id}' {what}", text.At, candidates.Length == 0 ? null : $"one of: {string.Join(", ", candidates.Select(c => $"{thing.Id}.{c}"))}", thing.At);
        return null;
    }

    private static string? SourcePin(Thing thing, PinUse use) =>
        thing.Kind == ThingKind.Converter && use == PinUse.Sink && thing.Pins.Any(p => p.Name == "in") ? "in" : thing.Elements.FirstOrDefault(e => e.Kind == ElementKind.Source)?.PinA;

    // bare names of bars are spread over their studs
    private void Count(Thing thing, PinRef pin)
    {
        if (thing.Kind is ThingKind.BusBar or ThingKind.Stud or ThingKind.GroundPoint)
        {
            _studUses[pin] = _studUses.GetValueOrDefault(pin) + 1;
        }
    }

    private void ReportThing(InputText text)
    {
        var dot = text.Value.LastIndexOf('.');
        var name = dot > 0 ? text.Value[..dot] : text.Value;
        string[] names = [.. draft.Things.Select(t => t.Id)];
        var nearest = NearestName.Of(name, names);
        var hint = nearest is not null ? $"did you mean '{nearest}{(dot > 0 ? text.Value[dot..] : "")}'?" : NameRules.Listed(names, "thing");
        draft.Bag.Error(DiagnosticCodes.UnknownName, $"there is no thing '{name}'", text.At, hint);
    }
}
