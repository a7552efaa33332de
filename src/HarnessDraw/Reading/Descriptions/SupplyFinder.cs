using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>
/// Follows a circuit towards its source to learn what it does not say: its nominal volts, and the key position from which it is live.
/// Terminal numbers (DIN 72552) tell the key: 30 always, 75 accessory, 15 run, 50 start; sources, studs and bus bars are always live.
/// </summary>
internal sealed class SupplyFinder(Draft draft, PowerSystem power, ImmutableArray<CircuitDraft> drafts)
{
    private const int LongestWay = 24;

    public Circuit Completed(CircuitDraft typed, Circuit circuit) => circuit with
    {
        NominalV = NominalV(circuit),
        LiveWith = circuit.IsReturn ? KeyPosition.Off : typed.Map.Text("live") is { } live ? ChoiceWords.Key(live) : LiveWith(typed, LongestWay),
    };

    private double NominalV(Circuit circuit) =>
        Way(circuit.From, LongestWay).Select(t => power.Sources.FirstOrDefault(s => s.Id == t.Id) is { } source ? power.LiveV(source) : (double?)null).FirstOrDefault(v => v is > 0)
            ?? (power.NominalV is > 0 and var usual ? usual : 12);

    // things from a pin back to its source, nearest first
    private IEnumerable<Thing> Way(PinRef? pin, int left)
    {
        if (pin is null || left == 0 || draft.Thing(pin.Thing) is not { } thing)
        {
            yield break;
        }

        yield return thing;
        foreach (var further in Way(Upstream(thing), left - 1))
        {
            yield return further;
        }
    }

    // what feeds a thing: the bar a fuse sits on, or the circuit that ends in it
    private PinRef? Upstream(Thing thing)
    {
        if (power.Sources.Any(s => s.Id == thing.Id))
        {
            return null;
        }

        if (thing.Kind == ThingKind.Fuse && draft.Root.Map("protection")?.Map(thing.Id)?.Text("on") is { } on)
        {
            return new PinRef(on, null);
        }

        return drafts.FirstOrDefault(d => !d.Circuit.IsReturn && d.Circuit.From?.Thing != thing.Id && d.Circuit.Feeds.Any(f => f.Thing == thing.Id))?.Circuit.From;
    }

    private KeyPosition LiveWith(CircuitDraft typed, int left)
    {
        if (typed.Circuit.From is not { } from || draft.Thing(from.Thing) is not { } thing)
        {
            return KeyPosition.Run;
        }

        if (OfTerminal(from.Pin) is { } told)
        {
            return told;
        }

        if (thing.Kind is ThingKind.Battery or ThingKind.Alternator or ThingKind.Starter or ThingKind.BusBar or ThingKind.Stud)
        {
            return KeyPosition.Off;
        }

        var feeder = thing.Kind == ThingKind.Fuse && draft.Root.Map("protection")?.Map(thing.Id)?.Text("on") is { } on ? draft.Thing(on) : thing;
        if (feeder?.Kind is ThingKind.Battery or ThingKind.Alternator or ThingKind.Starter or ThingKind.BusBar or ThingKind.Stud && feeder.Side == Side.Bay)
        {
            return KeyPosition.Off;
        }

        var fed = feeder is null ? null : drafts.FirstOrDefault(d => d != typed && d.Circuit.Feeds.Any(f => f.Thing == feeder.Id));
        return fed is null || left == 0 ? KeyPosition.Run : fed.Map.Text("live") is { } live ? ChoiceWords.Key(live) : LiveWith(fed, left - 1);
    }

    private static KeyPosition? OfTerminal(string? pin) => pin switch
    {
        "30" or "B+" => KeyPosition.Off,
        "75" => KeyPosition.Accessory,
        "15" => KeyPosition.Run,
        "50" => KeyPosition.Start,
        _ => null,
    };
}
