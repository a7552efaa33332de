using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>A cable: what its conductors, which are rows of the cut list, have in common. It is cut as long as the longest of them; null: not known.</summary>
public sealed record CableRow(Cable Cable, string Circuit, ImmutableArray<Wire> Conductors)
{
    public double? CutMm => Conductors.Any(w => w.CutLengthMm is null) ? null : Conductors.Max(w => w.CutLengthMm);
}

/// <summary>Cables by id, each with at least one conductor that is made.</summary>
public static class CableRows
{
    public static ImmutableArray<CableRow> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var cables = plan.Harness.Circuits.Where(c => c.Cable is not null).ToDictionary(c => c.Cable!.Id, StringComparer.Ordinal);
        return
        [
            .. plan.Wires.Where(w => w.Cable is not null && cables.ContainsKey(w.Cable)).GroupBy(w => w.Cable!, StringComparer.Ordinal).OrderBy(g => g.Key, NaturalOrder.Instance)
                .Select(g => new CableRow(cables[g.Key].Cable!, cables[g.Key].Id, [.. g.OrderBy(w => w.Id, NaturalOrder.Instance)])),
        ];
    }
}
