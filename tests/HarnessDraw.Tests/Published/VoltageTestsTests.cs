using System.Globalization;
using System.Text.RegularExpressions;
using HarnessDraw.Electrical;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Tracing;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Tests.Published;

/// <summary>Limits of drop and rest volts against the published sets in voltage_tests.yaml, each source named there and here.</summary>
public partial class VoltageTestsTests
{
    [Fact]
    public void Limits_of_drop_are_those_of_the_service_manual_and_the_training_page()
    {
        // service manual of 1999 to 2005 quoting SAE; technician training page (apextechnation.com)
        var text = File.ReadAllText(ReferenceFolder.Find("voltage_tests.yaml"));
        double Limit(string name) => double.Parse(Regex.Match(text, $@"\b{name}: ([\d.]+)").Groups[1].Value, CultureInfo.InvariantCulture);
        double Ours(string what) => TestLimits.Drops.Single(d => d.What == what).Volts;
        Assert.Equal(Limit("small_wire_connection"), Ours("connection of a thin wire"));
        Assert.Equal(Limit("high_current_connection"), Ours("connection that carries much"));
        Assert.Equal(Limit("high_current_cable"), Ours("cable that carries much"));
        Assert.Equal(Limit("switch_or_solenoid_contact"), Ours("contact of a switch or solenoid"));
        Assert.Equal(Limit("ground_circuit"), Ours("ground side"));
        Assert.Equal(Limit("power_wire"), Ours("wire of the feed"));
        Assert.Equal(Limit("through_switch"), Ours("through a switch"));
        Assert.Equal(Limit("starter_cables_total"), Ours("starter cables, all together"));
    }

    [Fact]
    public void Starter_and_charging_are_those_of_the_encyclopedia_and_its_other_limits_agree()
    {
        // encyclopedia page 'Voltage Drop Test' (grokipedia.com), citing training material
        var text = File.ReadAllText(ReferenceFolder.Find("voltage_tests.yaml"));
        text = text[text.IndexOf("grokipedia.com", StringComparison.Ordinal)..];
        double Of(string part, string side) => double.Parse(Regex.Match(text, $@"\b{part}: \{{[^}}]*\b{side}: ([\d.]+)").Groups[1].Value, CultureInfo.InvariantCulture);
        double Ours(string what) => TestLimits.Drops.Single(d => d.What == what).Volts;
        foreach (var part in new[] { "starter", "charging" })
        {
            Assert.Equal(Of(part, "positive_side"), Ours($"{part}, positive side"));
            Assert.Equal(Of(part, "negative_side"), Ours($"{part}, negative side"));
        }

        Assert.Equal(Of("limits", "connection"), Ours("connection of a thin wire"));
        Assert.Equal(Of("limits", "wire_or_cable"), Ours("wire of the feed"));
        Assert.Equal(Of("limits", "switch"), Ours("through a switch"));
        Assert.Equal(Of("limits", "ground"), Ours("ground side"));
        Assert.All(TestLimits.Drops, d => Assert.NotEmpty(d.Source));
    }

    [Fact]
    public void A_trace_calls_no_starter_ground_good_that_the_encyclopedia_calls_bad()
    {
        // encyclopedia page 'Voltage Drop Test' (grokipedia.com): negative side of a starter
        var text = File.ReadAllText(ReferenceFolder.Find("voltage_tests.yaml"));
        var most = double.Parse(Regex.Match(text, @"\bstarter: \{[^}]*negative_side: ([\d.]+)").Groups[1].Value, CultureInfo.InvariantCulture);
        var trace = CircuitTracer.Trace(ExamplePlans.Of("brackmere-six"), "starter cable").Value!;
        var returns = trace.Ways.SelectMany(w => w.Stops).Where(s => s is { LimitIsLeast: false, LimitV: not null }).ToList();
        Assert.NotEmpty(returns);
        Assert.All(returns, s => Assert.InRange(s.LimitV!.Value, s.OnV!.Value, most));
    }

    [Theory]
    [InlineData("rounded rule of thumb", 20)]
    [InlineData("BCI battery service manual figures", 11)]
    public void Other_published_rest_volts_lie_near(string source, int percent)
    {
        // they differ by a tenth of a volt among themselves, a sixth of the whole range; the second is quoted from memory in the reference
        var text = File.ReadAllText(ReferenceFolder.Find("voltage_tests.yaml"));
        var points = Pair().Matches(Regex.Match(text, Regex.Escape(source) + @"[^\n]*\s+points: \{([^}]*)\}").Groups[1].Value)
            .Select(m => (Percent: int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture), Volts: double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture))).Where(p => p.Percent >= 50).ToList();
        Assert.Equal(3, points.Count);
        Assert.All(points, p => Assert.InRange(TestLimits.ChargePercent(p.Volts) ?? 0, p.Percent - percent, p.Percent + percent));
    }

    [Fact]
    public void Rest_volts_give_the_published_charge()
    {
        // RV magazine answer (motorhome.com)
        var text = File.ReadAllText(ReferenceFolder.Find("voltage_tests.yaml"));
        var printed = MotorhomePoints().Match(text).Groups[1].Value;
        var points = Pair().Matches(printed).Select(m => (Percent: int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture), Volts: double.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture))).ToList();
        Assert.Equal(4, points.Count);
        Assert.All(points, p => Assert.Equal(p.Percent, TestLimits.ChargePercent(p.Volts)!.Value, 6));
        Assert.Null(TestLimits.ChargePercent(11.9));
        // a 24 V battery has twice the volts
        Assert.Equal(50, TestLimits.ChargePercent(24.6, 24)!.Value, 6);
    }

    [Theory]
    [InlineData(1.0, 1.0)]
    [InlineData(0.9, 0.70)]
    [InlineData(0.95, 0.84)]
    public void Light_goes_with_volts_to_the_3_4(double volts, double light)
    {
        // encyclopedia page 'Lamp rerating' (en.wikipedia.org): light by the 3.4th to 3.5th power; so 10 % less volts, three tenths less light
        Assert.InRange(PartLaw.LightPower, 3.4, 3.5);
        Assert.Equal(light, TestLimits.LightShare(volts), 2);
    }

    [Fact]
    public void A_filament_draws_less_with_less_volts_by_the_named_exponent() =>
        Assert.Equal(Math.Pow(0.8, PartLaw.FilamentPower), PartLaw.Load(PartBehaviour.Filament, 12, 5).At(9.6).Amperes / 5, 2);

    [GeneratedRegex(@"motorhome\.com\)\s+points: \{([^}]*)\}")]
    private static partial Regex MotorhomePoints();

    [GeneratedRegex(@"(\d+): ([\d.]+)")]
    private static partial Regex Pair();
}
