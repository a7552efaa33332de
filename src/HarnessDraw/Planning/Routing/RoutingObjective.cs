namespace HarnessDraw.Planning.Routing;

/// <summary>
/// What routing minimises: over all segments, length times (copper of the wires in it, mm2, plus the price of covering as mm2 of copper).
/// Copper is guessed from the current until sizes are known; a wire that is shared up to a splice is counted once.
/// </summary>
internal sealed class RoutingObjective(WeightedGraph graph, IReadOnlyList<NetDemand> nets, double coveringMm2, int root)
{
    private readonly int[] parent = new int[graph.Vertices];
    private readonly int[] parentEdge = new int[graph.Vertices];
    private readonly int[] count = new int[graph.Vertices];
    private readonly double[] below = new double[graph.Vertices];
    private readonly bool[] rootBelow = new bool[graph.Vertices];
    private readonly List<int> order = [];
    private readonly int[] firstAt = new int[graph.Vertices];
    private int[] nextAt = [];

    public double CostOf(List<int> tree)
    {
        if (!Orient(tree))
        {
            return double.PositiveInfinity;
        }

        var cost = 0.0;
        foreach (var e in tree)
        {
            cost += graph.Edges[e].Weight * coveringMm2;
        }

        foreach (var net in nets)
        {
            cost += CopperOf(net);
        }

        return cost;
    }

    private bool Orient(List<int> tree)
    {
        Array.Fill(parent, -2);
        order.Clear();
        order.Add(root);
        parent[root] = -1;
        // the edges at a vertex as a chain: edge k of the tree has its ends at 2k and 2k + 1
        Array.Fill(firstAt, -1);
        nextAt = nextAt.Length < 2 * tree.Count ? new int[2 * tree.Count] : nextAt;
        for (var k = tree.Count - 1; k >= 0; k--)
        {
            var edge = graph.Edges[tree[k]];
            (nextAt[2 * k], firstAt[edge.A]) = (firstAt[edge.A], 2 * k);
            (nextAt[(2 * k) + 1], firstAt[edge.B]) = (firstAt[edge.B], (2 * k) + 1);
        }

        for (var i = 0; i < order.Count; i++)
        {
            for (var at = firstAt[order[i]]; at >= 0; at = nextAt[at])
            {
                var e = tree[at / 2];
                var other = graph.Other(e, order[i]);
                if (parent[other] == -2)
                {
                    parent[other] = order[i];
                    parentEdge[other] = e;
                    order.Add(other);
                }
            }
        }

        if (order.Count != tree.Count + 1)
        {
            return false;
        }

        foreach (var net in nets)
        {
            foreach (var place in net.Places)
            {
                if (parent[place] == -2)
                {
                    return false;
                }
            }
        }

        return true;
    }

    private double CopperOf(NetDemand net)
    {
        for (var m = 0; m < net.Places.Length; m++)
        {
            for (var v = net.Places[m]; v >= 0; v = parent[v])
            {
                count[v]++;
                below[v] += m == 0 ? 0 : net.LargestA[m];
                rootBelow[v] |= m == 0;
            }
        }

        var total = below[root];
        var cost = 0.0;
        for (var m = 0; m < net.Places.Length; m++)
        {
            for (var v = net.Places[m]; v >= 0; v = parent[v])
            {
                if (parent[v] >= 0 && count[v] > 0 && count[v] < net.Places.Length)
                {
                    cost += graph.Edges[parentEdge[v]].Weight * NetDemand.GuessMm2(rootBelow[v] ? total - below[v] : below[v]);
                }

                count[v] = 0;
                below[v] = 0;
                rootBelow[v] = false;
            }
        }

        return cost;
    }
}
