using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Sheets.Teaching;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Tests.Electrical;

public class AlternatorAndStarterTests
{
    private static readonly Lazy<FaultBench> Saloon = new(() => new(ExamplePlans.Of("brackmere-six")));
    private static readonly Lazy<FaultRanking> Ranking = new(() => new(Saloon.Value, Saloon.Value.Faults(FaultWeights.InService)));

    /// <summary>An alternator's lamp terminal is fed by the windings that feed its output (DIN 72552: D+, 61): it is not above it, however much is drawn.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(0.1)]
    public void The_exciter_terminal_is_never_above_the_output_of_its_alternator(double output)
    {
        var plan = ExamplePlans.Of("brackmere-six");
        // a tenth of the output: the battery gives the rest and the whole vehicle falls to its volts
        plan = plan with { Harness = plan.Harness with { Power = plan.Harness.Power with { Sources = [.. plan.Harness.Power.Sources.Select(s => s.Kind == SourceKind.Alternator ? s with { OutputA = s.OutputA * output } : s)] } } };
        var bench = new FaultBench(plan);
        int Point(string name) => bench.Points.IndexOf(bench.Points.First(p => p.Name == name));
        var running = Enumerable.Range(0, bench.States.Length).Where(s => bench.States[s].Engine == EngineState.Running).ToList();
        Assert.NotEmpty(running);
        Assert.All(running, s => Assert.InRange(bench.WithoutFault.Volts[s][Point("alternator.L")], 12.0, bench.WithoutFault.Volts[s][Point("alternator.B+")] + 0.001));
        // nothing is across the charge lamp, so it is out
        var lamp = bench.Loads.Select((l, i) => (l, i)).Where(l => l.l.Name.Contains("charge lamp", StringComparison.Ordinal)).Select(l => l.i).ToList();
        Assert.All(running, s => Assert.All(lamp, l => Assert.False(bench.ShouldWork[s][l])));
    }

    [Fact]
    public void An_alternator_that_gives_nothing_has_no_volts_at_its_exciter_terminal_and_lights_the_lamp()
    {
        var bench = Saloon.Value;
        var fault = Ranking.Value.Faults.Single(f => f.Fault.Words == "alternator gives nothing");
        var running = bench.States.IndexOf(bench.States.First(s => s.Engine == EngineState.Running));
        var point = bench.Points.IndexOf(bench.Points.First(p => p.Name == "alternator.L"));
        Assert.True(fault.Predictions[0].Volts(running, point) < 10);
    }

    [Fact]
    public void A_starter_does_not_turn_without_its_solenoid()
    {
        var bench = Saloon.Value;
        var cranking = bench.States.IndexOf(bench.States.First(s => s.Engine == EngineState.Cranking));
        int Load(string name) => bench.Loads.IndexOf(bench.Loads.First(l => l.Name == name));
        Assert.True(bench.ShouldWork[cranking][Load("starter motor B")]);
        var open = Ranking.Value.Faults.Where(f => f.Fault.Kind == FaultKind.Open && LoadClasses.Of(f.Predictions[0].Solved.Shares[cranking][Load("starter coil S")], true) == LoadClass.Dead).ToList();
        Assert.NotEmpty(open);
        Assert.All(open, f => Assert.Equal(LoadClass.Dead, LoadClasses.Of(f.Predictions[0].Solved.Shares[cranking][Load("starter motor B")], true)));
    }

    /// <summary>What a class is told of a blown fuse is what the fault study finds.</summary>
    [Fact]
    public void Symptoms_in_the_handout_are_those_of_the_fault_study()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var study = FaultFinder.Find(plan).Opens.Where(o => o.What.StartsWith("fuse ", StringComparison.Ordinal)).ToLookup(o => o.What[5..], o => o.Dead.Select(d => d.Load));
        var asked = ClassQuestion.Of(plan).Where(q => q.Ask.StartsWith("Dead: ", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(asked);
        foreach (var question in asked)
        {
            var fuse = question.Answer.Split(',')[0];
            Assert.Equal($"Dead: {string.Join(", ", study[fuse].SelectMany(d => d).Distinct())}. Everything else works.", question.Ask);
        }

        Assert.Equal(asked.Count, asked.Select(q => q.Ask).Distinct().Count());
    }
}
