namespace HarnessDraw.Electrical;

/// <summary>
/// Node equations of a conductance network against reference node 0. The order of elimination (least degree first, ties by number) and
/// its fill are found once; each operating state then costs one numeric pass. Nearly tree-shaped networks have almost no fill.
/// </summary>
internal sealed class SparseNetwork
{
    // siemens: a node that nothing ties down has no volts
    private const double Nothing = 1e-15;
    private readonly int nodes;
    private readonly (int A, int B)[] ends;
    private readonly int[] slotOfBranch;
    private readonly int slots;
    private readonly int[] all;
    private readonly Pivot[] pivots;

    public SparseNetwork(int nodes, IReadOnlyList<(int A, int B)> branches)
    {
        this.nodes = nodes;
        ends = [.. branches];
        all = [.. Enumerable.Range(0, ends.Length)];
        slotOfBranch = new int[ends.Length];
        var slotOf = new Dictionary<(int, int), int>();
        var near = new HashSet<int>[nodes];
        for (var i = 0; i < nodes; i++)
        {
            near[i] = [];
        }

        int Slot(int a, int b)
        {
            var key = a < b ? (a, b) : (b, a);
            if (!slotOf.TryGetValue(key, out var slot))
            {
                slot = slotOf.Count;
                slotOf.Add(key, slot);
            }

            return slot;
        }

        for (var i = 0; i < ends.Length; i++)
        {
            var (a, b) = ends[i];
            slotOfBranch[i] = -1;
            if (a != b && a != 0 && b != 0)
            {
                slotOfBranch[i] = Slot(a, b);
                near[a].Add(b);
                near[b].Add(a);
            }
        }

        pivots = Order(near, Slot);
        slots = slotOf.Count;
    }

    /// <summary>
    /// Volts of every node for the branch conductances in siemens and the currents pushed into the nodes, in amperes.
    /// </summary>
    public double[] Solve(double[] siemens, double[] injectedA, Figures figures)
    {
        var volts = new double[nodes];
        var whole = new Conducting(all, pivots);
        Eliminate(siemens, null, whole, figures);
        Substitute(injectedA, whole, figures, volts);
        return volts;
    }

    /// <summary>Working figures, for many solutions one after the other.</summary>
    public Figures NewFigures() => new(new double[nodes], new double[slots], new double[slots], new double[nodes]);

    /// <summary>The network with these branches alone: the others conduct nothing.</summary>
    public Conducting Only(int[] conducting)
    {
        var touched = new bool[nodes];
        foreach (var i in conducting)
        {
            touched[ends[i].A] = touched[ends[i].B] = true;
        }

        var (used, count) = (new Pivot[pivots.Length], 0);
        foreach (var p in pivots)
        {
            if (touched[p.Node])
            {
                used[count++] = p;
            }
        }

        return new(conducting, used[..count]);
    }

    /// <summary>The part of a solution that depends on the conductances alone.</summary>
    public void Eliminate(double[] siemens, double[]? toReference, Conducting conducting, Figures figures)
    {
        var (diagonal, off, factors, _) = figures;
        Array.Clear(off);
        if (toReference is null)
        {
            Array.Clear(diagonal);
        }
        else
        {
            toReference.CopyTo(diagonal, 0);
        }

        foreach (var i in conducting.Branches)
        {
            var (a, b) = ends[i];
            if (a == b)
            {
                continue;
            }

            diagonal[a] += siemens[i];
            diagonal[b] += siemens[i];
            if (slotOfBranch[i] >= 0)
            {
                off[slotOfBranch[i]] -= siemens[i];
            }
        }

        foreach (var p in conducting.Used)
        {
            Eliminate(p, diagonal, off, factors);
        }
    }

    /// <summary>Volts for currents pushed into the nodes, by conductances that were eliminated. Nodes that nothing conducts to keep what they have.</summary>
    public void Substitute(double[] injectedA, Conducting conducting, Figures figures, double[] volts)
    {
        var (diagonal, off, factors, right) = figures;
        var used = conducting.Used;
        injectedA.CopyTo(right, 0);
        foreach (var p in used)
        {
            if (Math.Abs(diagonal[p.Node]) > Nothing)
            {
                for (var i = 0; i < p.Near.Length; i++)
                {
                    right[p.Near[i]] -= factors[p.Slots[i]] * right[p.Node];
                }
            }
        }

        volts[0] = 0;
        for (var k = used.Length - 1; k >= 0; k--)
        {
            var p = used[k];
            var sum = right[p.Node];
            for (var i = 0; i < p.Near.Length; i++)
            {
                sum -= off[p.Slots[i]] * volts[p.Near[i]];
            }

            volts[p.Node] = Math.Abs(diagonal[p.Node]) > Nothing ? sum / diagonal[p.Node] : 0;
        }
    }

    private static void Eliminate(Pivot p, double[] diagonal, double[] off, double[] factors)
    {
        if (Math.Abs(diagonal[p.Node]) <= Nothing)
        {
            return;
        }

        var pair = 0;
        for (var i = 0; i < p.Near.Length; i++)
        {
            var factor = off[p.Slots[i]] / diagonal[p.Node];
            factors[p.Slots[i]] = factor;
            diagonal[p.Near[i]] -= factor * off[p.Slots[i]];
            for (var j = i + 1; j < p.Near.Length; j++)
            {
                off[p.Pairs[pair++]] -= factor * off[p.Slots[j]];
            }
        }
    }

    private Pivot[] Order(HashSet<int>[] near, Func<int, int, int> slot)
    {
        var order = new List<Pivot>();
        var waiting = new PriorityQueue<int, (int Degree, int Node)>();
        var done = new bool[nodes];
        for (var i = 1; i < nodes; i++)
        {
            waiting.Enqueue(i, (near[i].Count, i));
        }

        while (waiting.TryDequeue(out var node, out var rank))
        {
            if (done[node] || rank.Degree != near[node].Count)
            {
                continue;
            }

            done[node] = true;
            int[] others = [.. near[node].Order()];
            var pairs = new List<int>();
            for (var i = 0; i < others.Length; i++)
            {
                near[others[i]].Remove(node);
                for (var j = i + 1; j < others.Length; j++)
                {
                    pairs.Add(slot(others[i], others[j]));
                    near[others[i]].Add(others[j]);
                    near[others[j]].Add(others[i]);
                }
            }

            order.Add(new(node, others, [.. others.Select(o => slot(node, o))], [.. pairs]));
            foreach (var other in others)
            {
                waiting.Enqueue(other, (near[other].Count, other));
            }
        }

        return [.. order];
    }

    /// <summary>The branches that conduct and the pivots they touch.</summary>
    internal sealed record Conducting(int[] Branches, Pivot[] Used);

    /// <summary>Sums at the nodes and between them, the factors of the elimination, and what is pushed in.</summary>
    internal sealed record Figures(double[] Diagonal, double[] Off, double[] Factors, double[] Right);

    internal sealed record Pivot(int Node, int[] Near, int[] Slots, int[] Pairs);
}
