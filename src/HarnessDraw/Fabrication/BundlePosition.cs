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
        // the same order everywhere: a segment's wires are put in it by their numbers
        var order = wires.Values.OrderByDescending(w => w.CutLengthMm ?? double.NegativeInfinity).ThenByDescending(w => w.AreaMm2).ThenBy(w => w.Id, NaturalOrder.Instance).Select(w => w.Id).ToArray();
        var numbers = order.Select((id, i) => (id, i)).ToDictionary(w => w.id, w => w.i, StringComparer.Ordinal);
        var ranks = plan.Tree.Segments.ToDictionary(s => s.Id, RanksIn, StringComparer.Ordinal);
        var counts = plan.Tree.Segments.ToDictionary(s => s.Id, s => s.Wires.Length, StringComparer.Ordinal);
        return wires.Values
            .Select(w => (w.Id, Fullest: FullestOf(w)))
            .Where(p => p.Fullest is not null)
            .ToImmutableDictionary(p => p.Id, p => $"{p.Fullest} {Words(LayerOf(ranks[p.Fullest!][p.Id]))}", StringComparer.Ordinal);

        // by wire: how many lie before it
        Dictionary<string, int> RanksIn(Segment segment)
        {
            int[] laid = [.. segment.Wires.Where(numbers.ContainsKey).Select(id => numbers[id]).Order()];
            var here = new Dictionary<string, int>(laid.Length, StringComparer.Ordinal);
            for (var i = 0; i < laid.Length; i++)
            {
                here[order[laid[i]]] = i;
            }

            return here;
        }

        // of equally full ones the first on its way
        string? FullestOf(Wire wire)
        {
            string? best = null;
            foreach (var segment in wire.Segments)
            {
                if (ranks.TryGetValue(segment, out var here) && (best is null || counts[segment] > counts[best]) && here.ContainsKey(wire.Id))
                {
                    best = segment;
                }
            }

            return best;
        }
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
