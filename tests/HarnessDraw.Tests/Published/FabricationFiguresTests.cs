using System.Globalization;
using System.Text.RegularExpressions;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Kits;
using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Published;

/// <summary>What a fabricator works by against figures published elsewhere; the reference folder names the source of each.</summary>
public partial class FabricationFiguresTests
{
    private const double Mm2PerCircularMil = 5.067075e-4;

    [Fact]
    public void Copper_of_strandings_weighs_what_the_stranded_wire_chart_says()
    {
        // 'Stranded Wire Data Chart': lb a 1000 ft of bare stranded copper, printed to three figures
        var rows = Rows("stranded_wire.csv");
        Assert.True(rows.Count >= 10);
        Assert.All(rows, r =>
        {
            var gramPerM = Number(r["lb_per_kft"]) * 453.59237 / 304.8;
            Assert.Equal(1.0, WireMass.CopperGrams(Number(r["area_cmil"]) * Mm2PerCircularMil, 1000) / gramPerM, 0.01);
        });
    }

    [Fact]
    public void Gauges_have_the_areas_of_ASTM_B258() =>
        Assert.All(Rows("awg.csv"), r => Assert.Equal(Number(r["area_mm2"]), GaugeEquivalent.AreaMm2((int)Number(r["n"])), 5e-5 + (Number(r["area_mm2"]) * 1e-6)));

    // service manuals take for each metric size the gauge that has at least its copper: 1 16, 2 14, 3 12, 5 10, 8 8 (as quoted by the trade)
    [Theory]
    [InlineData(1, "16 AWG")]
    [InlineData(2, "14 AWG")]
    [InlineData(3, "12 AWG")]
    [InlineData(5, "10 AWG")]
    [InlineData(8, "8 AWG")]
    [InlineData(0.5, "20 AWG")]
    [InlineData(50, "1/0 AWG")]
    public void A_metric_size_never_becomes_a_thinner_gauge(double areaMm2, string gauge) => Assert.Equal(gauge, GaugeEquivalent.NotThinner(areaMm2));

    [Fact]
    public void Pull_strengths_are_those_of_the_commercial_column()
    {
        // terminal makers' application specifications (UL 486A set), newtons by gauge; 2/0 is printed there as a round 300 lb
        var line = File.ReadLines(ReferenceFolder.Find("bending_and_bundles.yaml")).First(l => l.Contains("commercial_ul486a", StringComparison.Ordinal));
        var rows = Row().Matches(line);
        Assert.Equal(15, rows.Count);
        Assert.All(rows, r =>
        {
            var name = r.Groups[1].Value;
            var gauge = name.EndsWith("/0", StringComparison.Ordinal) ? 1 - int.Parse(name[..^2], CultureInfo.InvariantCulture) : int.Parse(name, CultureInfo.InvariantCulture);
            Assert.Equal(Number(r.Groups[2].Value), PullStrength.LeastN(GaugeEquivalent.AreaMm2(gauge)));
            // NASA-STD-8739.4 as quoted there: in the harness at most 80 % of it
            Assert.Equal(Math.Floor(0.8 * Number(r.Groups[2].Value)), PullStrength.InHarnessN(GaugeEquivalent.AreaMm2(gauge)));
        });
    }

    [Fact]
    public void Slack_is_that_of_AC_43_13_1B()
    {
        var text = File.ReadAllText(ReferenceFolder.Find("bending_and_bundles.yaml"));
        Assert.Contains("max_deflection_between_supports_in: {value: 0.5, mm: 12.7", text, StringComparison.Ordinal);
        Assert.Equal(12.7, SupportSlack.MostSagMm);
        Assert.Contains("re_terminations: 2", text, StringComparison.Ordinal);
        Assert.Equal(2, PlanningOptions.Usual.Reterminations);
        // the arc of a parabola of that sag between supports 24 in apart, summed in small steps
        const double apart = 609.6;
        var arc = Enumerable.Range(0, 100_000).Sum(i => Math.Sqrt(1 + Math.Pow(8 * 12.7 / apart * (((i + 0.5) / 100_000) - 0.5), 2)) * apart / 100_000);
        Assert.Equal(arc - apart, SupportSlack.ExtraMm(apart), 0.01);
    }

    // AC 43.13-1B as the trade quotes it: within 3 in of each end, at most 15 in apart, one in the middle from 3 to 7 in; no source seen in full
    [Theory]
    [InlineData(70, 35, 0)]
    [InlineData(150, 75, 0)]
    [InlineData(500, 76.2, 0)]
    [InlineData(600, 76.2, 1)]
    [InlineData(3000, 76.2, 7)]
    public void Labels_are_spaced_as_AC_43_13_1B_asks(double lengthMm, double atMm, int between)
    {
        Assert.Equal(atMm, LabelSpacing.AtMm(lengthMm), 6);
        Assert.Equal(between, LabelSpacing.Between(lengthMm));
        if (lengthMm > 200)
        {
            Assert.True((lengthMm - (2 * 76.2)) / (between + 1) <= 381 + 1e-9);
        }
    }

    private static List<Dictionary<string, string>> Rows(string name)
    {
        var lines = File.ReadLines(ReferenceFolder.Find(name)).Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split(',')).ToList();
        return [.. lines.Skip(1).Select(l => lines[0].Zip(l).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal))];
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"'?(\d+(?:/0)?)'?: \[([\d.]+), \d+\]")]
    private static partial Regex Row();
}
