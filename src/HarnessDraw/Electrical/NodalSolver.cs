using System.Collections.Concurrent;

namespace HarnessDraw.Electrical;

/// <summary>Volts of all nodes and amperes of all parts. Not settled: Newton's method did not come to rest, the figures are the last ones.</summary>
internal sealed record NodalSolution(double[] Volts, bool[] Reached, double[] Amperes, bool Settled, int Rounds, LiveNetwork Live);

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

    // amperes: far above what the last step leaves over, far below what a load draws
    private const double UnbalancedA = 1e-3;

    // volts: what no meter shows
    private const double RoughV = 1e-5;
    private readonly int[] row;
    private readonly (int A, int B)[] ends;
    private readonly RowGraph graph;
    private readonly SparseNetwork matrix;
    private readonly int rows;

    // working figures of solutions that are done
    private readonly ConcurrentBag<NodalWork> idle = [];

    /// <param name="nodes">How many nodes there are.</param>
    /// <param name="parts">Nodes of each part.</param>
    /// <param name="joints">Nodes that are one piece of metal.</param>
    /// <param name="reference">Node whose volts are zero here.</param>
    public NodalSolver(int nodes, IReadOnlyList<(int A, int B)> parts, IEnumerable<(int A, int B)> joints, int reference)
    {
        row = Joined(nodes, joints, reference, out rows);
        ends = [.. parts.Select(p => (row[p.A], row[p.B]))];
        graph = new(rows, ends);
        matrix = new SparseNetwork(rows, ends);
    }

    /// <summary>The equations' row of a node: nodes of one row are joined.</summary>
    public int RowOf(int node) => row[node];

    /// <summary>Solves for the laws of the parts; <paramref name="start"/> is a solution nearby, <paramref name="shorted"/> a node joined by a fault to <paramref name="shortV"/> volts over the reference.</summary>
    /// <param name="rough">True where a meter's digits are enough: no correction of the last ones.</param>
    /// <param name="like">A live network that may well be this one.</param>
    public NodalSolution Solve(PartLaw[] laws, double[]? start = null, int shorted = -1, double shortSiemens = 0, double shortV = 0, bool rough = false, LiveNetwork? like = null)
    {
        var tied = shorted >= 0 ? row[shorted] : -1;
        var live = like is not null && like.Holds(this, laws, tied) ? like : LiveOf(laws, tied);
        var work = idle.TryTake(out var done) ? done.Cleared() : new(rows, ends.Length, matrix.NewFigures());
        foreach (var tie in live.Ties)
        {
            work.Extra[tie] = TieSiemens;
        }

        if (tied >= 0)
        {
            work.Extra[tied] += shortSiemens;
            work.Pushed[tied] += shortSiemens * shortV;
        }

        work.Sort(laws, live.Conducting.Branches);
        StartVolts(laws, live, work, start);
        SparseNetwork.Begin(work.Extra, work.Figures);
        matrix.Add(work.Siemens, work.Straight, work.Figures);
        work.KeepStraight();
        var (volts, step) = (work.Volts, work.Step);
        var (settled, rounds, before, holds) = (false, 0, double.PositiveInfinity, false);
        for (; rounds < MostRounds && !settled; rounds++)
        {
            var moved = Step(laws, live, work, renew: !holds);
            settled = moved < (rough ? RoughV : SettledV);
            // tangents that hold bring each step to far less than the one before: no knee lies between
            holds = moved <= NearV && moved <= before / 10;
            before = moved;
            var share = settled || holds ? 1 : Share(laws, work);
            for (var n = 1; n < rows; n++)
            {
                volts[n] += share * step[n];
            }
        }

        // one correction by what is left over at the nodes: rounding of the big solve goes away
        if (rough)
        {
            LeftOver(laws, work, refresh: false);
        }
        else
        {
            Step(laws, live, work, renew: false);
            for (var n = 1; n < rows; n++)
            {
                volts[n] += step[n];
            }
        }

        // electronics that lost their source count as level, so nothing draws them down from the volts that they begin with
        if (start is not null && IsUnbalanced(work))
        {
            idle.Add(work);
            return Solve(laws, null, shorted, shortSiemens, shortV, rough, live);
        }

        foreach (var (n, other) in live.Dead)
        {
            volts[n] = volts[other];
        }

        var told = Told(laws, live, volts, settled, rounds);
        idle.Add(work);
        return told;
    }

    private LiveNetwork LiveOf(PartLaw[] laws, int tiedRow)
    {
        PartRole[] roles = Array.ConvertAll(laws, l => l.Role);
        var reached = graph.Islands(roles, tiedRow, out var ties);
        var tied = new bool[rows];
        foreach (var tie in ties)
        {
            tied[tie] = true;
        }

        if (tiedRow >= 0)
        {
            tied[tiedRow] = true;
        }

        var dead = graph.DeadEnds(roles, tied, out var live);
        return new(this, roles, tiedRow, reached, ties, dead, matrix.Only(live));
    }

    /// <summary>One step of Newton's method and the most it moves a node; without new tangents where those of the last step still hold.</summary>
    private double Step(PartLaw[] laws, LiveNetwork live, NodalWork work, bool renew)
    {
        LeftOver(laws, work, renew);
        if (renew)
        {
            // what follows Ohm is the same at every step
            work.TakeStraight();
            matrix.Add(work.Siemens, work.Bent, work.Figures);
            SparseNetwork.Eliminate(live.Conducting, work.Figures);
        }

        SparseNetwork.Substitute(work.Left, live.Conducting, work.Figures, work.Step);
        var moved = 0.0;
        for (var n = 1; n < rows; n++)
        {
            moved = Math.Max(moved, Math.Abs(work.Step[n]));
        }

        return moved;
    }

    /// <summary>True where a node is left with a current that nothing takes.</summary>
    private bool IsUnbalanced(NodalWork work)
    {
        for (var n = 1; n < rows; n++)
        {
            if (Math.Abs(work.Left[n]) > UnbalancedA)
            {
                return true;
            }
        }

        return false;
    }

    private void StartVolts(PartLaw[] laws, LiveNetwork live, NodalWork work, double[]? start)
    {
        var (extra, pushed, volts) = (work.Extra, work.Pushed, work.Volts);
        for (var n = 0; start is not null && n < row.Length; n++)
        {
            volts[row[n]] = start[n];
        }

        if (start is null)
        {
            var injected = work.Left;
            foreach (var i in live.Conducting.Branches)
            {
                (var amperes, work.Siemens[i]) = laws[i].Start;
                injected[ends[i].A] -= amperes;
                injected[ends[i].B] += amperes;
            }

            SparseNetwork.Begin(extra, work.Figures);
            matrix.Add(work.Siemens, live.Conducting.Branches, work.Figures);
            SparseNetwork.Eliminate(live.Conducting, work.Figures);
            SparseNetwork.Substitute(injected, live.Conducting, work.Figures, volts);
        }

        // a row that hangs on its tie or its short alone has the volts of it
        for (var n = 1; n < rows; n++)
        {
            volts[n] = extra[n] == 0 ? volts[n] : pushed[n] / extra[n];
        }
    }

    /// <summary>Amperes that come into each row and do not leave it; renews the slopes where asked.</summary>
    private void LeftOver(PartLaw[] laws, NodalWork work, bool refresh)
    {
        var (volts, left) = (work.Volts, work.Left);
        for (var n = 0; n < rows; n++)
        {
            left[n] = work.Pushed[n] - (work.Extra[n] * volts[n]);
        }

        foreach (var i in work.Straight)
        {
            var (a, b) = ends[i];
            var amperes = (volts[a] - volts[b] - work.Emf[i]) * work.Siemens[i];
            left[a] -= amperes;
            left[b] += amperes;
        }

        foreach (var i in work.Bent)
        {
            var (amperes, slope) = laws[i].At(volts[ends[i].A] - volts[ends[i].B]);
            work.Siemens[i] = refresh ? slope : work.Siemens[i];
            left[ends[i].A] -= amperes;
            left[ends[i].B] += amperes;
        }
    }

    /// <summary>
    /// How much of a step to take. The solution is the lowest point of a convex valley (what the parts take in, summed up over their volts);
    /// a whole step that would climb its far side, over the knee of a diode or a regulator, is cut back to the bottom along its line.
    /// </summary>
    private double Share(PartLaw[] laws, NodalWork work)
    {
        const double Flat = 0.1;

        // what is left over at the nodes is how steeply the valley falls where we stand
        var first = 0.0;
        for (var n = 1; n < rows; n++)
        {
            first -= work.Left[n] * work.Step[n];
        }

        if (first >= 0)
        {
            return 1;
        }

        var straight = StraightClimb(work);
        if (Climb(laws, work, straight, 1) <= -Flat * first)
        {
            return 1;
        }

        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            var climb = Climb(laws, work, straight, middle);
            if (Math.Abs(climb) <= -Flat * first)
            {
                return middle;
            }

            (low, high) = climb > 0 ? (low, middle) : (middle, high);
        }

        return (low + high) / 2;
    }

    /// <summary>What parts that follow Ohm, ties and what is pushed in give to the climb: at the start of the step, and how much more at its end.</summary>
    private (double Start, double More) StraightClimb(NodalWork work)
    {
        var (volts, step) = (work.Volts, work.Step);
        var (start, more) = (0.0, 0.0);
        for (var n = 1; n < rows; n++)
        {
            start += ((work.Extra[n] * volts[n]) - work.Pushed[n]) * step[n];
            more += work.Extra[n] * step[n] * step[n];
        }

        foreach (var i in work.Straight)
        {
            var (a, b) = ends[i];
            var across = step[a] - step[b];
            start += (volts[a] - volts[b] - work.Emf[i]) * work.Siemens[i] * across;
            more += work.Siemens[i] * across * across;
        }

        return (start, more);
    }

    private double Climb(PartLaw[] laws, NodalWork work, (double Start, double More) straight, double share)
    {
        var (volts, step) = (work.Volts, work.Step);
        var sum = straight.Start + (share * straight.More);
        foreach (var i in work.Bent)
        {
            var across = step[ends[i].A] - step[ends[i].B];
            if (across != 0)
            {
                sum += laws[i].At(volts[ends[i].A] - volts[ends[i].B] + (share * across)).Amperes * across;
            }
        }

        return sum;
    }

    private NodalSolution Told(PartLaw[] laws, LiveNetwork live, double[] volts, bool settled, int rounds)
    {
        var all = new double[row.Length];
        var told = new bool[row.Length];
        for (var n = 0; n < row.Length; n++)
        {
            all[n] = double.IsFinite(volts[row[n]]) ? volts[row[n]] : 0;
            told[n] = live.Reached[row[n]];
        }

        var amperes = new double[ends.Length];
        for (var i = 0; i < ends.Length; i++)
        {
            if (laws[i].Kind != PartBehaviour.Open)
            {
                var a = laws[i].At(volts[ends[i].A] - volts[ends[i].B]).Amperes;
                amperes[i] = double.IsFinite(a) ? a : 0;
                settled &= double.IsFinite(a);
            }
        }

        return new(all, told, amperes, settled, rounds, live);
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
