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
        var segments = plan.Tree.Segments.ToDictionary(s => s.Id, StringComparer.Ordinal);
        var laid = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var together in wires.Values.GroupBy(FullestOf, StringComparer.Ordinal))
        {
            var ranks = together.Key is { } fullest ? RanksIn(segments[fullest]) : [];
            foreach (var wire in together)
            {
                if (ranks.TryGetValue(wire.Id, out var before))
                {
                    laid[wire.Id] = $"{together.Key} {Words(LayerOf(before))}";
                }
            }
        }

        return laid.ToImmutable();

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
            Segment? best = null;
            foreach (var id in wire.Segments)
            {
                if (segments.TryGetValue(id, out var segment) && (best is null || segment.Wires.Length > best.Wires.Length))
                {
                    best = segment;
                }
            }

            return best?.Id;
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
