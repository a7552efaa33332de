using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Model;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Electrical;

/// <summary>What the starter leaves of the volts, by the solved network: battery, its internal resistance, cables, straps and joints.</summary>
public sealed class CrankingTests
{
    /// <summary>Rest volts (2.1 V a cell) less what the battery's 8 mohm and the loop take: Kirchhoff's voltage law over the battery.</summary>
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_battery_sags_by_its_internal_resistance(string example)
    {
        var plan = ExamplePlans.Of(example);
        foreach (var point in CrankingFinder.Find(plan))
        {
            var solved = NetworkSolver.Solve(plan).Single(p => p.State == point.State);
            var battery = solved.Sources.First(s => plan.Harness.Power.Sources.First(x => x.Id == s.Source).Kind == SourceKind.Battery);
            var source = plan.Harness.Power.Sources.First(s => s.Id == battery.Source);
            var ohm = source.InternalOhm ?? 0.008 * source.NominalV / 12;
            Assert.Equal((1.05 * source.NominalV) - (battery.CurrentA * ohm), point.Stalled ? Math.Abs(battery.VoltageV) : point.BatteryV, 6);
            Assert.True(point.StarterV < point.BatteryV);
        }
    }

    /// <summary>Cables are sized by the current that is given for the starter. The sagging battery never drives more through a turning one, so they lose no more than they were sized for.</summary>
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void A_turning_starter_takes_no_more_than_its_cables_are_sized_by(string example)
    {
        var plan = ExamplePlans.Of(example);
        foreach (var point in CrankingFinder.Find(plan).Where(p => !p.Stalled))
        {
            var starter = NetworkSolver.Solve(plan).Single(p => p.State == point.State).Loads.Where(l => l.Thing == point.Starter).MaxBy(l => l.NominalA)!;
            Assert.InRange(point.StarterA, 0.3 * starter.NominalA, starter.NominalA);
        }
    }

    /// <summary>Still, it is a resistance: its volts over its ohms are its amperes, and it takes more and leaves less than when it turns.</summary>
    [Fact]
    public void A_starter_that_stands_still_is_a_resistance()
    {
        var plan = Stalling(400);
        var (turning, still) = (CrankingFinder.Find(plan).Single(p => !p.Stalled), CrankingFinder.Find(plan).Single(p => p.Stalled));
        Assert.Equal(still.StarterA, still.StarterV / (12.0 / 400), 6);
        Assert.True(still.StarterA > turning.StarterA && still.BatteryV < turning.BatteryV);
        // 12.6 V behind 8 mohm over a loop with 30 mohm of starter: cables and joints take their part too
        Assert.InRange(still.BatteryV, 7, 12.6 * 30 / 38 + 0.5);
        Assert.All(still.Loads, l => Assert.True(l.VoltageV <= turning.Loads.First(t => t.Load == l.Load).VoltageV));
    }

    [Fact]
    public void A_weak_battery_lets_the_relay_go_and_is_told_with_numbers()
    {
        var plan = Stalling(900) is var p ? p with { Harness = p.Harness with { Power = p.Harness.Power with { Sources = [.. p.Harness.Power.Sources.Select(s => s.Kind == SourceKind.Battery ? s with { InternalOhm = 0.035 } : s)] } } } : null!;
        var finding = HarnessDraw.Checking.HarnessChecker.Check(plan, HarnessDraw.Checking.RuleSettings.BuiltIn).First(f => f.Rule == "cranking-sag");
        Assert.Matches(@"gets [\d.]+ V \([\d.]+ %\) in 'cranking' while starter .* takes [\d.]+ A: the battery's posts are at [\d.]+ V", finding.Message);
    }

    private static Plan Stalling(double amperes) => SmallHarness.Plan with
    {
        Harness = SmallHarness.Plan.Harness with
        {
            Things = [.. SmallHarness.Plan.Harness.Things.Select(t => t.Kind == ThingKind.Starter ? t with { Elements = [.. t.Elements.Select(e => e.Kind == ElementKind.Motor ? e with { PeakA = amperes } : e)] } : t)],
        },
    };
}
