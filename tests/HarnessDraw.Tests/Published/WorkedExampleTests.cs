using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning.Bundles;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Tests.Published;

/// <summary>Worked examples that others have printed; each names who. Those about sizes by drop stand in <see cref="VoltageDropTests"/>.</summary>
public sealed class WorkedExampleTests
{
    /// <summary>aionlinecalculator.com: 12 AWG of 3.31 mm2, 50 m one way, 5.21 ohm a km, 0.26 and 0.52 ohm.</summary>
    [Fact]
    public void Twelve_gauge_over_fifty_metres()
    {
        var size = Copper100(3.31);
        Assert.Equal(5.21, size.MilliohmPerM, 0.005 * 5.21);
        Assert.Equal(0.26, Copper.Ohm(size, 50_000, 20), 0.005);
        Assert.Equal(0.52, Copper.Ohm(size, 100_000, 20), 0.01);
    }

    /// <summary>Textbook problem (clutchprep.com): 24 m of 2.05 mm wire at 1.72e-8 ohm m; result computed 0.1251 ohm.</summary>
    [Fact]
    public void Twenty_four_metres_of_a_round_wire() =>
        Assert.Equal(0.125, Copper.Ohm(Copper100(Math.PI * 2.05 * 2.05 / 4), 24_000, 20) * 0.0172 / Copper.Resistivity, 0.0005);

    /// <summary>Number 10, 10400 circular mils, 1000 ft: 0.997 ohm (memory, NEETS module on conductors).</summary>
    [Fact]
    public void A_thousand_feet_of_number_ten() => Assert.Equal(0.997, Copper.Ohm(Copper100(10_400 * 5.067075e-4), 304_800, 20), 0.002);

    /// <summary>FAA AMT handbook figures: 100 ft of 18 gauge at 6.23 ohm a 1000 ft and 10 A lose 6.23 V.</summary>
    [Fact]
    public void A_hundred_feet_of_eighteen_gauge() => Assert.Equal(6.23, DropRule.DropV(new("18", 0.96, "18", 6.23 / 0.3048, 0, null, null, "printed"), 10, 30_480, 20), 0.01);

    /// <summary>Engineering ToolBox: a 50 W lamp at 12 V draws 4.2 A, and 10 gauge carries it 8.8 m (chart: about 8) at 2 %.</summary>
    [Fact]
    public void A_fifty_watt_lamp()
    {
        var amperes = ElementCurrent.NominalA(new("lamp", ElementKind.Lamp, "1", "2") { PowerW = 50 }, 12)!.Value;
        Assert.Equal(4.2, amperes, 0.05);
        var ten = new WireSize("10", 5.26, "10", 3.277, 0, null, null, "printed");
        Assert.Equal(0.24, DropRule.DropV(ten, amperes, 2 * 8_800, 20), 0.004);
    }

    /// <summary>lena.geoffrichings.co.uk: 1.6 A over 22 m of 1.5 mm2 lose 0.385 V by a constant of 0.0164; copper at 20 degC gives five per cent more.</summary>
    [Fact]
    public void A_masthead_light()
    {
        var drop = DropRule.DropV(Copper100(1.5), 1.6, 22_000, 20);
        Assert.Equal(0.385, drop * 0.0164 / Copper.Resistivity, 0.001);
        Assert.InRange(drop / 0.385, 1.0, 1.06);
    }

    /// <summary>Cable-sizing page: 12 kA for 20 ms at k 143 ask 11.87 mm2, so 16.</summary>
    [Fact]
    public void Twelve_kiloamperes_for_twenty_milliseconds()
    {
        Assert.Equal(143, Adiabatic.K(90, Adiabatic.XlpeFinalC), 0.5);
        Assert.Equal(115, Adiabatic.K(70, Adiabatic.PvcFinalC), 0.5);
        Assert.Equal(11.87, 12_000 * Math.Sqrt(0.02) / Adiabatic.K(90, Adiabatic.XlpeFinalC), 0.05);
        Assert.True(Adiabatic.FinalC(90, 12_000, 0.02, 11.8) > Adiabatic.XlpeFinalC);
        Assert.True(Adiabatic.FinalC(90, 12_000, 0.02, 12) < Adiabatic.XlpeFinalC);
    }

    /// <summary>Proven packings of equal circles: ratios 3, 4.029602 and 4.863703 for 7, 12 and 19.</summary>
    [Theory]
    [InlineData(7, 2.4, 7.2)]
    [InlineData(12, 1.9, 7.656)]
    [InlineData(19, 2.4, 11.673)]
    public void Bundles_of_equal_wires(int wires, double eachMm, double bundleMm) =>
        Assert.InRange(CirclePacking.Diameter([.. Enumerable.Repeat(eachMm, wires)], 1.2), bundleMm - 0.001, bundleMm * 1.05);

    /// <summary>Elementary geometry: two circles side by side; 1, 2 and 3; 3, 3 and 2; Descartes for 3, 2.5 and 2.2.</summary>
    [Theory]
    [InlineData(new[] { 6.0, 4.3 }, 10.3)]
    [InlineData(new[] { 2.0, 4.0, 6.0 }, 10.0)]
    [InlineData(new[] { 6.0, 6.0, 4.0 }, 12.0)]
    [InlineData(new[] { 6.0, 5.0, 4.4 }, 11.212)]
    public void Bundles_of_different_wires(double[] eachMm, double bundleMm) => Assert.InRange(CirclePacking.Diameter(eachMm, 1.2), bundleMm - 0.001, bundleMm * 1.02);

    /// <summary>Gates of a 10 A blade fuse at 160 % and 200 % in a public note: at 18 A not before 0.15 s, by 50 s.</summary>
    [Fact]
    public void A_ten_ampere_fuse_at_eighteen()
    {
        var (shortest, longest) = FuseWindow.Of(ProtectionKind.Blade, 1.8);
        Assert.InRange(shortest, 0.15, 0.25);
        Assert.InRange(longest!.Value, 5, 50);
    }

    private static WireSize Copper100(double areaMm2) => new("", areaMm2, null, 1000 * Copper.Resistivity / areaMm2, 0, null, null, "100 % IACS");
}
