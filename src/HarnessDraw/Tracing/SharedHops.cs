namespace HarnessDraw.Tracing;

/// <summary>Which loads' current takes which step: what shares a hop with the way that is looked at.</summary>
internal sealed class SharedHops
{
    private readonly Dictionary<string, SortedSet<string>> loads = new(StringComparer.Ordinal);

    public SharedHops(IEnumerable<TraceWay> ways)
    {
        foreach (var way in ways.Where(w => w.Hops.Any(h => h.Kind == HopKind.Load)))
        {
            for (var h = 0; h < way.Hops.Length; h++)
            {
                if (!loads.TryGetValue(Key(way, h), out var here))
                {
                    loads.Add(Key(way, h), here = new(StringComparer.Ordinal));
                }

                here.Add(way.Load);
            }
        }
    }

    public TraceWay Told(TraceWay way) => way with
    {
        Hops = [.. way.Hops.Select((hop, h) => loads.TryGetValue(Key(way, h), out var here) ? hop with { Shared = [.. here.Where(l => l != way.Load)] } : hop)],
    };

    // the same step either way round
    private static string Key(TraceWay way, int hop)
    {
        var (a, b) = (way.Stops[hop].Node, way.Stops[hop + 1].Node);
        return way.Hops[hop].Wire ?? (string.CompareOrdinal(a, b) < 0 ? $"{a}\n{b}" : $"{b}\n{a}");
    }
}
