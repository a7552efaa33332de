namespace HarnessDraw.Planning.Routing;

/// <summary>
/// Chooses the tree: starts from the lightest tree found and from the shortest ways to the root and to the busiest place, then exchanges
/// ways (one new way in, one old edge of the circle out) while the stated objective falls. Not proven least; the same on every run.
/// </summary>
internal static class BranchRouter
{
    /// <summary>The trees to start from, which join what is wanted whatever currents flow; none where nothing is to be joined.</summary>
    /// <param name="places">Places and the ways between them.</param>
    /// <param name="ends">By net: the places of its members.</param>
    /// <param name="root">The place that the tree begins at.</param>
    /// <param name="forced">Edges that hand-given routes use.</param>
    public static List<int>[] Starts(PlaceGraph places, int[][] ends, int root, IReadOnlyCollection<int> forced)
    {
        if (places.Graph.Vertices < 2)
        {
            return [];
        }

        var graph = Forced(places.Graph, forced);
        var wanted = Wanted(graph, ends, root, forced);
        int[] needed = [.. Enumerable.Range(0, wanted.Length).Where(v => wanted[v])];
        if (needed.Length < 2)
        {
            return [];
        }

        var busiest = ends.SelectMany(e => e).GroupBy(p => p).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).Select(g => g.Key).FirstOrDefault(root);
        List<List<int>> starts =
        [
            [.. new SteinerTreeFinder(graph, needed).Find(2)],
            ShortestWays(graph, root, wanted),
            ShortestWays(graph, busiest, wanted),
        ];
        return [.. starts.DistinctBy(s => string.Join(',', s.Order()), StringComparer.Ordinal)];
    }

    /// <summary>The tree of the lowest objective that the starts lead to.</summary>
    public static IReadOnlyList<int> Route(List<int>[] starts, PlaceGraph places, IReadOnlyList<NetDemand> nets, int root, PlanningOptions options, IReadOnlyCollection<int> forced)
    {
        if (starts.Length == 0)
        {
            return [];
        }

        var graph = Forced(places.Graph, forced);
        var wanted = Wanted(graph, nets.Select(n => n.Places), root, forced);
        var trees = new List<int>[starts.Length];
        var costs = new double[starts.Length];
        // starts are improved side by side; each fills its own place, and of equal ones the first is taken
        SideBySide.For(trees.Length, s =>
        {
            var objective = new RoutingObjective(graph, nets, options.CoveringAsCopperMm2, root, places.RunC, places.PlaceC);
            trees[s] = Improve(graph, starts[s], wanted, objective, forced);
            costs[s] = objective.CostOf(trees[s]);
        });
        return trees[Array.IndexOf(costs, costs.Min())];
    }

    private static bool[] Wanted(WeightedGraph graph, IEnumerable<int[]> ends, int root, IReadOnlyCollection<int> forced)
    {
        var wanted = new bool[graph.Vertices];
        wanted[root] = true;
        foreach (var v in ends.SelectMany(e => e).Concat(forced.SelectMany(e => new[] { graph.Edges[e].A, graph.Edges[e].B })))
        {
            wanted[v] = true;
        }

        return wanted;
    }

    /// <summary>Runs that hand-given routes use cost next to nothing, so that the tree keeps them.</summary>
    private static WeightedGraph Forced(WeightedGraph graph, IReadOnlyCollection<int> forced) =>
        forced.Count == 0 ? graph : new(graph.Vertices, graph.Edges.Select((e, i) => (e.A, e.B, forced.Contains(i) ? e.Weight * 1e-6 : e.Weight)));

    private static List<int> ShortestWays(WeightedGraph graph, int from, bool[] wanted)
    {
        var (_, by) = graph.ShortestFrom([from]);
        return TreeChains.Prune(graph, [.. by.Where(e => e >= 0).Distinct().Order()], wanted);
    }

    private static List<int> Improve(WeightedGraph graph, List<int> tree, bool[] wanted, RoutingObjective objective, IReadOnlyCollection<int> forced)
    {
        var cost = objective.CostOf(tree);
        for (var round = 0; round < 60; round++)
        {
            List<int>? best = null;
            foreach (var (ear, circle) in Circles(graph, tree))
            {
                foreach (var edge in Distinct(graph, tree, circle, wanted, forced))
                {
                    var other = TreeChains.Prune(graph, [.. tree.Where(e => e != edge), .. ear], wanted);
                    var otherCost = objective.CostOf(other);
                    if (otherCost < cost - 1e-6)
                    {
                        cost = otherCost;
                        best = other;
                    }
                }
            }

            if (best is null)
            {
                break;
            }

            tree = best;
        }

        tree.Sort();
        return tree;
    }

    /// <summary>Edges of a circle that may go: of a run of edges without a fork or a wanted place between them one, as they all go with it.</summary>
    private static IEnumerable<int> Distinct(WeightedGraph graph, List<int> tree, List<int> circle, bool[] wanted, IReadOnlyCollection<int> forced)
    {
        var degree = new int[graph.Vertices];
        foreach (var e in tree)
        {
            degree[graph.Edges[e].A]++;
            degree[graph.Edges[e].B]++;
        }

        var before = -1;
        foreach (var e in circle.Where(e => !forced.Contains(e)))
        {
            if (before < 0 || !GoTogether(before, e))
            {
                yield return e;
            }

            before = e;
        }

        bool GoTogether(int a, int b)
        {
            var (x, y) = (graph.Edges[a], graph.Edges[b]);
            return (IsPassed(x.A) && (x.A == y.A || x.A == y.B)) || (IsPassed(x.B) && (x.B == y.A || x.B == y.B));
        }

        bool IsPassed(int v) => degree[v] == 2 && !wanted[v];
    }

    /// <summary>Every way outside the tree that joins two of its vertices through one unused edge, with the edges of the circle it closes.</summary>
    private static List<(List<int> Ear, List<int> Circle)> Circles(WeightedGraph graph, List<int> tree)
    {
        var inTree = tree.ToHashSet();
        var vertices = tree.SelectMany(e => new[] { graph.Edges[e].A, graph.Edges[e].B }).Distinct().Order().ToList();
        var (_, by) = graph.ShortestFrom(vertices);
        var alone = new WeightedGraph(graph.Vertices, tree.Select(e => graph.Edges[e]));
        var found = new List<(List<int>, List<int>)>();
        for (var e = 0; e < graph.Edges.Count; e++)
        {
            if (inTree.Contains(e) || by[graph.Edges[e].A] == e || by[graph.Edges[e].B] == e)
            {
                continue;
            }

            var ear = new List<int> { e };
            var a = Follow(graph, by, graph.Edges[e].A, ear);
            var b = Follow(graph, by, graph.Edges[e].B, ear);
            if (a == b || ear.Distinct().Count() != ear.Count)
            {
                continue;
            }

            var (distance, back) = alone.ShortestFrom([a]);
            if (double.IsInfinity(distance[b]))
            {
                continue;
            }

            var circle = new List<int>();
            for (var v = b; back[v] >= 0; v = alone.Other(back[v], v))
            {
                circle.Add(tree[back[v]]);
            }

            found.Add((ear, circle));
        }

        return found;
    }

    private static int Follow(WeightedGraph graph, int[] by, int from, List<int> ear)
    {
        while (by[from] >= 0)
        {
            ear.Add(by[from]);
            from = graph.Other(by[from], from);
        }

        return from;
    }
}
