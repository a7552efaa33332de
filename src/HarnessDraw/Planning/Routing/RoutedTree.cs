using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Routing;

/// <summary>A point of the tree: a distance along a numbered segment from its end nearer the root; segment -1 is the root place itself.</summary>
internal readonly record struct TreePoint(int Segment, double AtMm);

/// <summary>The chosen tree with the questions that splices, lengths and bundles ask of it.</summary>
internal sealed class RoutedTree
{
    private readonly PlaceGraph places;
    private readonly int[] above;
    private readonly double[] distance;
    private readonly int[] depth;
    private readonly int[] degree;
    private double[][] between = [];
    private bool[][] hangsBelow = [];

    public RoutedTree(PlaceGraph places, IReadOnlyList<int> tree, int root)
    {
        this.places = places;
        Root = root;
        above = new int[places.Places.Length];
        distance = new double[places.Places.Length];
        depth = new int[places.Places.Length];
        degree = new int[places.Places.Length];
        Array.Fill(above, -1);
        var left = tree.ToHashSet();
        var children = new Dictionary<int, List<int>>();
        void Walk(int v)
        {
            foreach (var e in places.Graph.Touching(v).Where(left.Contains).OrderBy(e => places.Graph.Other(e, v)).ToArray())
            {
                left.Remove(e);
                var child = places.Graph.Other(e, v);
                above[child] = Segments.Count;
                distance[child] = distance[v] + places.Runs[e].LengthMm;
                depth[child] = depth[v] + 1;
                Segments.Add(new(Segments.Count, v, child, places.Runs[e]));
                degree[v]++;
                degree[child]++;
                Walk(child);
            }
        }

        Walk(root);
        InTree = [.. Enumerable.Range(0, above.Length).Where(v => v == root || above[v] >= 0)];
        Measure();
    }

    public int Root { get; }
    public List<TreeSegment> Segments { get; } = [];
    public ImmutableHashSet<int> InTree { get; }

    public string PlaceId(int v) => places.Places[v].Id;

    public Place PlaceAt(int v) => places.Places[v];

    public TreePoint PointOf(int place) => place == Root || above[place] < 0 ? new(-1, 0) : new(above[place], Segments[above[place]].LengthMm);

    public double StationMm(TreePoint p) => p.Segment < 0 ? 0 : distance[Segments[p.Segment].From] + p.AtMm;

    public int Degree(int place) => degree[place];

    /// <summary>Segment numbers from one point to another, in order; a point inside a segment uses it in part.</summary>
    public ImmutableArray<int> Way(TreePoint from, TreePoint to)
    {
        if (from.Segment == to.Segment)
        {
            return from.AtMm == to.AtMm || from.Segment < 0 ? [] : [from.Segment];
        }

        var up = new List<int>();
        var down = new List<int>();
        var (a, b) = (from.Segment, to.Segment);
        while (a != b)
        {
            if (DepthOf(a) >= DepthOf(b))
            {
                up.Add(a);
                a = above[Segments[a].From];
            }
            else
            {
                down.Add(b);
                b = above[Segments[b].From];
            }
        }

        // the way may turn inside the last common segment only when one of the points lies in it
        if (a >= 0 && (a == from.Segment || a == to.Segment))
        {
            var point = a == from.Segment ? from : to;
            if (point.AtMm < Segments[a].LengthMm)
            {
                (a == from.Segment ? up : down).Add(a);
            }
        }

        down.Reverse();
        return [.. up, .. down];
    }

    public double LengthMm(TreePoint a, TreePoint b)
    {
        var length = 0.0;
        foreach (var s in Way(a, b))
        {
            length += Part(s, a, b);
        }

        return length;
    }

    /// <summary>How much of a segment the way between two points uses, mm.</summary>
    public double Part(int segment, TreePoint a, TreePoint b)
    {
        var whole = Segments[segment].LengthMm;
        if (a.Segment == segment && b.Segment == segment)
        {
            return Math.Abs(a.AtMm - b.AtMm);
        }

        if (a.Segment != segment && b.Segment != segment)
        {
            return whole;
        }

        var (inside, other) = a.Segment == segment ? (a, b) : (b, a);
        return IsBelow(segment, other) ? whole - inside.AtMm : inside.AtMm;
    }

    /// <summary>True when a point hangs below the far end of a segment.</summary>
    public bool IsBelow(int segment, TreePoint p)
    {
        for (var s = p.Segment; s >= 0; s = above[Segments[s].From])
        {
            if (s == segment)
            {
                return p.Segment != segment;
            }
        }

        return false;
    }

    /// <summary>Distance of a point from a place along the tree, mm.</summary>
    public double FromPlaceMm(TreePoint p, int place)
    {
        if (p.Segment < 0)
        {
            return Between(Root, place);
        }

        var s = Segments[p.Segment];
        return hangsBelow[p.Segment][place] ? s.LengthMm - p.AtMm + Between(s.To, place) : p.AtMm + Between(s.From, place);
    }

    /// <summary>Distance between two places along the tree, mm.</summary>
    public double Between(int a, int b) => between[a][b];

    private void Measure()
    {
        between = new double[places.Places.Length][];
        hangsBelow = [.. Segments.Select(_ => new bool[places.Places.Length])];
        foreach (var v in InTree)
        {
            for (var s = above[v]; s >= 0; s = above[Segments[s].From])
            {
                hangsBelow[s][v] = true;
            }
        }

        foreach (var v in InTree)
        {
            between[v] = new double[places.Places.Length];
            for (var s = above[v]; s >= 0; s = above[Segments[s].From])
            {
                between[v][Segments[s].From] = distance[v] - distance[Segments[s].From];
            }

            // segments come parents first, so each far end follows from its near end unless it lies on the way up
            foreach (var s in Segments)
            {
                if (!hangsBelow[s.Number][v])
                {
                    between[v][s.To] = between[v][s.From] + s.LengthMm;
                }
            }
        }
    }

    private int DepthOf(int segment) => segment < 0 ? 0 : depth[Segments[segment].To];
}

/// <summary>A numbered stretch of the tree, from the end nearer the root. Its length is a guess where the path's is unknown.</summary>
internal sealed record TreeSegment(int Number, int From, int To, PlaceGraph.Run Run)
{
    public string Id { get; } = $"S{Number + 1}";
    public double LengthMm => Run.LengthMm;
    public bool IsUnknown => Run.Path is { LengthMm: null };
    public bool IsEstimated => Run.Path is null or { Known: LengthKnown.Estimated };
    public string? Zone => Run.Path?.Zone;
    public double MovesMm => Run.Path?.MovesMm ?? 0;
}
