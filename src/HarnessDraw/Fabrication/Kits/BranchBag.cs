using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication.Kits;

/// <summary>What goes into the bag of a branch: its wires in laying order, parts by number, mass of the wire in grams (null where the catalogue knows none).</summary>
public sealed record BranchBag(string Branch, ImmutableArray<CutRow> Wires, ImmutableSortedDictionary<string, int> Parts, int Labels, double? WireGram);

/// <summary>A bag a branch; wires of no named branch go into the trunk's.</summary>
public static class BranchBags
{
    public const string Trunk = "TRUNK";

    public static ImmutableArray<BranchBag> Of(FabricationOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var plan = order.Shown;
        var facts = new WireFactFinder(plan);
        return [.. CutRows.ByBranch(plan).GroupBy(r => facts.BranchOf(r.Wire) ?? Trunk, StringComparer.Ordinal).Select(g => Bag(plan, g.Key, [.. g]))];
    }

    private static BranchBag Bag(Plan plan, string branch, ImmutableArray<CutRow> rows)
    {
        var ends = rows.SelectMany(r => (WireEnd[])[r.Wire.From, r.Wire.To]).ToArray();
        var names = ends.Select(e => e.Terminal).Concat(ends.Select(e => e.Seal)).OfType<string>()
            .Concat(ends.SelectMany(e => e.ThreadOnFirst.Where(t => e.Seal is null || !t.Contains("seal", StringComparison.OrdinalIgnoreCase))));
        var splices = plan.Splices.Where(s => s.Wires.Any(id => rows.Any(r => r.Wire.Id == id)) && s.Wires[0] is var feed && rows.Any(r => r.Wire.Id == feed)).Select(s => s.Part).OfType<string>();
        var parts = names.Concat(splices).GroupBy(n => n, StringComparer.Ordinal).ToImmutableSortedDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        return new(branch, rows, parts, 2 * rows.Length, WireMass.GramsOf(plan, rows.Select(r => r.Wire)));
    }
}
