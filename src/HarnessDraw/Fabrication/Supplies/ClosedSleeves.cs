using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication.Supplies;

/// <summary>Sleeves that cannot be opened and so are threaded on before a plug is closed (common practice, no source).</summary>
public static class ClosedSleeves
{
    private static readonly ImmutableHashSet<string> Closed = ["braided sleeve", "heat shrink"];

    /// <summary>
    /// The things whose plugs are closed only after the sleeve of the segment is on it: those of the side with fewer plugs that the sleeve does not pass. Empty for a
    /// covering that is wrapped or slit, and where the sleeve passes everything on one side.
    /// </summary>
    public static ImmutableArray<string> PutOnBefore(Plan plan, Segment segment, CoveringPart? part)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(segment);
        if (part is null || !Closed.Contains(part.Kind))
        {
            return [];
        }

        var beyond = Beyond(plan.Tree, segment);
        var things = plan.Harness.Things.ToDictionary(t => t.Id, StringComparer.Ordinal);
        var parts = plan.Harness.Catalogue.Connectors.ToDictionary(c => c.Id, StringComparer.Ordinal);
        var stopped = plan.Wires.Where(w => w.Segments.Contains(segment.Id)).SelectMany(w => (string[])[w.From.At, w.To.At]).Distinct(StringComparer.Ordinal)
            .Select(things.GetValueOrDefault).OfType<Thing>()
            .Where(t => t.ConnectorPart is { } id && parts.TryGetValue(id, out var c) && (c.LargestPassMm ?? Math.Min(c.WidthMm, c.HeightMm)) > part.MaxBundleMm)
            .ToLookup(t => beyond.Contains(t.Place), t => t.Id);
        string[] far = [.. stopped[true].Order(StringComparer.Ordinal)], near = [.. stopped[false].Order(StringComparer.Ordinal)];
        return far.Length == 0 || near.Length == 0 ? [] : [.. far.Length <= near.Length ? far : near];
    }

    private static HashSet<string> Beyond(HarnessTree tree, Segment segment)
    {
        var places = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>([segment.To]);
        while (open.TryPop(out var place))
        {
            if (places.Add(place))
            {
                foreach (var below in tree.Below(place))
                {
                    open.Push(below.To);
                }
            }
        }

        return places;
    }
}
