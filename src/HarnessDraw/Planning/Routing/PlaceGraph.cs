using HarnessDraw.Model;

namespace HarnessDraw.Planning.Routing;

/// <summary>
/// The places and paths of a layout as a graph. Where a needed place has no path, a straight run to the nearest joined place is added and
/// marked as assumed. Paths hotter than the usual wire bears, and still more those through a forbidden zone, weigh so much that they are taken only when nothing else is left.
/// </summary>
internal sealed class PlaceGraph
{
    private const double HotPathFactor = 50;
    private const double ForbiddenFactor = 1000;
    private readonly Dictionary<string, int> numberOf = new(StringComparer.Ordinal);

    public PlaceGraph(HarnessIndex index, PlanningOptions options, IReadOnlyCollection<string> needed)
    {
        Places = [.. index.Harness.Layout.Places];
        for (var i = 0; i < Places.Length; i++)
        {
            numberOf.TryAdd(Places[i].Id, i);
        }

        foreach (var path in index.Harness.Layout.Paths)
        {
            if (numberOf.TryGetValue(path.From, out var a) && numberOf.TryGetValue(path.To, out var b) && a != b)
            {
                Runs.Add(new(a, b, path, path.LengthMm ?? StraightMm(a, b), FactorOf(index, options, path, Places[a], Places[b])));
            }
        }

        AddMissing(index, needed);
        Graph = new(Places.Length, Runs.Select(r => (r.A, r.B, r.LengthMm * r.Factor)));
        RunC = [.. Runs.Select(r => index.AmbientC(r.Path?.Zone, options))];
        PlaceC = [.. Places.Select(p => index.AmbientC(p.Zone, options))];
    }

    public Place[] Places { get; }
    public List<Run> Runs { get; } = [];
    public WeightedGraph Graph { get; }

    /// <summary>Ambient of every run, degC.</summary>
    public double[] RunC { get; }

    /// <summary>Ambient of every place, degC.</summary>
    public double[] PlaceC { get; }

    public int? Find(string place) => numberOf.TryGetValue(place, out var number) ? number : null;

    public double StraightMm(int a, int b)
    {
        var (p, q) = (Places[a], Places[b]);
        return Math.Sqrt(((p.Xmm - q.Xmm) * (p.Xmm - q.Xmm)) + ((p.Ymm - q.Ymm) * (p.Ymm - q.Ymm)) + ((p.Zmm - q.Zmm) * (p.Zmm - q.Zmm)));
    }

    private static double FactorOf(HarnessIndex index, PlanningOptions options, Model.Path path, Place from, Place to) =>
        index.Harness.Layout.KeepClear.Any(c => c.Forbidden && c.DistanceMm(from, to) < c.ByMm) ? ForbiddenFactor : IsHot(index, options, path) ? HotPathFactor : 1;

    private static bool IsHot(HarnessIndex index, PlanningOptions options, Model.Path path) =>
        index.AmbientC(path.Zone, options) >= index.UsualWire.MaxC;

    private void AddMissing(HarnessIndex index, IReadOnlyCollection<string> needed)
    {
        var joined = new DisjointSets(Places.Length);
        foreach (var run in Runs)
        {
            joined.Join(run.A, run.B);
        }

        var root = Find(index.Harness.Layout.Root) ?? 0;
        foreach (var place in needed.Order(StringComparer.Ordinal))
        {
            if (Find(place) is not { } at || joined.Root(at) == joined.Root(root))
            {
                continue;
            }

            var (a, b) = (from x in Enumerable.Range(0, Places.Length)
                          where joined.Root(x) == joined.Root(at)
                          from y in Enumerable.Range(0, Places.Length)
                          where joined.Root(y) == joined.Root(root)
                          orderby StraightMm(x, y), x, y
                          select (x, y)).First();
            joined.Join(a, b);
            Runs.Add(new(a, b, null, StraightMm(a, b), 1));
        }
    }

    /// <summary>A permitted run between two numbered places; no path means it is assumed.</summary>
    internal sealed record Run(int A, int B, Model.Path? Path, double LengthMm, double Factor);
}
