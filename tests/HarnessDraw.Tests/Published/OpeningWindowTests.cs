using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Tests.Published;

/// <summary>Windows in which fuses open, constants of short-circuit heating, and what aerospace figures say of a single wire in air.</summary>
public sealed class OpeningWindowTests(ITestOutputHelper output)
{
    /// <summary>
    /// ISO 8820-3, regular blade fuses as transcribed from data sheets: 135, 200 and 350 % verified, the lower edge at 600 % from memory (5 to 30 A; 0.15 s for 35 and 40 A, which the model takes as 0.1 s).
    /// </summary>
    [Theory]
    [InlineData(1.35, 0.75, 600)]
    [InlineData(1.6, 0.25, 50)]
    [InlineData(2, 0.15, 5)]
    [InlineData(3.5, 0.08, 0.5)]
    [InlineData(6, 0.03, 0.1)]
    public void Blade_fuses_open_in_the_windows_of_ISO_8820_3(double times, double shortestS, double longestS) => Window(ProtectionKind.Blade, times, shortestS, longestS);

    /// <summary>ISO 8820-5, bolt-in fuses as makers' sheets have them: from memory, no source seen.</summary>
    [Theory]
    [InlineData(1.35, 120, 1800)]
    [InlineData(2, 1, 15)]
    [InlineData(3.5, 0.3, 5)]
    [InlineData(6, 0.1, 1)]
    public void Bolt_in_fuses_open_in_the_windows_of_ISO_8820_5(double times, double shortestS, double longestS) => Window(ProtectionKind.BoltIn, times, shortestS, longestS);

    /// <summary>ISO 8820: at 110 % (blade) and 100 % (bolt-in) a fuse holds for 100 and 4 hours: nothing promises that it opens.</summary>
    [Theory]
    [InlineData(ProtectionKind.Blade, 1.1)]
    [InlineData(ProtectionKind.BoltIn, 1.0)]
    public void A_fuse_near_its_rating_need_not_open(ProtectionKind kind, double times) => Assert.Null(FuseWindow.Of(kind, times).LongestS);

    /// <summary>IEC 60364-5-54 as quoted by cable-sizing pages: 115 and 143 verified, the others from memory.</summary>
    [Theory]
    [InlineData(70, 160, 115)]
    [InlineData(90, 250, 143)]
    [InlineData(30, 160, 143)]
    [InlineData(30, 250, 176)]
    [InlineData(90, 160, 100)]
    [InlineData(60, 200, 141)]
    [InlineData(85, 220, 134)]
    public void Constants_of_short_circuit_heating_are_the_published_ones(double startC, double finalC, double k) => Assert.Equal(k, Adiabatic.K(startC, finalC), 0.5);

    /// <summary>
    /// Free-air points of MIL-W-5088L: 14 AWG 47 A at a rise of 150 K (AC 43.13-1B page 11-27), the others from memory. Brought to the rise of 80 K for which the catalogue lists
    /// currents in air by the root of the rises, they are a third to a half above those of thin-wall road-vehicle wire, which its supplier lists so: the shares are stated and held.
    /// </summary>
    [Theory]
    [InlineData("14", 150, 47, 0.75)]
    [InlineData("20", 140, 21.5, 0.69)]
    [InlineData("22", 140, 16.2, 0.62)]
    [InlineData("12", 150, 68, 0.71)]
    public void Aerospace_wire_in_air_beside_the_models_rise(string gauge, double riseK, double publishedA, double share)
    {
        var type = Sheets.ExamplePlans.Of("brackmere-six").Harness.Catalogue.WireTypes.Single(t => t.Id == "thin-wall-105");
        var at80 = publishedA * Math.Sqrt(80 / riseK);
        var area = Math.PI / 4 * Math.Pow(0.127 * Math.Pow(92, (36 - int.Parse(gauge, System.Globalization.CultureInfo.InvariantCulture)) / 39.0), 2);
        var size = type.Sizes.MinBy(s => Math.Abs(s.AreaMm2 - area))!;
        // by the copper that the metric size has
        var ours = HarnessDraw.Planning.Sizing.Ampacity.InAirA(size) * Math.Pow(area / size.AreaMm2, HarnessDraw.Planning.Sizing.Ampacity.AreaPower);
        output.WriteLine($"{gauge} AWG, {area:0.00} mm2: {publishedA} A at {riseK} K is {at80:0.0} A at 80 K; {ours:0.0} A here ({ours / at80:0.00})");
        Assert.Equal(share, ours / at80, 0.01);
    }

    private static void Window(ProtectionKind kind, double times, double shortestS, double longestS)
    {
        var (shortest, longest) = FuseWindow.Of(kind, times);
        Assert.Equal(shortestS, shortest, 1e-9);
        Assert.Equal(longestS, longest!.Value, 1e-9);
    }
}
