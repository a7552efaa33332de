using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>Names the protections upstream of a circuit, nearest first, from what the description says and from where the circuit comes from.</summary>
internal static class ProtectionFinder
{
    public static ImmutableArray<string> Of(HarnessIndex index, Circuit circuit) => circuit.IsReturn ? [] : [.. Find(index, circuit, 4).Distinct(StringComparer.Ordinal)];

    private static IEnumerable<string> Find(HarnessIndex index, Circuit circuit, int depth)
    {
        if (circuit.From is { } from && index.Protection(from.Thing) is not null)
        {
            yield return from.Thing;
        }

        foreach (var named in circuit.ProtectedBy.Concat(index.Harness.Protections.Where(p => p.Protects.Contains(circuit.Id)).Select(p => p.Id)))
        {
            yield return named;
        }

        // through a relay or switch to the circuit that feeds its other contact
        if (depth > 0 && circuit.From is { } pin && index.Thing(pin.Thing) is { Kind: ThingKind.Relay or ThingKind.Switch } thing)
        {
            var others = thing.Elements.Where(e => e.Kind == ElementKind.Contact && (e.PinA == pin.Pin || e.PinB == pin.Pin)).Select(e => e.PinA == pin.Pin ? e.PinB : e.PinA).ToArray();
            foreach (var feeder in index.Harness.Circuits.Where(c => c.Id != circuit.Id && !c.IsReturn && c.Feeds.Any(f => f.Thing == thing.Id && others.Contains(f.Pin))))
            {
                foreach (var further in Find(index, feeder, depth - 1))
                {
                    yield return further;
                }
            }
        }
    }
}
