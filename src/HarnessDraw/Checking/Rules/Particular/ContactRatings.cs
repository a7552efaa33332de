using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>A rated contact and what it switches, amperes.</summary>
internal sealed record SwitchedContact(Thing Thing, Element Contact, double CurrentA, bool Motor, IReadOnlyList<string> Feeds)
{
    public static IEnumerable<SwitchedContact> Of(RuleContext context)
    {
        foreach (var thing in context.Harness.Things)
        {
            foreach (var contact in thing.Elements.Where(e => e is { Kind: ElementKind.Contact, RatedA: > 0 }))
            {
                var circuits = context.Harness.Circuits.Where(c => !c.IsReturn && c.From is { } from && from.Thing == thing.Id && (from.Pin == contact.PinB || from.Pin == contact.PinA)).ToList();
                var loads = circuits.SelectMany(c => c.Feeds.Where(f => context.Thing(f.Thing) is not null).SelectMany(f => Loads.At(context.Thing(f.Thing)!, f.Pin).Select(e => (f.Thing, e.Kind, Amps: e.Amps(c.NominalV) ?? 0)))).ToList();
                if (loads.Count > 0)
                {
                    yield return new(thing, contact, loads.Sum(l => l.Amps), loads.Any(l => l.Kind == ElementKind.Motor), [.. loads.Select(l => l.Thing)]);
                }
            }
        }
    }
}
