using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>
/// Where a wire lies in its fullest segment: laid the longest first, wires fill the middle and then layers of six more each time (1, 6, 12, 18: geometry of
/// equal round wires).
/// </summary>
public static class BundlePosition
{
    /// <summary>'S1 core' or 'S1 layer 2', by wire id; wires in no segment have none.</summary>
    public static ImmutableDictionary<string, string> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var wires = plan.Wires.DistinctBy(w => w.Id, StringComparer.Ordinal).ToDictionary(w => w.Id, StringComparer.Ordinal);
        var ranks = new Dictionary<(string Segment, string Wire), int>();
        foreach (var segment in plan.Tree.Segments)
        {
            var laid = segment.Wires.Where(wires.ContainsKey).Select(id => wires[id]).OrderByDescending(w => w.CutLengthMm ?? double.NegativeInfinity).ThenByDescending(w => w.AreaMm2).ThenBy(w => w.Id, NaturalOrder.Instance);
            foreach (var (wire, rank) in laid.Select((w, i) => (w.Id, i)))
            {
                ranks[(segment.Id, wire)] = rank;
            }
        }

        var counts = plan.Tree.Segments.ToDictionary(s => s.Id, s => s.Wires.Length, StringComparer.Ordinal);
        return wires.Values
            .Select(w => (w.Id, Fullest: w.Segments.Where(s => ranks.ContainsKey((s, w.Id))).OrderByDescending(s => counts[s]).FirstOrDefault()))
            .Where(p => p.Fullest is not null)
            .ToImmutableDictionary(p => p.Id, p => $"{p.Fullest} {Words(LayerOf(ranks[(p.Fullest!, p.Id)]))}", StringComparer.Ordinal);
    }

    /// <summary>The layer of the wire that so many lie before: 0 is the core.</summary>
    public static int LayerOf(int before)
    {
        var layer = 0;
        // up to layer k there is room for 1 + 3k(k + 1)
        while (before >= 1 + (3 * layer * (layer + 1)))
        {
            layer++;
        }

        return layer;
    }

    private static string Words(int layer) => layer == 0 ? "core" : $"layer {layer}";
}
