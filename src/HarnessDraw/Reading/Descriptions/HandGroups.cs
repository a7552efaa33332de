using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Groups wires given by hand by the pins they share.</summary>
internal static class HandGroups
{
    /// <summary>Groups in the order of their first wire; wires keep their order. A mate without a cavity joins nothing.</summary>
    public static ImmutableArray<ImmutableArray<HandWire>> Of(ImmutableArray<HandWire> wires)
    {
        var groups = new List<(HashSet<PinRef> Pins, List<HandWire> Wires)>();
        foreach (var wire in wires)
        {
            PinRef[] pins = [.. new[] { wire.From, wire.To }.Where(p => p.Pin is not null)];
            var touched = groups.Where(g => pins.Any(g.Pins.Contains)).ToList();
            if (touched.Count == 0)
            {
                groups.Add((new(pins), [wire]));
                continue;
            }

            foreach (var other in touched.Skip(1))
            {
                touched[0].Pins.UnionWith(other.Pins);
                touched[0].Wires.AddRange(other.Wires);
                groups.Remove(other);
            }

            touched[0].Pins.UnionWith(pins);
            touched[0].Wires.Add(wire);
        }

        return [.. groups.Select(g => g.Wires.OrderBy(wires.IndexOf).ToImmutableArray())];
    }
}
