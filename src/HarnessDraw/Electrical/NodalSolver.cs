namespace HarnessDraw.Electrical;

/// <summary>Volts of all nodes and amperes of all parts. Not settled: Newton's method did not come to rest, the figures are the last ones.</summary>
internal sealed record NodalSolution(double[] Volts, bool[] Reached, double[] Amperes, bool Settled, int Rounds);

/// <summary>
/// The operating point of a network of two-ended parts: nodal equations with every part replaced by its tangent, repeated until the tangents
/// hold (Newton's method). Nodes joined without resistance are one unknown. A part of the network that hangs on nothing gets one tie to the
/// reference, through which nothing flows, so that what happens inside it is still right.
/// </summary>
internal sealed class NodalSolver
{
    private const int MostRounds = 60;
    private const double TieSiemens = 1;

    // volts: a smaller step changes nothing any more
    private const double SettledV = 1e-9;

    // volts: after a smaller step the tangents hold; a diode's changes by 4 in a thousand
    private const double NearV = 1e-4;

    // volts: what no meter shows
    private const double RoughV = 1e-5;
    private readonly int[] row;
    private readonly (int A, int B)[] ends;
    private readonly int[] numbers;
    private readonly (int Part, int Other)[][] touching;
    private readonly SparseNetwork matrix;
    private readonly int rows;

    /// <param name="nodes">How many nodes there are.</param>
    /// <param name="parts">Nodes of each part.</param>
    /// <param name="joints">Nodes that are one piece of metal.</param>
    /// <param name="reference">Node whose volts are zero here.</param>
    public NodalSolver(int nodes, IReadOnlyList<(int A, int B)> parts, IEnumerable<(int A, int B)> joints, int reference)
    {
        row = Joined(nodes, joints, reference, out rows);
        ends = [.. parts.Select(p => (row[p.A], row[p.B]))];
        numbers = [.. Enumerable.Range(0, ends.Length)];
        matrix = new SparseNetwork(rows, ends);
        var lists = new List<(int, int)>[rows];
        for (var i = 0; i < rows; i++)
        {
            lists[i] = [];
        }

        for (var i = 0; i < ends.Length; i++)
        {
            lists[ends[i].A].Add((i, ends[i].B));
            lists[ends[i].B].Add((i, ends[i].A));
        }

        touching = [.. lists.Select(l => l.ToArray())];
    }

    /// <summary>The equations' row of a node: nodes of one row are joined.</summary>
    public int RowOf(int node) => row[node];

    /// <summary>Solves for the laws of the parts; <paramref name="start"/> is a solution nearby, <paramref name="shorted"/> a node joined by a fault to <paramref name="shortV"/> volts over the reference.</summary>
    /// <param name="rough">True where a meter's digits are enough: no correction of the last ones.</param>
    public NodalSolution Solve(PartLaw[] laws, double[]? start = null, int shorted = -1, double shortSiemens = 0, double shortV = 0, bool rough = false)
    {
        var reached = Islands(laws, shorted, out var ties);
        var (extra, pushed) = (new double[rows], new double[rows]);
        foreach (var tie in ties)
        {
            extra[tie] = TieSiemens;
        }

        if (shorted >= 0)
        {
            extra[row[shorted]] += shortSiemens;
            pushed[row[shorted]] += shortSiemens * shortV;
        }

        var dead = DeadEnds(laws, extra, out var live);
        var siemens = new double[ends.Length];
        var sheet = matrix.NewSheet(live);
        var volts = StartVolts(laws, siemens, extra, pushed, start, sheet);
        var (left, step) = (new double[rows], new double[rows]);
        var (settled, rounds, moved, before) = (false, 0, double.PositiveInfinity, double.PositiveInfinity);
        for (; rounds < MostRounds && !settled; rounds++)
        {
            // tangents that hold bring each step to far less than the one before
            var renew = moved > NearV || moved > before / 10;
            (before, moved) = (moved, Step(laws, siemens, extra, pushed, volts, left, step, sheet, renew));
            settled = moved < (rough ? RoughV : SettledV);
            var share = settled ? 1 : Share(laws, extra, pushed, volts, left, step, live);
            for (var n = 1; n < rows; n++)
            {
                volts[n] += share * step[n];
            }
        }

        // one correction by what is left over at the nodes: rounding of the big solve goes away
        if (!rough)
        {
            Step(laws, siemens, extra, pushed, volts, left, step, sheet, renew: false);
            for (var n = 1; n < rows; n++)
            {
                volts[n] += step[n];
            }
        }

        foreach (var (n, other) in dead)
        {
            volts[n] = volts[other];
        }

        return Told(laws, volts, reached, settled, rounds);
    }

