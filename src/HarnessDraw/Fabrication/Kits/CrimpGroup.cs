using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication.Kits;

/// <summary>Crimps made with one setting of the tool: terminal family and contact size, wire size. <see cref="Ends"/> as 'E07 A'.</summary>
public sealed record CrimpGroup(string Family, string ContactSize, string Terminal, string WireSize, double AreaMm2, double? StripMm, ImmutableArray<string> Ends, int Crimps)
{
    public double? LeastPullN => PullStrength.LeastN(AreaMm2);
}

/// <summary>All crimps of an order, those that need the same die together.</summary>
public static class CrimpGroups
{
    public static ImmutableArray<CrimpGroup> Of(FabricationOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var parts = order.Plan.Harness.Catalogue.Terminals.ToDictionary(t => t.Id, StringComparer.Ordinal);
        return
        [
            .. order.Wires.SelectMany(w => Ends(w))
                .Where(e => e.End.Terminal is not null)
                .GroupBy(e => (e.End.Terminal, e.Wire.SizeLabel, e.Wire.AreaMm2))
                .Select(g => Group(g.Key.Terminal!, g.Key.SizeLabel, g.Key.AreaMm2, parts.GetValueOrDefault(g.Key.Terminal!), [.. g], order))
                .OrderBy(g => g.Family, StringComparer.Ordinal).ThenBy(g => g.ContactSize, NaturalOrder.Instance).ThenBy(g => g.Terminal, StringComparer.Ordinal).ThenBy(g => g.AreaMm2),
        ];
    }

    private static CrimpGroup Group(string terminal, string size, double areaMm2, TerminalPart? part, ImmutableArray<(Wire Wire, WireEnd End, char Letter)> ends, FabricationOrder order) =>
        new(part?.Family ?? "", part?.Size ?? "", terminal, size, areaMm2, part?.StripMm,
            [.. ends.Select(e => $"{e.Wire.Id} {e.Letter}").Order(NaturalOrder.Instance)], ends.Sum(e => order.QuantityOf(e.Wire.Builds)));

    private static IEnumerable<(Wire Wire, WireEnd End, char Letter)> Ends(Wire wire) => [(wire, wire.From, 'A'), (wire, wire.To, 'B')];
}
