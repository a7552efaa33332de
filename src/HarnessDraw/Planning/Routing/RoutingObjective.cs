namespace HarnessDraw.Planning.Routing;

/// <summary>
/// What routing minimises: over all segments, length times (copper of the wires in it, mm2, plus the price of covering as mm2 of copper).
/// Copper is guessed before sizes are known: by the current, and by as much more as a stretch that is hotter than the wire's ends asks for. A wire has one size: what a hot stretch asks for is
/// paid over its whole length. A wire that is shared up to a splice is counted once.
/// </summary>
/// <param name="runC">Ambient of every edge, degC.</param>
/// <param name="placeC">Ambient of every vertex, degC: a wire that ends in the heat must bear it whichever way it goes.</param>
internal sealed class RoutingObjective(WeightedGraph graph, IReadOnlyList<NetDemand> nets, double coveringMm2, int root, double[] runC, double[] placeC)
{
    private readonly bool[] hasMember = new bool[graph.Vertices];
    private readonly List<(double Mm, double WayC, double EndsC, double CurrentA)> atTop = [];
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
        var members = net.Places.Length;
        for (var m = 0; m < members; m++)
        {
            hasMember[net.Places[m]] = true;
            for (var v = net.Places[m]; v >= 0; v = parent[v])
            {
                count[v]++;
                below[v] += m == 0 ? 0 : net.LargestA[m];
                rootBelow[v] |= m == 0;
            }
        }

        var cost = 0.0;
        atTop.Clear();
        foreach (var place in net.Places)
        {
            cost += LegsFrom(place, net);
        }

        // two that meet above all members, where no member is, are one wire
        if (atTop is [var one, var other] && !hasMember[TopOf(net)])
        {
            cost += (one.Mm + other.Mm) * net.Mm2(Math.Max(one.CurrentA, other.CurrentA), Math.Max(one.WayC, other.WayC), Math.Max(one.EndsC, other.EndsC));
        }
        else
        {
            foreach (var (mm, wayC, endsC, currentA) in atTop)
            {
                cost += mm * net.Mm2(currentA, wayC, EndsOr(endsC, net));
            }
        }

        foreach (var place in net.Places)
        {
            hasMember[place] = false;
        }

        for (var v = net.Places[0]; v >= 0; v = parent[v])
        {
            Forget(v);
        }

        return cost;
    }

    private int TopOf(NetDemand net)
    {
        var v = net.Places[0];
        while (count[v] < net.Places.Length)
        {
            v = parent[v];
        }

        return v;
    }

    /// <summary>Copper of the wires from a member up to where others have already come by; what comes up to above all members is put by.</summary>
    private double LegsFrom(int place, NetDemand net)
    {
        var cost = 0.0;
        for (var v = place; count[v] > 0 && count[v] < net.Places.Length;)
        {
            var (passed, mm, wayC, endsC) = (count[v], 0.0, double.NegativeInfinity, hasMember[v] ? placeC[v] : double.NegativeInfinity);
            var currentA = rootBelow[v] ? below[root] - below[v] : below[v];
            while (count[v] == passed)
            {
                mm += graph.Edges[parentEdge[v]].Weight;
                wayC = Math.Max(wayC, runC[parentEdge[v]]);
                Forget(v);
                v = parent[v];
            }

            endsC = hasMember[v] ? Math.Max(endsC, placeC[v]) : endsC;
            if (count[v] == net.Places.Length)
            {
                atTop.Add((mm, wayC, endsC, currentA));
            }
            else
            {
                cost += mm * net.Mm2(currentA, wayC, EndsOr(endsC, net));
            }
        }

        return cost;
    }

    // a wire between two splices is held against the root of its net
    private double EndsOr(double endsC, NetDemand net) => double.IsNegativeInfinity(endsC) ? placeC[net.Places[0]] : endsC;

    private void Forget(int v) => (count[v], below[v], rootBelow[v]) = (0, 0, false);
}