    /// <summary>One step of Newton's method and the most it moves a node; without new tangents where those of the last step still hold.</summary>
    private double Step(PartLaw[] laws, double[] siemens, double[] extra, double[] pushed, double[] volts, double[] left, double[] step, SparseNetwork.WorkingSheet sheet, bool renew)
    {
        LeftOver(laws, siemens, extra, pushed, volts, renew, left, sheet.Conducting);
        if (renew)
        {
            matrix.Eliminate(siemens, extra, sheet);
        }

        matrix.Substitute(left, sheet, step);
        var moved = 0.0;
        for (var n = 1; n < rows; n++)
        {
            moved = Math.Max(moved, Math.Abs(step[n]));
        }

        return moved;
    }

    /// <summary>
    /// Rows at the end of a chain that leads nowhere, each with the row it hangs on, the nearest to the rest first: no current flows there, so both have one voltage.
    /// The other conducting parts are live. A source at the end of a chain keeps it live.
    /// </summary>
    private List<(int Row, int Other)> DeadEnds(PartLaw[] laws, double[] extra, out int[] live)
    {
        var degree = new int[rows];
        var conducts = new bool[ends.Length];
        for (var i = 0; i < ends.Length; i++)
        {
            if (!laws[i].IsOpen && ends[i].A != ends[i].B)
            {
                conducts[i] = true;
                degree[ends[i].A]++;
                degree[ends[i].B]++;
            }
        }

        var dead = new List<(int Row, int Other)>();
        for (var n = 1; n < rows; n++)
        {
            for (var end = n; end > 0 && degree[end] == 1 && extra[end] == 0;)
            {
                var (part, other) = OnlyPart(end, conducts);
                if (laws[part].IsSource)
                {
                    break;
                }

                conducts[part] = false;
                degree[end] = 0;
                degree[other]--;
                dead.Add((end, other));
                end = other;
            }
        }

        dead.Reverse();
        live = Array.FindAll(numbers, i => conducts[i]);
        return dead;
    }

    private (int Part, int Other) OnlyPart(int end, bool[] conducts)
    {
        var k = 0;
        while (!conducts[touching[end][k].Part])
        {
            k++;
        }

        return touching[end][k];
    }

    private double[] StartVolts(PartLaw[] laws, double[] siemens, double[] extra, double[] pushed, double[]? start, SparseNetwork.WorkingSheet sheet)
    {
        var volts = new double[rows];
        for (var n = 0; start is not null && n < row.Length; n++)
        {
            volts[row[n]] = start[n];
        }

        if (start is null)
        {
            var injected = new double[rows];
            foreach (var i in sheet.Conducting)
            {
                (var amperes, siemens[i]) = laws[i].Start;
                injected[ends[i].A] -= amperes;
                injected[ends[i].B] += amperes;
            }

            matrix.Eliminate(siemens, extra, sheet);
            matrix.Substitute(injected, sheet, volts);
        }

        // a row that hangs on its tie or its short alone has the volts of it
        for (var n = 1; n < rows; n++)
        {
            volts[n] = extra[n] == 0 ? volts[n] : pushed[n] / extra[n];
        }

        return volts;
    }

    /// <summary>Amperes that come into each row and do not leave it; renews the slopes where asked.</summary>
    private void LeftOver(PartLaw[] laws, double[] siemens, double[] extra, double[] pushed, double[] volts, bool refresh, double[] left, int[] live)
    {
        for (var n = 0; n < rows; n++)
        {
            left[n] = pushed[n] - (extra[n] * volts[n]);
        }

        foreach (var i in live)
        {
            var (amperes, slope) = laws[i].At(volts[ends[i].A] - volts[ends[i].B]);
            siemens[i] = refresh ? slope : siemens[i];
            left[ends[i].A] -= amperes;
            left[ends[i].B] += amperes;
        }
    }

