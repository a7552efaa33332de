using System.Collections.Concurrent;

namespace HarnessDraw.Electrical;

/// <summary>Volts of all nodes and amperes of all parts. Not settled: Newton's method did not come to rest, the figures are the last ones.</summary>
internal sealed record NodalSolution(double[] Volts, bool[] Reached, double[] Amperes, bool Settled, int Rounds, LiveNetwork Live);

/// <summary>
/// The operating point of a network of two-ended parts: nodal equations with every part replaced by its tangent, repeated until the tangents
/// hold (Newton's method). Nodes joined without resistance are one unknown. A part of the network that hangs on nothing gets one tie to the
/// reference, through which nothing flows, so that what happens inside it is still right. Rows that only parts of constant resistance touch are eliminated
/// once; steps are taken in the others.
/// </summary>
internal sealed partial class NodalSolver
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
    private readonly bool[] late;
    private readonly int rows;

    // working figures of solutions that are done
    private readonly ConcurrentBag<NodalWork> idle = [];

    /// <param name="nodes">How many nodes there are.</param>
    /// <param name="parts">Nodes of each part.</param>
    /// <param name="joints">Nodes that are one piece of metal.</param>
    /// <param name="reference">Node whose volts are zero here.</param>
    /// <param name="mayBend">By part: false where its resistance hardly ever is anything but constant; null: all may bend.</param>
    public NodalSolver(int nodes, IReadOnlyList<(int A, int B)> parts, IEnumerable<(int A, int B)> joints, int reference, bool[]? mayBend = null)
    {
        row = Joined(nodes, joints, reference, out rows);
        ends = [.. parts.Select(p => (row[p.A], row[p.B]))];
        graph = new(rows, ends);
        late = new bool[rows];
        for (var i = 0; i < ends.Length; i++)
        {
            late[ends[i].A] |= mayBend?[i] != false;
            late[ends[i].B] |= mayBend?[i] != false;
        }

        matrix = new SparseNetwork(rows, ends, late);
    }

    /// <summary>The equations' row of a node: nodes of one row are joined.</summary>
    public int RowOf(int node) => row[node];

    /// <summary>Solves for the laws of the parts; <paramref name="start"/> is a solution nearby, <paramref name="shorted"/> a node joined by a fault to <paramref name="shortV"/> volts over the reference.</summary>
    /// <param name="rough">True where a meter's digits are enough: no correction of the last ones.</param>
    /// <param name="like">A live network that may well be this one.</param>
    /// <param name="done">A solution of this network whose figures are no longer needed, the start among them: they are overwritten.</param>
    public NodalSolution Solve(PartLaw[] laws, double[]? start = null, int shorted = -1, double shortSiemens = 0, double shortV = 0, bool rough = false, LiveNetwork? like = null, NodalSolution? done = null)
    {
        var tied = shorted >= 0 ? row[shorted] : -1;
        var live = like is not null && like.Holds(this, laws, tied) ? like : LiveOf(laws, tied);
        var work = idle.TryTake(out var free) ? free.Cleared() : new(rows, ends.Length, matrix.NewFigures());
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
        EliminateStraight(live, work);
        var (volts, step) = (work.Volts, work.Step);
        var bending = work.Bending(live.Conducting);
        var (settled, rounds, before, holds) = (false, 0, double.PositiveInfinity, false);
        for (; rounds < MostRounds && !settled; rounds++)
        {
            var moved = Step(laws, live, work, renew: !holds);
            settled = moved < (rough ? RoughV : SettledV);
            // tangents that hold bring each step to far less than the one before: no knee lies between
            holds = moved <= NearV && moved <= before / 10;
            before = moved;
            var share = settled || holds ? 1 : Share(laws, live, work);
            foreach (var n in bending)
            {
                volts[n] += share * step[n];
            }
        }

        SparseNetwork.Backward(live.Conducting, work.Figures, work.Driven, volts, ..work.Early);

        // one correction by what is left over at the nodes, with the tangents there: rounding of the big solve goes away, at the knee of a battery too
        if (rough)
        {
            LeftOver(laws, live, work, refresh: false);
        }
        else
        {
            LeftOverEverywhere(laws, work);
            Renew(live.Conducting, work);
            SparseNetwork.Substitute(work.Left, live.Conducting, work.Figures, step);
            for (var n = 1; n < rows; n++)
            {
                volts[n] += step[n];
            }
        }

        // electronics that lost their source count as level, so nothing draws them down from the volts that they begin with
        if (start is not null && IsUnbalanced(work, rough ? bending : live.Conducting.Node))
        {
            idle.Add(work);
            return Solve(laws, null, shorted, shortSiemens, shortV, rough, live, done);
        }

        foreach (var (n, other) in live.Dead)
        {
            volts[n] = volts[other];
        }

        var told = Told(laws, live, volts, settled, rounds, done);
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
            SparseNetwork.Eliminate(live.Conducting, work.Figures, live.Conducting.All);
            SparseNetwork.Substitute(injected, live.Conducting, work.Figures, volts);
        }

        // a row that hangs on its tie or its short alone has the volts of it
        for (var n = 1; n < rows; n++)
        {
            volts[n] = extra[n] == 0 ? volts[n] : pushed[n] / extra[n];
        }
    }

    private NodalSolution Told(PartLaw[] laws, LiveNetwork live, double[] volts, bool settled, int rounds, NodalSolution? done)
    {
        var all = done?.Volts ?? new double[row.Length];
        var told = done?.Reached ?? new bool[row.Length];
        for (var n = 0; n < row.Length; n++)
        {
            all[n] = double.IsFinite(volts[row[n]]) ? volts[row[n]] : 0;
            told[n] = live.Reached[row[n]];
        }

        var amperes = done?.Amperes ?? new double[ends.Length];
        for (var i = 0; i < ends.Length; i++)
        {
            var a = laws[i].Kind == PartBehaviour.Open ? 0 : laws[i].At(volts[ends[i].A] - volts[ends[i].B]).Amperes;
            amperes[i] = double.IsFinite(a) ? a : 0;
            settled &= double.IsFinite(a);
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
