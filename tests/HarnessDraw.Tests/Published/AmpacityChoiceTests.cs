using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Planning.Sizing;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Edits;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Published;

/// <summary>Published currents and bundle factors that a harness may ask for instead of the catalogue's and the program's steps.</summary>
public class AmpacityChoiceTests
{
    /// <summary>33 CFR 183.425 Table E, 105 degC insulation: outside (30 degC) and inside (50 degC) engine spaces; areas of AWG by ASTM B258.</summary>
    [Theory]
    [InlineData(0.823, 20, 17)]
    [InlineData(1.31, 25, 21)]
    [InlineData(2.08, 35, 30)]
    [InlineData(3.31, 45, 38)]
    [InlineData(5.26, 60, 51)]
    [InlineData(8.37, 80, 68)]
    [InlineData(13.3, 120, 102)]
    [InlineData(21.15, 160, 136)]
    [InlineData(26.67, 180, 153)]
    [InlineData(33.62, 210, 178)]
    [InlineData(42.41, 245, 208)]
    [InlineData(53.48, 285, 242)]
    [InlineData(67.43, 330, 280)]
    [InlineData(85.01, 385, 327)]
    [InlineData(107.2, 445, 378)]
    public void The_marine_table_is_borne_at_both_of_its_temperatures(double areaMm2, double outsideA, double insideA)
    {
        var size = new WireSize("", areaMm2, null, 1, 1, MarineTable.InAirA(areaMm2, 105), null, "");
        Assert.Equal(outsideA, Ampacity.DeratedA(size, 105, 30, 1), 1e-6);

        // printed to whole amperes, by a factor of 0.85 where the root of the rise left is 0.856
        Assert.Equal(insideA, Ampacity.DeratedA(size, 105, 50, 1), (0.01 * outsideA) + 0.5);
    }

    /// <summary>US Coast Guard electrical guideline as a marine catalogue quotes it: 3 conductors 0.70, 4 to 6 0.60, 7 to 24 0.50, 25 and more 0.40.</summary>
    [Theory]
    [InlineData(2, 1)]
    [InlineData(3, 0.7)]
    [InlineData(4, 0.6)]
    [InlineData(6, 0.6)]
    [InlineData(7, 0.5)]
    [InlineData(24, 0.5)]
    [InlineData(25, 0.4)]
    public void Marine_bundle_factors_are_the_quoted_ones(int wires, double factor) => Assert.Equal(factor, Ampacity.BundleFactor(wires, BundleDerating.Marine));

    [Fact]
    public void A_harness_that_asks_for_them_is_planned_by_them()
    {
        var usual = Planned("");
        var marine = Planned("ampacity: { in-air: marine, in-bundles: marine }\n");
        Assert.True(usual.Harness.Ampacity == AmpacityChoice.Usual && marine.Harness.Ampacity == new AmpacityChoice(true, BundleDerating.Marine));
        foreach (var wire in marine.Wires)
        {
            var type = marine.Harness.Catalogue.WireTypes.Single(t => t.Id == wire.WireType);
            var inAirA = MarineTable.InAirA(wire.AreaMm2, type.MaxC);

            // by one of the quoted factors and the ambient of some zone, and it bears what it carries
            Assert.Contains(new[] { 1, 0.7, 0.6, 0.5, 0.4 }, f => Zones(marine).Any(c => Math.Abs((inAirA * f * Ampacity.AmbientFactor(type.MaxC, c)) - wire.AmpacityA!.Value) < 0.02));
            Assert.True(wire.AmpacityA!.Value >= ((wire.Worst?.CurrentA ?? 0) / PlanningOptions.Usual.MomentaryFactor) - 0.01);
        }

        Assert.NotEqual(usual.Wires.Select(w => w.AmpacityA), marine.Wires.Select(w => w.AmpacityA));
    }

    private static IEnumerable<double> Zones(Plan plan) => plan.Harness.Layout.Zones.Select(z => z.AmbientC).OfType<double>().Append(PlanningOptions.Usual.UsualAmbientC);

    private static Plan Planned(string more)
    {
        var file = Repository.PathOf("examples", "dunmarrow-18.yaml");
        var files = new EditedFiles(new DiskFiles(), ImmutableSortedDictionary<string, string>.Empty.Add(file, File.ReadAllText(file) + "\n" + more));
        var read = HarnessReader.Read(file, files);
        Assert.False(read.Failed, string.Join('\n', read.Diagnostics));
        return HarnessPlanner.Plan(read.Value!, new PlanningOptions());
    }
}
