namespace HarnessDraw.Planning.Routing;

/// <summary>Sets of numbers that can be joined and asked for their common root.</summary>
internal sealed class DisjointSets
{
    private readonly int[] parent;

    public DisjointSets(int count) => parent = [.. Enumerable.Range(0, count)];

    public int Root(int a)
    {
        while (parent[a] != a)
        {
            parent[a] = parent[parent[a]];
            a = parent[a];
        }

        return a;
    }

    /// <summary>False when they were joined already.</summary>
    public bool Join(int a, int b)
    {
        var (x, y) = (Root(a), Root(b));
        if (x == y)
        {
            return false;
        }

        parent[Math.Max(x, y)] = Math.Min(x, y);
        return true;
    }
}