    /// <summary>
    /// How much of a step to take. The solution is the lowest point of a convex valley (what the parts take in, summed up over their volts);
    /// a whole step that would climb its far side, over the knee of a diode or a regulator, is cut back to the bottom along its line.
    /// </summary>
    private double Share(PartLaw[] laws, double[] extra, double[] pushed, double[] volts, double[] left, double[] step, int[] live)
    {
        const double Flat = 0.1;

        // what is left over at the nodes is how steeply the valley falls where we stand
        var first = 0.0;
        for (var n = 1; n < rows; n++)
        {
            first -= left[n] * step[n];
        }

        if (first >= 0 || Climb(laws, extra, pushed, volts, step, 1, live) is var last && last <= -Flat * first)
        {
            return 1;
        }

        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            var climb = Climb(laws, extra, pushed, volts, step, middle, live);
            if (Math.Abs(climb) <= -Flat * first)
            {
                return middle;
            }

            (low, high) = climb > 0 ? (low, middle) : (middle, high);
        }

        return (low + high) / 2;
    }

    private double Climb(PartLaw[] laws, double[] extra, double[] pushed, double[] volts, double[] step, double share, int[] live)
    {
        var sum = 0.0;
        for (var n = 1; n < rows; n++)
        {
            sum += ((extra[n] * (volts[n] + (share * step[n]))) - pushed[n]) * step[n];
        }

        foreach (var i in live)
        {
            var across = step[ends[i].A] - step[ends[i].B];
            if (across != 0)
            {
                sum += laws[i].At(volts[ends[i].A] - volts[ends[i].B] + (share * across)).Amperes * across;
            }
        }

        return sum;
    }

    private NodalSolution Told(PartLaw[] laws, double[] volts, bool[] reached, bool settled, int rounds)
    {
        var all = new double[row.Length];
        var told = new bool[row.Length];
        for (var n = 0; n < row.Length; n++)
        {
            all[n] = double.IsFinite(volts[row[n]]) ? volts[row[n]] : 0;
            told[n] = reached[row[n]];
        }

        var amperes = new double[ends.Length];
        for (var i = 0; i < ends.Length; i++)
        {
            var a = laws[i].At(volts[ends[i].A] - volts[ends[i].B]).Amperes;
            amperes[i] = double.IsFinite(a) ? a : 0;
            settled &= double.IsFinite(a);
        }

        return new(all, told, amperes, settled, rounds);
    }

    /// <summary>Rows that conduct to the reference, and one row of each island that does not.</summary>
    private bool[] Islands(PartLaw[] laws, int shorted, out List<int> ties)
    {
        ties = [];
        var seen = new bool[rows];
        var waiting = new Stack<int>(rows);
        Spread(laws, 0, seen, waiting);
        if (shorted >= 0 && !seen[row[shorted]])
        {
            Spread(laws, row[shorted], seen, waiting);
        }

        var reached = (bool[])seen.Clone();
        for (var n = 1; n < rows; n++)
        {
            if (!seen[n])
            {
                ties.Add(n);
                Spread(laws, n, seen, waiting);
            }
        }

        return reached;
    }

    private void Spread(PartLaw[] laws, int from, bool[] seen, Stack<int> waiting)
    {
        waiting.Push(from);
        seen[from] = true;
        while (waiting.TryPop(out var n))
        {
            foreach (var (part, other) in touching[n])
            {
                if (!seen[other] && !laws[part].IsOpen)
                {
                    seen[other] = true;
                    waiting.Push(other);
                }
            }
        }
    }

    /// <summary>Numbers the groups of joined nodes in node order, the reference's group first.</summary>
    private static int[] Joined(int nodes, IEnumerable<(int A, int B)> joints, int reference, out int rows)
    {
        var parent = Enumerable.Range(0, nodes).ToArray();
        int Root(int n)
        {
            while (parent[n] != n)
            {
                n = parent[n] = parent[parent[n]];
            }

            return n;
        }

        foreach (var (a, b) in joints)
        {
            var (x, y) = (Root(a), Root(b));
            parent[Math.Max(x, y)] = Math.Min(x, y);
        }

        var number = new int[nodes];
        Array.Fill(number, -1);
        if (nodes > 0)
        {
            number[Root(reference)] = 0;
        }

        rows = 1;
        var row = new int[nodes];
        for (var n = 0; n < nodes; n++)
        {
            var root = Root(n);
            if (number[root] < 0)
            {
                number[root] = rows++;
            }

            row[n] = number[root];
        }

        return row;
    }
}
