using System.Buffers;

namespace HarnessDraw.Electrical;

/// <summary>What a part is to the shape of a network, whatever its figures.</summary>
internal enum PartRole : byte
{
    Open,
    Takes,

    /// <summary>A source: the end of a chain at which it sits is live.</summary>
    Gives,
}

/// <summary>Rows of the nodal equations and the parts between them: what hangs together, and which chains lead nowhere.</summary>
internal sealed class RowGraph
{
    private readonly int rows;
    private readonly (int A, int B)[] ends;
    private readonly (int Part, int Other)[][] touching;

    /// <param name="rows">How many rows there are; row 0 is the reference.</param>
    /// <param name="ends">Rows of each part.</param>
    public RowGraph(int rows, (int A, int B)[] ends)
    {
        this.rows = rows;
        this.ends = ends;
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

    /// <summary>Rows that conduct to the reference (or to <paramref name="tied"/>, where not negative), and one row of each island that does not.</summary>
    public bool[] Islands(PartRole[] roles, int tied, out List<int> ties)
    {
        ties = [];
        var seen = new bool[rows];
        var waiting = ArrayPool<int>.Shared.Rent(rows);
        Spread(roles, 0, seen, waiting);
        if (tied >= 0 && !seen[tied])
        {
            Spread(roles, tied, seen, waiting);
        }

        var reached = (bool[])seen.Clone();
        for (var n = 1; n < rows; n++)
        {
            if (!seen[n])
            {
                ties.Add(n);
                Spread(roles, n, seen, waiting);
            }
        }

        ArrayPool<int>.Shared.Return(waiting);
        return reached;
    }

    /// <summary>
    /// Rows at the end of a chain that leads nowhere, each with the row it hangs on, the nearest to the rest first: no current flows there, so both have one voltage.
    /// The other conducting parts are live, in their order. A source at the end of a chain keeps it live, and so does a row that is <paramref name="tied"/>.
    /// </summary>
    public (int Row, int Other)[] DeadEnds(PartRole[] roles, bool[]? tied, out int[] live)
    {
        // asked for every state of every build: working figures are borrowed
        var degree = ArrayPool<int>.Shared.Rent(rows);
        var conducts = ArrayPool<bool>.Shared.Rent(ends.Length);
        var dead = ArrayPool<(int Row, int Other)>.Shared.Rent(rows);
        Array.Clear(degree, 0, rows);
        Array.Clear(conducts, 0, ends.Length);
        var count = 0;
        for (var i = 0; i < ends.Length; i++)
        {
            if (roles[i] != PartRole.Open && ends[i].A != ends[i].B)
            {
                conducts[i] = true;
                count++;
                degree[ends[i].A]++;
                degree[ends[i].B]++;
            }
        }

        var deadCount = 0;
        for (var n = 1; n < rows; n++)
        {
            for (var end = n; end > 0 && degree[end] == 1 && tied?[end] != true;)
            {
                var (part, other) = OnlyPart(end, conducts);
                if (roles[part] == PartRole.Gives)
                {
                    break;
                }

                conducts[part] = false;
                count--;
                degree[end] = 0;
                degree[other]--;
                dead[deadCount++] = (end, other);
                end = other;
            }
        }

        Array.Reverse(dead, 0, deadCount);
        live = new int[count];
        for (int i = 0, k = 0; k < count; i++)
        {
            if (conducts[i])
            {
                live[k++] = i;
            }
        }

        var found = dead[..deadCount];
        ArrayPool<int>.Shared.Return(degree);
        ArrayPool<bool>.Shared.Return(conducts);
        ArrayPool<(int Row, int Other)>.Shared.Return(dead);
        return found;
    }

    /// <summary>Parts through which a current can flow: on no chain that leads nowhere, and in no island without a source.</summary>
    public ReadOnlySpan<int> Carrying(PartRole[] roles)
    {
        var fed = ArrayPool<bool>.Shared.Rent(rows);
        var waiting = ArrayPool<int>.Shared.Rent(rows);
        Array.Clear(fed, 0, rows);
        for (var i = 0; i < ends.Length; i++)
        {
            if (roles[i] == PartRole.Gives && !fed[ends[i].A])
            {
                Spread(roles, ends[i].A, fed, waiting);
            }
        }

        DeadEnds(roles, null, out var live);
        var count = 0;
        foreach (var i in live)
        {
            if (fed[ends[i].A])
            {
                live[count++] = i;
            }
        }

        ArrayPool<bool>.Shared.Return(fed);
        ArrayPool<int>.Shared.Return(waiting);
        return live.AsSpan(0, count);
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

    private void Spread(PartRole[] roles, int from, bool[] seen, int[] waiting)
    {
        var count = 0;
        waiting[count++] = from;
        seen[from] = true;
        while (count > 0)
        {
            foreach (var (part, other) in touching[waiting[--count]])
            {
                if (!seen[other] && roles[part] != PartRole.Open)
                {
                    seen[other] = true;
                    waiting[count++] = other;
                }
            }
        }
    }
}
