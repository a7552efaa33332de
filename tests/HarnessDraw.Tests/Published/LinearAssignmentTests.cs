using System.Globalization;
using Google.OrTools.Graph;
using HarnessDraw.Planning.Cavities;

namespace HarnessDraw.Tests.Published;

/// <summary>Our assignment against the OR-Library optimum, tiny matrices by full enumeration, and OR-Tools.</summary>
public sealed class LinearAssignmentTests
{
    [Fact]
    public void The_assign100_instance_of_the_OR_Library_costs_its_optimum_of_305()
    {
        var numbers = File.ReadAllText(ReferenceFolder.Find("assignment/assign100.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .Select(t => double.Parse(t, CultureInfo.InvariantCulture)).ToArray();
        var n = (int)numbers[0];
        var cost = Enumerable.Range(0, n).Select(r => numbers[(1 + (r * n))..(1 + ((r + 1) * n))]).ToArray();
        Assert.Equal(305, CostOf(cost, LinearAssignment.Solve(cost)));
    }

    [Fact]
    public void Small_known_matrices_cost_their_optimum()
    {
        foreach (var line in File.ReadAllLines(ReferenceFolder.Find("assignment/small_known.csv")).Where(l => l.StartsWith('s')))
        {
            var cells = line.Split(',');
            var cost = cells[2].Split(';').Select(r => r.Split(' ').Select(t => double.Parse(t, CultureInfo.InvariantCulture)).ToArray()).ToArray();
            Assert.Equal(double.Parse(cells[3], CultureInfo.InvariantCulture), CostOf(cost, LinearAssignment.Solve(cost)));
        }
    }

    [Theory]
    [InlineData(5, 5)]
    [InlineData(7, 12)]
    [InlineData(20, 31)]
    public void It_costs_what_the_assignment_solver_of_OR_Tools_finds(int rows, int columns)
    {
        for (var round = 1; round <= 10; round++)
        {
            // a small congruential row of numbers: the same on every run
            var next = (uint)((rows * 7919) + (columns * 104729) + round);
            var cost = Enumerable.Range(0, rows).Select(_ => Enumerable.Range(0, columns).Select(_ => (double)((next = (next * 1664525) + 1013904223) >> 20)).ToArray()).ToArray();
            var peer = new LinearSumAssignment();
            for (var r = 0; r < columns; r++)
            {
                for (var c = 0; c < columns; c++)
                {
                    peer.AddArcWithCost(r, c, r < rows ? (long)cost[r][c] : 0);
                }
            }

            Assert.Equal(LinearSumAssignment.Status.OPTIMAL, peer.Solve());
            Assert.Equal(peer.OptimalCost(), CostOf(cost, LinearAssignment.Solve(cost)));
        }
    }

    private static double CostOf(double[][] cost, int[] columns)
    {
        Assert.Equal(columns.Length, columns.Distinct().Count());
        return columns.Select((c, r) => cost[r][c]).Sum();
    }
}
