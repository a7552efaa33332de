namespace HarnessDraw.Planning.Routing;

/// <summary>Small operations on the edges of a tree within a graph.</summary>
internal static class TreeChains
{
    /// <summary>Removes leaves that are not wanted until none is left.</summary>
    public static List<int> Prune(WeightedGraph graph, List<int> edges, bool[] wanted)
    {
        var degree = new int[graph.Vertices];
        foreach (var e in edges)
        {
            degree[graph.Edges[e].A]++;
            degree[graph.Edges[e].B]++;
        }

        bool IsUseless(int v) => degree[v] == 1 && !wanted[v];
        bool Goes(int e)
        {
            var (a, b, _) = graph.Edges[e];
            if (!IsUseless(a) && !IsUseless(b))
            {
                return false;
            }

            degree[a]--;
            degree[b]--;
            return true;
        }

        // what hung on an edge that went goes in the next round
        int gone;
        do
        {
            gone = edges.RemoveAll(Goes);
        }
        while (gone > 0);
        return edges;
    }

    /// <summary>Chains of edges between vertices that are terminals or forks.</summary>
    public static List<List<int>> Of(WeightedGraph graph, IReadOnlyList<int> tree, bool[] isTerminal)
    {
        var at = new Dictionary<int, List<int>>();
        foreach (var e in tree)
        {
            foreach (var v in (int[])[graph.Edges[e].A, graph.Edges[e].B])
            {
                if (!at.TryGetValue(v, out var list))
                {
                    at.Add(v, list = []);
                }

                list.Add(e);
            }
        }

        bool IsKey(int v) => isTerminal[v] || at[v].Count != 2;
        var chains = new List<List<int>>();
        var seen = new HashSet<int>();
        foreach (var start in at.Keys.Where(IsKey).Order().ToArray())
        {
            foreach (var first in at[start].Where(e => !seen.Contains(e)).ToArray())
            {
                var chain = new List<int> { first };
                seen.Add(first);
                var v = graph.Other(first, start);
                while (!IsKey(v))
                {
                    var next = at[v].First(e => e != chain[^1]);
                    seen.Add(next);
                    chain.Add(next);
                    v = graph.Other(next, v);
                }

                chains.Add(chain);
            }
        }

        return chains;
    }

    /// <summary>Vertices joined to the near end of a chain when the chain is taken out.</summary>
    public static List<int> Component(WeightedGraph graph, IReadOnlyList<int> rest, int from, IReadOnlyList<int> chain)
    {
        var start = chain.Count > 1 && (graph.Edges[chain[1]].A == from || graph.Edges[chain[1]].B == from) ? graph.Other(chain[0], from) : from;
        var near = new Dictionary<int, List<int>>();
        foreach (var e in rest)
        {
            near.TryAdd(graph.Edges[e].A, []);
            near.TryAdd(graph.Edges[e].B, []);
            near[graph.Edges[e].A].Add(graph.Edges[e].B);
            near[graph.Edges[e].B].Add(graph.Edges[e].A);
        }

        var reached = new List<int> { start };
        var seen = new HashSet<int> { start };
        for (var i = 0; i < reached.Count; i++)
        {
            foreach (var v in near.GetValueOrDefault(reached[i]) ?? [])
            {
                if (seen.Add(v))
                {
                    reached.Add(v);
                }
            }
        }

        return reached;
    }

    /// <summary>Vertices of the tree on the other side of a chain that was taken out.</summary>
    public static List<int> OtherSide(WeightedGraph graph, IReadOnlyList<int> tree, IReadOnlyList<int> rest, List<int> reached, bool[] isTerminal, IReadOnlyList<int> chain)
    {
        var seen = reached.ToHashSet();
        var vertices = rest.SelectMany(e => new[] { graph.Edges[e].A, graph.Edges[e].B }).Where(v => !seen.Contains(v)).ToHashSet();
        if (vertices.Count == 0)
        {
            // the far end is a single vertex: it is in the chain and a terminal, or the chain's last end
            var inChain = chain.SelectMany(e => new[] { graph.Edges[e].A, graph.Edges[e].B }).ToList();
            vertices = [.. inChain.Where(v => !seen.Contains(v) && (isTerminal[v] || inChain.Count(o => o == v) == 1))];
        }

        return [.. vertices.Order()];
    }
}
