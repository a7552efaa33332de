namespace HarnessDraw.Planning.Routing;

/// <summary>The runs that routes given by hand pass; where two named places are not neighbours, the shortest way between them.</summary>
internal static class HandRoutes
{
    public static IReadOnlyCollection<int> EdgesOf(HarnessIndex index, PlaceGraph places)
    {
        var edges = new SortedSet<int>();
        foreach (var hand in index.Harness.Nets.SelectMany(n => n.ByHand).Where(h => !h.Route.IsEmpty))
        {
            string[] stops = [index.PlaceOf(hand.From), .. hand.Route, index.PlaceOf(hand.To)];
            int[] numbers = [.. stops.Select(places.Find).Where(n => n is not null).Select(n => n!.Value)];
            for (var i = 1; i < numbers.Length; i++)
            {
                AddWay(places, numbers[i - 1], numbers[i], edges);
            }
        }

        return edges;
    }

    private static void AddWay(PlaceGraph places, int from, int to, SortedSet<int> edges)
    {
        var direct = places.Graph.Touching(from).Where(e => places.Graph.Other(e, from) == to).OrderBy(e => places.Graph.Edges[e].Weight).ThenBy(e => e).ToArray();
        if (direct.Length > 0)
        {
            edges.Add(direct[0]);
            return;
        }

        var (_, by) = places.Graph.ShortestFrom([from]);
        for (var v = to; v != from && by[v] >= 0; v = places.Graph.Other(by[v], v))
        {
            edges.Add(by[v]);
        }
    }
}
