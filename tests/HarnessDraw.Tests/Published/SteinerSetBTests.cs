using System.Globalization;
using HarnessDraw.Planning.Routing;

namespace HarnessDraw.Tests.Published;

/// <summary>OR-Library / SteinLib set B (Beasley, Networks 14 (1984) and 19 (1989)): 18 sparse random graphs with proven optima.</summary>
public sealed class SteinerSetBTests(ITestOutputHelper output)
{
    [Fact]
    public void Trees_are_within_two_per_cent_of_the_optimum_and_mostly_equal_to_it()
    {
        var folder = ReferenceFolder.Find("steiner");
        var optima = File.ReadAllLines(System.IO.Path.Combine(folder, "optima.csv")).Where(l => l.StartsWith('b'))
            .Select(l => l.Split(',')).ToDictionary(c => c[0], c => double.Parse(c[4], CultureInfo.InvariantCulture), StringComparer.Ordinal);
        var equal = 0;
        for (var i = 1; i <= 18; i++)
        {
            var id = $"b{i:00}";
            var (graph, terminals) = Read(System.IO.Path.Combine(folder, $"{id}.stp"));
            var optimum = optima[$"{id}.stp"];
            var tree = new SteinerTreeFinder(graph, terminals).Find(12);
            AssertIsTree(graph, tree, terminals);
            var found = graph.WeightOf(tree);
            output.WriteLine($"{id} found {found} optimum {optimum} gap {(found - optimum) / optimum:P2}");
            Assert.InRange(found, optimum, optimum * 1.02);
            equal += found == optimum ? 1 : 0;
        }

        output.WriteLine($"{equal} of 18 equal to the optimum");
        Assert.True(equal >= 12, $"only {equal} of 18 equal the optimum");
    }

    private static void AssertIsTree(WeightedGraph graph, IReadOnlyList<int> tree, int[] terminals)
    {
        var vertices = tree.SelectMany(e => new[] { graph.Edges[e].A, graph.Edges[e].B }).ToHashSet();
        Assert.Equal(vertices.Count - 1, tree.Count);
        Assert.All(terminals, t => Assert.Contains(t, vertices));
        var alone = new WeightedGraph(graph.Vertices, tree.Select(e => graph.Edges[e]));
        Assert.All(vertices, v => Assert.False(double.IsInfinity(alone.ShortestFrom([terminals[0]]).Distance[v])));
    }

    private static (WeightedGraph Graph, int[] Terminals) Read(string file)
    {
        var rows = File.ReadAllLines(file).Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Where(r => r.Length > 1).ToArray();
        double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
        var nodes = (int)Number(rows.First(r => r[0] == "Nodes")[1]);
        var edges = rows.Where(r => r[0] == "E").Select(r => ((int)Number(r[1]) - 1, (int)Number(r[2]) - 1, Number(r[3])));
        return (new(nodes, edges), [.. rows.Where(r => r[0] == "T").Select(r => (int)Number(r[1]) - 1)]);
    }
}
