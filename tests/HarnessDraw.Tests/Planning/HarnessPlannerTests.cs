using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Model;
using HarnessDraw.Tests.Reading;

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

    [Fact]
    public void A_route_goes_round_a_forbidden_zone_and_through_it_only_when_nothing_else_is_left()
    {
        bool Through(params string[] closed)
        {
            var layout = SmallHarness.Harness.Layout;
            var zone = new KeepClear("steering shaft", 500, -900, 690, 60, null) { To = (500, -500, 690), Forbidden = true };
            var plan = HarnessPlanner.Plan(SmallHarness.Harness with { Layout = layout with { KeepClear = [zone], Paths = [.. layout.Paths.Where(p => !closed.Contains(p.Id))] } }, PlanningOptions.Usual);
            return plan.Tree.Segments.Any(s => !s.Wires.IsEmpty && new[] { s.From, s.To }.Order(StringComparer.Ordinal).SequenceEqual(["left wing front", "left wing rear"]));
        }

        Assert.Contains(Plan.Tree.Segments, s => s.From == "left wing rear" && s.To == "left wing front");
        Assert.False(Through());
        Assert.True(Through("thermostat - grille"));
    }

    [Fact]
    public void A_way_as_hot_as_the_wire_may_get_is_told_once_with_both_figures_and_wire_of_the_same_system_first()
    {
        var vehicle = new SmallVehicle();
        vehicle = vehicle with { Layout = vehicle.Layout.Replace("60 degC", "105 degC", StringComparison.Ordinal).Replace("clips-every: 150 mm", "zone: wet", StringComparison.Ordinal) };
        var files = vehicle.Files();
        var planned = HarnessCompiler.Plan(SmallVehicle.File, files, RuleSettings.BuiltIn).Value!;
        var told = planned.Findings.Where(f => f.Rule is "no-size-large-enough" or "wire-overloaded" or "fuse-above-wire" or "no-terminal-fits").ToList();
        Assert.Equal("no-size-large-enough", Assert.Single(told).Rule);
        Assert.Contains("105 degC hot", told[0].Message, StringComparison.Ordinal);
        Assert.Contains("bears 105 degC", told[0].Message, StringComparison.Ordinal);
        Assert.Contains("metric", HarnessCompiler.Cure(SmallVehicle.File, files, RuleSettings.BuiltIn, planned).Findings.Single(f => f.Rule == "no-size-large-enough").Cure, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bulkhead-24", 30, "Use bulkhead-44 with 44 cavities")]
    [InlineData("bulkhead-24", 60, "Use bulkhead-80 with 80 cavities")]
    [InlineData("bulkhead-80", 90, "No connector of the catalogue is larger")]
    public void A_connector_too_small_says_how_many_cavities_are_missing_and_the_next_that_has_them(string mate, int lamps, string cure)
    {
        var vehicle = new SmallVehicle();
        string Each(Func<int, string> line) => string.Concat(Enumerable.Range(1, lamps).Select(n => line(n) + "\n"));
        vehicle = vehicle with
        {
            Things = vehicle.Things.Replace("bulkhead-24", mate, StringComparison.Ordinal) + Each(n => $"  lamp {n}: {{ at: nose, blade: 6.3 mm, lamp: 5 W, grounds-itself: yes }}"),
            Circuits = "circuits:\n" + Each(n => $"  c{n}: {{ from: F7, enters-by: firewall, feeds: lamp {n} }}"),
        };
        var plan = HarnessPlanner.Plan(vehicle.Harness(), PlanningOptions.Usual);
        var found = plan.PlanningFindings.Where(f => f.Rule == "no-cavity").ToList();
        Assert.NotEmpty(found);
        Assert.All(found, f => Assert.Contains($"one of {found.Count} wires", f.Message, StringComparison.Ordinal));
        Assert.All(found, f => Assert.StartsWith(cure, f.Cure, StringComparison.Ordinal));
        Assert.All(found, f => Assert.EndsWith($"free {found.Count} cavities.", f.Cure, StringComparison.Ordinal));
    }

    /// <summary>Green and yellow together is protective earth (IEC 60445): more circuits than there are colours use all of ours twice before it.</summary>
    [Fact]
    public void No_circuit_is_given_the_colour_of_protective_earth()
    {
        var vehicle = new SmallVehicle();
        string Each(Func<int, string> line) => string.Concat(Enumerable.Range(1, 50).Select(n => line(n) + "\n"));
        vehicle = vehicle with
        {
            Things = vehicle.Things.Replace("bulkhead-24", "bulkhead-80", StringComparison.Ordinal) + Each(n => $"  lamp {n}: {{ at: nose, blade: 6.3 mm, lamp: 5 W, grounds-itself: yes }}"),
            Circuits = "circuits:\n" + Each(n => $"  c{n}: {{ from: F7, enters-by: firewall, feeds: lamp {n} }}"),
        };
        var colours = HarnessPlanner.Plan(vehicle.Harness(), PlanningOptions.Usual).Wires.Select(w => w.Colour).ToHashSet(StringComparer.Ordinal);
        Assert.True(colours.Count > 20, $"{colours.Count} colours");
        Assert.DoesNotContain("GN/YE", colours);
        Assert.DoesNotContain("YE/GN", colours);
    }

    // by hand: crossed lines 30 apart, a line past the end of another, parallel ones, points
    [Theory]
    [InlineData(500, 0, 30, 500, 200, 30, 30)]
    [InlineData(1300, 0, 400, 1300, 200, 400, 500)]
    [InlineData(0, 40, 0, 1000, 40, 0, 40)]
    [InlineData(-30, 0, 40, -30, 0, 40, 50)]
    public void Distance_of_something_long_from_a_run(double x1, double y1, double z1, double x2, double y2, double z2, double expectedMm) =>
        Assert.Equal(expectedMm, new KeepClear("pipe", x1, y1, z1, 50, null) { To = (x2, y2, z2) }.DistanceMm(new("a", 0, 0, 0), new("b", 1000, 0, 0)), 9);
}
