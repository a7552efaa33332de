namespace HarnessDraw.Planning.Routing;

/// <summary>
/// Finds a light tree that joins given vertices of a graph: repeated shortest paths from several starts, then insertion and removal of
/// vertices and exchange of key paths until nothing helps. The graph must be connected between the terminals. Not proven least.
/// </summary>
public sealed class SteinerTreeFinder
{
    private readonly WeightedGraph graph;
    private readonly int[] terminals;
    private readonly bool[] isTerminal;
    private (double[] Distance, int[] By)[] shortest = [];

    public SteinerTreeFinder(WeightedGraph graph, IEnumerable<int> terminals)
    {
        ArgumentNullException.ThrowIfNull(graph);
        this.graph = graph;
        this.terminals = [.. terminals.Distinct().Order()];
        isTerminal = new bool[graph.Vertices];
        foreach (var t in this.terminals)
        {
            isTerminal[t] = true;
        }
    }

    /// <summary>Edges of the best tree found, in rising number; <paramref name="improved"/> starts are searched further.</summary>
    public IReadOnlyList<int> Find(int improved)
    {
        if (terminals.Length < 2)
        {
            return [];
        }

        if (OnlyTree() is { } only)
        {
            return only;
        }

        shortest = [.. Enumerable.Range(0, graph.Vertices).Select(v => graph.ShortestFrom([v]))];
        var starts = Enumerable.Range(0, graph.Vertices)
            .Where(v => !double.IsInfinity(shortest[v].Distance[terminals[0]]))
            .Select(RepeatedShortestPath)
            .Select(v => Spanning(v)!)
            .OrderBy(t => graph.WeightOf(t))
            .DistinctBy(t => string.Join(',', t), StringComparer.Ordinal)
            .Take(improved);
        return starts.Select(Improve).OrderBy(t => graph.WeightOf(t)).First();
    }

    // where paths close no circle there is one way between any two places, and nothing to search; null: there are circles, or not all hangs together
    private List<int>? OnlyTree()
    {
        var joined = new DisjointSets(graph.Vertices);
        for (var e = 0; e < graph.Edges.Count; e++)
        {
            if (!joined.Join(graph.Edges[e].A, graph.Edges[e].B))
            {
                return null;
            }
        }

        return Spanning([.. Enumerable.Repeat(true, graph.Vertices)]);
    }

    private bool[] RepeatedShortestPath(int start)
    {
        var inTree = new bool[graph.Vertices];
        var near = new double[graph.Vertices];
        var from = new int[graph.Vertices];
        Array.Fill(near, double.PositiveInfinity);
        var left = terminals.Where(t => t != start).ToList();
        void Join(int v)
        {
            inTree[v] = true;
            var distance = shortest[v].Distance;
            foreach (var t in left)
            {
                var d = distance[t];
                if (d < near[t])
                {
                    near[t] = d;
                    from[t] = v;
                }
            }
        }

        Join(start);
        while (left.Count > 0)
        {
            // the nearest, of equal ones the first: the list is in rising order
            var next = left[0];
            foreach (var t in left)
            {
                next = near[t] < near[next] ? t : next;
            }

            left.Remove(next);
            for (var v = next; v != from[next]; v = graph.Other(shortest[from[next]].By[v], v))
            {
                if (!inTree[v])
                {
                    Join(v);
                }
            }
        }

        return inTree;
    }

    private List<int> Improve(List<int> tree)
    {
        var weight = graph.WeightOf(tree);
        while (BetterVertices(tree, weight) is { } better || (better = BetterKeyPath(tree, weight)) is not null)
        {
            tree = better;
            weight = graph.WeightOf(tree);
        }

        return tree;
    }

    private List<int>? BetterVertices(List<int> tree, double weight)
    {
        var used = Used(tree);
        List<int>? best = null;
        for (var v = 0; v < graph.Vertices; v++)
        {
            if (isTerminal[v] || (!used[v] && graph.Touching(v).Count(e => used[graph.Other(e, v)]) < 2))
            {
                continue;
            }

            used[v] = !used[v];
            if (Spanning(used) is { } other && graph.WeightOf(other) < weight - 1e-9)
            {
                best = other;
                weight = graph.WeightOf(other);
            }

            used[v] = !used[v];
        }

        return best;
    }

    /// <summary>Takes out the chain between two terminals or forks and joins the halves by the shortest way.</summary>
    private List<int>? BetterKeyPath(List<int> tree, double weight)
    {
        foreach (var chain in TreeChains.Of(graph, tree, isTerminal))
        {
            var rest = tree.Except(chain).ToList();
            var reached = TreeChains.Component(graph, rest, graph.Edges[chain[0]].A, chain);
            var others = TreeChains.OtherSide(graph, tree, rest, reached, isTerminal, chain);
            var (distance, by) = graph.ShortestFrom(reached);
            var end = others.MinBy(v => (distance[v], v));
            if (distance[end] < graph.WeightOf(chain) - 1e-9)
            {
                for (var v = end; by[v] >= 0; v = graph.Other(by[v], v))
                {
                    rest.Add(by[v]);
                }

                var found = Spanning(Used(rest));
                if (found is not null && graph.WeightOf(found) < weight - 1e-9)
                {
                    return found;
                }
            }
        }

        return null;
    }

    private bool[] Used(IEnumerable<int> edges)
    {
        var used = (bool[])isTerminal.Clone();
        foreach (var e in edges)
        {
            used[graph.Edges[e].A] = used[graph.Edges[e].B] = true;
        }

        return used;
    }

    /// <summary>The least spanning tree over the marked vertices without useless leaves; null when they do not hang together.</summary>
    private List<int>? Spanning(bool[] used)
    {
        var joined = new DisjointSets(graph.Vertices);
        var edges = new List<int>();
        foreach (var e in graph.ByWeight)
        {
            var (a, b, _) = graph.Edges[e];
            if (used[a] && used[b] && joined.Join(a, b))
            {
                edges.Add(e);
            }
        }

        if (terminals.Any(t => joined.Root(t) != joined.Root(terminals[0])))
        {
            return null;
        }

        edges.RemoveAll(e => joined.Root(graph.Edges[e].A) != joined.Root(terminals[0]));
        edges = TreeChains.Prune(graph, edges, isTerminal);
        edges.Sort();
        return edges;
    }
}
