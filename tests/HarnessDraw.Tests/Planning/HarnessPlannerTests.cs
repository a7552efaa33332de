using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Model;

namespace HarnessDraw.Tests.Planning;

public sealed class HarnessPlannerTests(ITestOutputHelper output)
{
    private static Plan Plan => SmallHarness.Plan;

    [Fact]
    public void The_small_harness_gets_a_whole_plan()
    {
        foreach (var w in Plan.Wires)
        {
            output.WriteLine($"{w.Id} {w.Circuit}: {w.From} -> {w.To} {w.Colour} {w.SizeLabel} path {w.PathLengthMm} cut {w.CutLengthMm} {w.DecidedBy}; {w.RunnerUp}; margin {w.Margin} amp {w.AmpacityA} worst {w.Worst} {w.From.Terminal}/{w.To.Terminal} [{string.Join(' ', w.Segments)}] {string.Join(',', w.ProtectedBy)}");
        }

        foreach (var text in Plan.Splices.Select(s => $"{s.Id} {s.Circuit} {s.Segment}@{s.AtMm} {string.Join(' ', s.Wires)} {s.Part}")
            .Concat(Plan.Fuses.Select(f => $"{f.Id} {f.RatingA} largest {f.LargestA} load {f.LoadA} {f.Why} {string.Join(' ', f.Wires)}"))
            .Concat(Plan.Cavities.Select(c => $"{c.Connector}:{c.Cavity} {c.Wire} {c.Plug} {c.Why}"))
            .Concat(Plan.Tree.Segments.Select(s => $"{s.Id} {s.From} - {s.To} {s.LengthMm} d {s.DiameterMm} {s.Covering} {s.Wires.Length}"))
            .Concat(Plan.Nodes.Select(n => $"{n.Node}: {string.Join(' ', n.Volts.Select(v => $"{v.Key}={v.Value:0.00}"))}"))
            .Concat(Plan.PlanningFindings.Select(f => $"{f.Rule}: {f.Message}")).Append(Plan.RoutingObjective))
        {
            output.WriteLine(text);
        }

        Assert.DoesNotContain(Plan.PlanningFindings, f => f.Severity == Severity.Error);
        Assert.All(Plan.Wires, w => Assert.NotNull(w.CutLengthMm));
        Assert.Equal(Plan.Wires.Length, Plan.Wires.Select(w => w.Id).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(["SP1", "SP2"], Plan.Splices.Select(s => s.Id));
    }
}
