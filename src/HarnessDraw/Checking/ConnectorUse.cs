using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>A wire in a cavity and when it is built.</summary>
public sealed record PinnedWire(string Cavity, Wire Wire, WireEnd End);

/// <summary>One body of a connector: its part, and the wires in its cavities, in the part's order.</summary>
public sealed record ConnectorUse(Thing Thing, Side Side, ConnectorPart Part, ImmutableArray<PinnedWire> Wires, ImmutableArray<CavityUse> Cavities)
{
    public static ImmutableArray<ConnectorUse> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var parts = plan.Harness.Catalogue.Connectors.ToLookup(p => p.Id, StringComparer.Ordinal);
        var ends = PlannedEnd.Of(plan).Where(e => e.End.Pin is not null).ToLookup(e => e.End.At, StringComparer.Ordinal);
        var cavities = plan.Cavities.ToLookup(c => c.Connector, StringComparer.Ordinal);
        return [.. plan.Harness.Things.SelectMany(thing => Bodies(thing, parts, ends, cavities))];
    }

    /// <summary>Cavities that sit directly beside each other: no farther than 1.3 times the distance to the nearest one (diagonals of a grid are 1.41).</summary>
    public IEnumerable<(PinnedWire A, PinnedWire B)> Neighbours()
    {
        var beside = CavityNeighbours.Of(Part);
        for (var i = 0; i < Wires.Length; i++)
        {
            for (var j = i + 1; j < Wires.Length; j++)
            {
                if (beside.Contains((Wires[i].Cavity, Wires[j].Cavity)))
                {
                    yield return (Wires[i], Wires[j]);
                }
            }
        }
    }

    private static IEnumerable<ConnectorUse> Bodies(Thing thing, ILookup<string, ConnectorPart> parts, ILookup<string, PlannedEnd> ends, ILookup<string, CavityUse> cavities)
    {
        if (thing.ConnectorPart is null || parts[thing.ConnectorPart].FirstOrDefault() is not { } part)
        {
            yield break;
        }

        var order = part.Cavities.Select((c, i) => (c.Name, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        var cavityOf = thing.Pins.DistinctBy(p => p.Name).ToDictionary(p => p.Name, p => p.Cavity ?? p.Name, StringComparer.Ordinal);
        var uses = cavities[thing.Id].ToImmutableArray();
        foreach (var side in uses.Select(u => u.Side).Append(thing.Side).Distinct().Order())
        {
            var here = uses.Where(u => u.Side == side).ToImmutableArray();
            var elsewhere = uses.Where(u => u.Side != side && u.Wire is not null).Select(u => u.Wire!).ToHashSet(StringComparer.Ordinal);
            var named = here.Where(u => u.Wire is not null).Select(u => u.Wire!).ToHashSet(StringComparer.Ordinal);
            var wires = ends[thing.Id]
                .Where(e => named.Contains(e.Wire.Id) || (side == thing.Side && !elsewhere.Contains(e.Wire.Id)))
                .Select(e => new PinnedWire(cavityOf.GetValueOrDefault(e.End.Pin!, e.End.Pin!), e.Wire, e.End))
                .OrderBy(p => order.GetValueOrDefault(p.Cavity, int.MaxValue)).ThenBy(p => p.Wire.Id, StringComparer.Ordinal);
            yield return new(thing, side, part, [.. wires], here);
        }
    }
}
