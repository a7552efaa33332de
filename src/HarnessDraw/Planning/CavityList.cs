using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning;

/// <summary>What is in every cavity of every connector that the harness carries.</summary>
internal static class CavityList
{
    public static ImmutableArray<CavityUse> Of(HarnessIndex index, SizingResult sizing, ImmutableArray<WireRow> rows, ImmutableArray<string> ids)
    {
        var uses = new List<(string Connector, CavityUse Use)>();
        var why = sizing.Cavities.ToDictionary(c => (c.Seeker.Wire, c.Seeker.AtFrom), c => c.Why);
        for (var w = 0; w < rows.Length; w++)
        {
            var row = rows[w];
            foreach (var atFrom in (bool[])[true, false])
            {
                if ((atFrom ? row.Draft.From : row.Draft.To).Pin is not { } pin || index.Connector(index.Thing(pin.Thing)?.ConnectorPart) is null || index.IsStud(pin))
                {
                    continue;
                }

                var cavity = (atFrom ? row.FromCavity : row.ToCavity) ?? (index.IsMate(pin) ? null : index.PinOf(pin)?.Cavity ?? pin.Pin);
                if (cavity is not null)
                {
                    uses.Add((pin.Thing, new()
                    {
                        Connector = pin.Thing,
                        Side = row.Net.Side,
                        Cavity = cavity,
                        Wire = ids[w],
                        Builds = row.Draft.Builds,
                        Why = why.GetValueOrDefault((row, atFrom)) ?? (index.IsMate(pin) ? "same circuit on the other side" : "pin of the thing"),
                    }));
                }
            }
        }

        var byThing = uses.ToLookup(u => u.Connector, u => u.Use, StringComparer.Ordinal);
        return [.. index.Harness.Things.SelectMany(t => ForThing(index, t, byThing[t.Id]))];
    }

    private static IEnumerable<CavityUse> ForThing(HarnessIndex index, Thing thing, IEnumerable<CavityUse> uses)
    {
        if (index.Connector(thing.ConnectorPart) is not { } part)
        {
            yield break;
        }

        CavityUse[] mine = [.. uses];
        if (mine.Length == 0 && thing.Kind != ThingKind.Mate)
        {
            yield break;
        }

        foreach (var cavity in part.Cavities)
        {
            CavityUse[] here = [.. mine.Where(u => u.Cavity == cavity.Name)];
            foreach (var use in here)
            {
                yield return use;
            }

            if (here.Length == 0)
            {
                var plug = part.Sealed || thing.Kind == ThingKind.Mate ? index.Harness.Catalogue.Plugs.FirstOrDefault(p => p.Size == cavity.Size)?.Id : null;
                yield return new() { Connector = thing.Id, Side = thing.Side, Cavity = cavity.Name, Plug = plug, Why = "unused" };
            }
        }

        foreach (var use in mine.Where(u => part.Cavities.All(c => c.Name != u.Cavity)))
        {
            yield return use;
        }
    }
}
