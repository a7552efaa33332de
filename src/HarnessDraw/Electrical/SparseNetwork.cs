namespace HarnessDraw.Electrical;

/// <summary>
/// Node equations of a conductance network against reference node 0. The order of elimination (least degree first, ties by number) and
/// its fill are found once; each operating state then costs one numeric pass. Nearly tree-shaped networks have almost no fill. Chains and forks between nodes
/// whose figures are renewed again and again come first: they are eliminated once. Hubs stay, as eliminating one joins all its neighbours to each other.
/// </summary>
internal sealed class SparseNetwork
{
    // siemens: a node that nothing ties down has no volts
    private const double Nothing = 1e-15;

    // neighbours of a node that costs no more joins than it takes away
    private const int Fork = 3;
    private readonly int nodes;
    private readonly (int A, int B)[] ends;
    private readonly int[] slotOfBranch;
    private readonly int slots;
    private readonly int edges;
    private readonly Pivot[] pivots;
    private readonly Conducting whole;
    private readonly bool[] late;

    /// <param name="nodes">How many nodes there are; node 0 is the reference.</param>
    /// <param name="branches">Nodes of each branch.</param>
    /// <param name="late">By node: true for those whose figures are renewed; null: none.</param>
    public SparseNetwork(int nodes, IReadOnlyList<(int A, int B)> branches, bool[]? late = null)
    {
        this.nodes = nodes;
        this.late = late ?? new bool[nodes];
        ends = [.. branches];
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
        edges = pivots.Sum(p => p.Near.Length);
        var touched = new bool[nodes];
        Array.Fill(touched, true);
        whole = Conducting.Of([.. Enumerable.Range(0, ends.Length)], pivots, touched);
    }

    /// <summary>
    /// Puts in the volts of every node for the branch conductances in siemens and the currents pushed into the nodes, in amperes.
    /// </summary>
    public void Solve(double[] siemens, double[] injectedA, Figures figures, double[] volts)
    {
        Begin(null, figures);
        Add(siemens, whole.Branches, figures);
        Eliminate(whole, figures, whole.All);
        Substitute(injectedA, whole, figures, volts);
    }

    /// <summary>Working figures, for many solutions one after the other.</summary>
    public Figures NewFigures() => new(new double[nodes], new double[slots], new double[edges], new double[nodes]);

    /// <summary>The network with these branches alone: the others conduct nothing.</summary>
    public Conducting Only(int[] conducting)
    {
        var touched = new bool[nodes];
        foreach (var i in conducting)
        {
            touched[ends[i].A] = touched[ends[i].B] = true;
        }

        return Conducting.Of(conducting, pivots, touched);
    }

    /// <summary>Sums at the nodes and between them before any branch: the siemens with which nodes are tied to the reference.</summary>
    public static void Begin(double[]? toReference, Figures figures)
    {
        Array.Clear(figures.Off);
        if (toReference is null)
        {
            Array.Clear(figures.Diagonal);
        }
        else
        {
            toReference.CopyTo(figures.Diagonal, 0);
        }
    }

    /// <summary>Adds branches to the sums at the nodes and between them.</summary>
    public void Add(double[] siemens, ReadOnlySpan<int> branches, Figures figures)
    {
        var (diagonal, off, _, _) = figures;
        foreach (var i in branches)
        {
            var (a, b) = ends[i];
            if (a == b)
            {
                continue;
            }

            var g = siemens[i];
            diagonal[a] += g;
            diagonal[b] += g;
            if (slotOfBranch[i] is >= 0 and var slot)
            {
                off[slot] -= g;
            }
        }
    }

    /// <summary>The part of a solution that depends on the conductances alone, from the sums of all branches: of some pivots, those before them are done.</summary>
    public static void Eliminate(Conducting conducting, Figures figures, Range of)
    {
        var (diagonal, off, factors, _) = figures;
        var (node, first, near, slot, pairs) = (conducting.Node, conducting.First, conducting.Near, conducting.Slot, conducting.Pairs);
        var pair = of.Start.Value == 0 ? 0 : conducting.LatePairs;
        for (var k = of.Start.Value; k < of.End.Value; k++)
        {
            var (from, to) = (first[k], first[k + 1]);
            var own = diagonal[node[k]];
            if (Math.Abs(own) <= Nothing)
            {
                pair += (to - from) * (to - from - 1) / 2;
                continue;
            }

            for (var i = from; i < to; i++)
            {
                var between = off[slot[i]];
                var factor = between / own;
                factors[i] = factor;
                diagonal[near[i]] -= factor * between;
                for (var j = i + 1; j < to; j++)
                {
                    off[pairs[pair++]] -= factor * off[slot[j]];
                }
            }
        }
    }

