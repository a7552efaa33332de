using System.Globalization;
using HarnessDraw.Planning.Bundles;

namespace HarnessDraw.Tests.Published;

/// <summary>Equal circles against the best known packings (E. Specht's list; Graham et al., Discrete Math. 181 (1998)); unequal ones against geometry.</summary>
public sealed class CirclePackingTests(ITestOutputHelper output)
{
    /// <summary>Ratios of container to circle for 2 to 19 equal circles, as listed.</summary>
    private static readonly double[] Ratios =
    [
        2, 2.154700538379, 2.414213562373, 2.701301616704, 3, 3, 3.304764870962, 3.613125929753, 3.813025631398, 3.923804400163, 4.029601930116, 4.236067977500, 4.328428554861,
        4.521356964706, 4.615425594873, 4.792033748311, 4.863703305156, 4.863703305156,
    ];

    [Fact]
    public void Equal_wires_are_within_two_per_cent_of_the_best_known_packing_and_never_below_it()
    {
        for (var n = 2; n <= 19; n++)
        {
            var ratio = CirclePacking.Diameter([.. Enumerable.Repeat(1.0, n)], 1.2);
            output.WriteLine($"{n}: {ratio:0.0000} best known {Ratios[n - 2]:0.0000} over by {(ratio / Ratios[n - 2]) - 1:P2}");
        }

        for (var n = 2; n <= 19; n++)
        {
            Assert.InRange(CirclePacking.Diameter([.. Enumerable.Repeat(1.0, n)], 1.2), Ratios[n - 2] - 1e-8, 1.02 * Ratios[n - 2]);
        }
    }

    [Fact]
    public void The_listed_ratios_are_those_of_the_reference_table()
    {
        var rows = File.ReadAllLines(ReferenceFolder.Find("circle_packing.csv")).Where(l => l.Length > 0 && char.IsDigit(l[0])).Select(l => l.Split(',')).ToArray();
        for (var n = 2; n <= 19; n++)
        {
            Assert.Equal(double.Parse(rows.First(r => r[0] == n.ToString(CultureInfo.InvariantCulture))[1], CultureInfo.InvariantCulture), Ratios[n - 2], 1e-8);
        }
    }

    [Theory]
    [InlineData(new[] { 6.0, 4.3 }, 10.3)]
    [InlineData(new[] { 2.0, 4.0, 6.0 }, 10.0)]
    [InlineData(new[] { 6.0, 6.0, 4.0 }, 12.0)]
    [InlineData(new[] { 6.0, 5.0, 4.4 }, 11.212)]
    public void Two_and_three_wires_follow_elementary_geometry_and_Descartes(double[] diameters, double bundle) =>
        Assert.Equal(bundle, CirclePacking.Diameter(diameters, 1.2), 0.001);

    [Theory]
    [InlineData(7, 2.4, 7.2)]
    [InlineData(12, 1.9, 7.656)]
    [InlineData(19, 2.4, 11.673)]
    public void Worked_bundles_come_out_within_two_per_cent(int wires, double outsideMm, double bundleMm) =>
        Assert.InRange(CirclePacking.Diameter([.. Enumerable.Repeat(outsideMm, wires)], 1.2), bundleMm - 0.001, 1.02 * bundleMm);
}
