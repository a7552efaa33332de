using System.Globalization;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Tests.Fabrication;

namespace HarnessDraw.Tests.Published;

/// <summary>Cutting against the open instances of Falkenauer (u120, t120) and Scholl, Klein and Juergens (N1C1W1), and the paper-roll example.</summary>
public sealed class CuttingStockTests(ITestOutputHelper output)
{
    [Fact]
    public void Every_small_open_instance_is_cut_optimally_with_proof()
    {
        var optima = Lines("optima.csv").Where(l => l.Contains(".txt,", StringComparison.Ordinal)).Select(l => l.Split(',')).ToDictionary(c => c[1], c => int.Parse(c[4], CultureInfo.InvariantCulture));
        var open = new List<string>();
        foreach (var (name, task) in Instances())
        {
            var packing = BarPacker.Pack(task);
            output.WriteLine($"{name}: {packing.Bars}, at least {packing.LowerBound} ({packing.ProvenBy})");
            BarPackerTests.AssertWhole(packing, task.Pieces.SelectMany(p => Enumerable.Repeat(p.Length, p.Count)));
            Assert.InRange(packing.LowerBound, 1, optima[name]);
            if (packing.Bars != optima[name] || !packing.IsProvenLeast)
            {
                open.Add(name);
            }
        }

        Assert.Empty(open);
        Assert.Equal(45, optima.Count);
    }

    [Fact]
    public void The_paper_rolls_take_73_rolls()
    {
        var pieces = Lines("paper_rolls.csv").Where(l => char.IsAsciiDigit(l[0])).Select(l => l.Split(',')).Select(c => new PieceClass(long.Parse(c[0], CultureInfo.InvariantCulture), int.Parse(c[1], CultureInfo.InvariantCulture)));
        var packing = BarPacker.Pack(new PackingTask(5600, [.. pieces.OrderByDescending(p => p.Length)]));
        Assert.Equal((73, 73), (packing.Bars, packing.LowerBound));
    }

    private static string[] Lines(string name) => [.. File.ReadLines(ReferenceFolder.Find("cutting_stock/" + name)).Where(l => l.Length > 0)];

    private static IEnumerable<(string Name, PackingTask Task)> Instances()
    {
        var words = File.ReadAllText(ReferenceFolder.Find("cutting_stock/binpack1_u120.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        var at = 1;
        for (var n = int.Parse(words[0], CultureInfo.InvariantCulture); n > 0; n--)
        {
            var (name, capacity, count) = (words[at], long.Parse(words[at + 1], CultureInfo.InvariantCulture), int.Parse(words[at + 2], CultureInfo.InvariantCulture));
            at += 4 + count;
            yield return (name, PackingTask.Of(capacity, words[(at - count)..at].Select(w => long.Parse(w, CultureInfo.InvariantCulture))));
        }

        foreach (var file in Directory.GetFiles(ReferenceFolder.Find("cutting_stock"), "*.txt").Where(f => !f.Contains("binpack", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            var numbers = File.ReadAllText(file).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(w => long.Parse(w, CultureInfo.InvariantCulture)).ToArray();
            yield return (Path.GetFileNameWithoutExtension(file).Replace("falkenauer_", "", StringComparison.Ordinal), PackingTask.Of(numbers[1], numbers[2..]));
        }
    }
}