    /// <summary>Volts for currents pushed into the nodes, by conductances that were eliminated. Nodes that nothing conducts to keep what they have.</summary>
    public static void Substitute(double[] injectedA, Conducting conducting, Figures figures, double[] volts)
    {
        injectedA.CopyTo(figures.Right, 0);
        Forward(conducting, figures, figures.Right, conducting.All);
        volts[0] = 0;
        Backward(conducting, figures, figures.Right, volts, conducting.All);
    }

    /// <summary>Hands what is pushed into some nodes on to those that are eliminated after them.</summary>
    public static void Forward(Conducting conducting, Figures figures, double[] right, Range of)
    {
        var (node, first, near) = (conducting.Node, conducting.First, conducting.Near);
        var (diagonal, factors) = (figures.Diagonal, figures.Factors);
        for (var k = of.Start.Value; k < of.End.Value; k++)
        {
            var pushed = right[node[k]];
            if (Math.Abs(diagonal[node[k]]) > Nothing)
            {
                for (var i = first[k]; i < first[k + 1]; i++)
                {
                    right[near[i]] -= factors[i] * pushed;
                }
            }
        }
    }

    /// <summary>Volts of some nodes, the last first, from what was handed on to them and the volts of those eliminated after them.</summary>
    public static void Backward(Conducting conducting, Figures figures, double[] right, double[] volts, Range of)
    {
        var (node, first, near, slot) = (conducting.Node, conducting.First, conducting.Near, conducting.Slot);
        var (diagonal, off) = (figures.Diagonal, figures.Off);
        for (var k = of.End.Value - 1; k >= of.Start.Value; k--)
        {
            var n = node[k];
            var sum = right[n];
            for (var i = first[k]; i < first[k + 1]; i++)
            {
                sum -= off[slot[i]] * volts[near[i]];
            }

            volts[n] = Math.Abs(diagonal[n]) > Nothing ? sum / diagonal[n] : 0;
        }
    }

    private Pivot[] Order(HashSet<int>[] near, Func<int, int, int> slot)
    {
        var order = new List<Pivot>();
        var waiting = new PriorityQueue<int, (bool Late, int Degree, int Node)>();
        var done = new bool[nodes];
        var isLate = false;
        for (var i = 1; i < nodes; i++)
        {
            waiting.Enqueue(i, Rank(i));
        }

        while (waiting.TryDequeue(out var node, out var rank))
        {
            if (done[node] || rank.Degree != near[node].Count)
            {
                continue;
            }

            done[node] = true;
            isLate |= rank.Late;
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

            order.Add(new(node, others, [.. others.Select(o => slot(node, o))], [.. pairs], isLate));
            foreach (var other in others)
            {
                waiting.Enqueue(other, Rank(other));
            }
        }

        return [.. order];

        (bool Late, int Degree, int Node) Rank(int node) => (isLate || late[node] || near[node].Count > Fork, near[node].Count, node);
    }

    /// <summary>
    /// The branches that conduct and the pivots they touch, in the order of elimination, one after the other in plain arrays: node of each, where its neighbours
    /// begin (<c>First</c>, one more at the end), their nodes and slots, and the slots between each two of them. From <c>Late</c> on, with pairs from <c>LatePairs</c> on, come the late ones.
    /// </summary>
    internal sealed record Conducting(int[] Branches, int[] Node, int[] First, int[] Near, int[] Slot, int[] Pairs, int Late, int LatePairs)
    {
        public Range All => ..Node.Length;

        public static Conducting Of(int[] branches, Pivot[] pivots, bool[] touched)
        {
            var (count, edges, pairs, early, earlyPairs) = (0, 0, 0, 0, 0);
            foreach (var p in pivots)
            {
                if (touched[p.Node])
                {
                    (count, edges, pairs) = (count + 1, edges + p.Near.Length, pairs + p.Pairs.Length);
                    (early, earlyPairs) = p.Late ? (early, earlyPairs) : (count, pairs);
                }
            }

            var made = new Conducting(branches, new int[count], new int[count + 1], new int[edges], new int[edges], new int[pairs], early, earlyPairs);
            (count, edges, pairs) = (0, 0, 0);
            foreach (var p in pivots)
            {
                if (touched[p.Node])
                {
                    made.Node[count] = p.Node;
                    p.Near.CopyTo(made.Near, edges);
                    p.Slots.CopyTo(made.Slot, edges);
                    p.Pairs.CopyTo(made.Pairs, pairs);
                    (edges, pairs) = (edges + p.Near.Length, pairs + p.Pairs.Length);
                    made.First[++count] = edges;
                }
            }

            return made;
        }
    }

    /// <summary>Sums at the nodes and between them, the factors of the elimination by neighbour, and what is pushed in.</summary>
    internal sealed record Figures(double[] Diagonal, double[] Off, double[] Factors, double[] Right);

    internal sealed record Pivot(int Node, int[] Near, int[] Slots, int[] Pairs, bool Late);
}
