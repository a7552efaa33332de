namespace HarnessDraw.Planning.Routing;

/// <summary>An undirected graph with numbered vertices and weighted edges.</summary>
public sealed class WeightedGraph
{
    private readonly List<int>[] touching;
    private int[]? byWeight;

    public WeightedGraph(int vertices, IEnumerable<(int A, int B, double Weight)> edges)
    {
        Vertices = vertices;
        Edges = [.. edges];
        touching = new List<int>[vertices];
        for (var v = 0; v < vertices; v++)
        {
            touching[v] = [];
        }

        for (var e = 0; e < Edges.Count; e++)
        {
            touching[Edges[e].A].Add(e);
            if (Edges[e].A != Edges[e].B)
            {
                touching[Edges[e].B].Add(e);
            }
        }
    }

    public int Vertices { get; }
    public IReadOnlyList<(int A, int B, double Weight)> Edges { get; }

    /// <summary>Edges in rising weight, ties by number.</summary>
    public int[] ByWeight => byWeight ??= [.. Enumerable.Range(0, Edges.Count).OrderBy(e => Edges[e].Weight).ThenBy(e => e)];

    public IReadOnlyList<int> Touching(int vertex) => touching[vertex];

    public int Other(int edge, int vertex) => Edges[edge].A == vertex ? Edges[edge].B : Edges[edge].A;

    public double WeightOf(IEnumerable<int> edges) => edges.Sum(e => Edges[e].Weight);

    /// <summary>Distances from the nearest of <paramref name="from"/> and the edge each vertex is reached by (-1 at a start or when not reached).</summary>
    public (double[] Distance, int[] By) ShortestFrom(IEnumerable<int> from)
    {
        ArgumentNullException.ThrowIfNull(from);
        var distance = new double[Vertices];
        var by = new int[Vertices];
        Array.Fill(distance, double.PositiveInfinity);
        Array.Fill(by, -1);
        var waiting = new PriorityQueue<int, (double, int)>();
        foreach (var v in from)
        {
            distance[v] = 0;
            waiting.Enqueue(v, (0, v));
        }

        while (waiting.TryDequeue(out var v, out var rank))
        {
            if (rank.Item1 > distance[v])
            {
                continue;
            }

            foreach (var e in touching[v])
            {
                var other = Other(e, v);
                var through = distance[v] + Edges[e].Weight;
                if (through < distance[other])
                {
                    distance[other] = through;
                    by[other] = e;
                    waiting.Enqueue(other, (through, other));
                }
            }
        }

        return (distance, by);
    }
}
