using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication.Kits;

/// <summary>What goes into the bag of a branch for the whole order: its wires in laying order, parts by number, labels, mass of the wire in grams (null where the catalogue knows none).</summary>
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
        return [.. CutRows.ByBranch(plan).GroupBy(r => facts.BranchOf(r.Wire) ?? Trunk, StringComparer.Ordinal).Select(g => Bag(order, plan, g.Key, [.. g]))];
    }

    private static BranchBag Bag(FabricationOrder order, Plan plan, string branch, ImmutableArray<CutRow> rows)
    {
        var ends = rows.SelectMany(r => new[] { (End: r.Wire.From, Times: order.QuantityOf(r.Wire.Builds)), (End: r.Wire.To, Times: order.QuantityOf(r.Wire.Builds)) }).ToArray();
        var names = ends.SelectMany(e => new[] { e.End.Terminal, e.End.Seal }.OfType<string>()
            .Concat(e.End.ThreadOnFirst.Where(t => e.End.Seal is null || !t.Contains("seal", StringComparison.OrdinalIgnoreCase))).Select(n => (Name: n, e.Times)));
        var splices = plan.Splices.Where(s => s.Part is not null && s.Wires[0] is var feed && rows.Any(r => r.Wire.Id == feed)).Select(s => (Name: s.Part!, Times: order.QuantityOf(s.Builds)));
        var parts = names.Concat(splices).GroupBy(n => n.Name, StringComparer.Ordinal).ToImmutableSortedDictionary(g => g.Key, g => g.Sum(n => n.Times), StringComparer.Ordinal);
        var wires = rows.SelectMany(r => Enumerable.Repeat(r.Wire, order.QuantityOf(r.Wire.Builds))).ToArray();
        return new(branch, rows, parts, 2 * wires.Length, WireMass.GramsOf(plan, wires));
    }
}
