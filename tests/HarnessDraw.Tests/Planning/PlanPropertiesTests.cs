using System.Globalization;
using System.Text.RegularExpressions;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Model;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Planning;

/// <summary>What must hold whatever the figures.</summary>
public sealed partial class PlanPropertiesTests
{
    /// <summary>
    /// A single wire may be a size smaller at a bigger load where its neighbour in the loop has become larger, as sizes come in steps; the copper never is less.
    /// Above 6.5 A contacts and kept wiring alone lose more than the horn may: from there the new wires are held to the limit alone.
    /// </summary>
    [Fact]
    public void A_bigger_load_never_gives_less_copper()
    {
        // what carries the current; wires of other circuits share a loop's slack with it and may go either way by a size
        string[] carrying = ["horn", "horn ground", "cabin feed", "battery feed", "battery ground"];
        double Copper(double amperes) => HarnessPlanner.Plan(WithHorn(SmallHarness.Harness, amperes), PlanningOptions.Usual).Wires.Where(w => carrying.Contains(w.Circuit)).Sum(w => w.AreaMm2 * (w.CutLengthMm ?? 0));
        var last = 0.0;
        for (var amperes = 0.5; amperes <= 6.5; amperes += 0.5)
        {
            var copper = Copper(amperes);
            Assert.True(copper >= last - 1e-6, $"{copper} mm3 at {amperes} A after {last} mm3");
            last = copper;
        }

        Assert.True(last > Copper(0.5));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void No_wire_has_the_name_of_a_fuse_or_a_thing(string example)
    {
        var plan = ExamplePlans.Of(example);
        var names = plan.Harness.Protections.Select(p => p.Id).Concat(plan.Harness.Things.Select(t => t.Id)).ToHashSet(StringComparer.Ordinal);
        Assert.DoesNotContain(plan.Wires, w => names.Contains(w.Id));
    }

    [Fact]
    public void A_number_that_a_fuse_has_is_stepped_over()
    {
        var ids = HarnessPlanner.Plan(SmallHarness.Harness, PlanningOptions.Usual).Wires.Select(w => w.Id).ToList();
        var fuse = SmallHarness.Harness.Protections[0];
        var named = SmallHarness.Harness with { Protections = [.. SmallHarness.Harness.Protections, fuse with { Id = ids[0] }] };
        Assert.DoesNotContain(ids[0], HarnessPlanner.Plan(named, PlanningOptions.Usual).Wires.Select(w => w.Id));
    }

    /// <summary>The smallest copper that satisfies every rule: what the plan says of the next smaller size must break the rule it names.</summary>
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void A_size_smaller_breaks_the_rule_that_decided(string example)
    {
        var plan = ExamplePlans.Of(example);
        var told = 0;
        foreach (var wire in plan.Wires.Where(w => w.RunnerUp is not null && w.DecidedBy is "voltage drop" or "protection" or "ampacity"))
        {
            double[] numbers = [.. Numbers().Matches(wire.RunnerUp!).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture))];
            if (wire.DecidedBy == "voltage drop")
            {
                // printed to a tenth of a percent, and cut lengths settle after the sizes
                Assert.True(numbers[0] >= numbers[1] - 0.15, $"{wire.Id}: {wire.RunnerUp}");
            }
            else
            {
                Assert.True(numbers[0] < numbers[1] + 0.05, $"{wire.Id}: {wire.RunnerUp}");
            }

            told++;
        }

        Assert.True(told > 5, $"{told} sizes told");
    }

    // the numbers of a reason that carry a unit of percent or ampere, in their order
    [GeneratedRegex(@"(?<=\s)\d+(\.\d+)?(?= (%|A)\b| %)")]
    private static partial Regex Numbers();

    [Fact]
    public void A_longer_path_never_gives_a_smaller_wire_or_a_shorter_cut()
    {
        var (area, cut) = (0.0, 0.0);
        for (var factor = 1; factor <= 5; factor++)
        {
            var layout = SmallHarness.Harness.Layout with { Paths = [.. SmallHarness.Harness.Layout.Paths.Select(p => p with { LengthMm = p.LengthMm * factor })] };
            var wire = HornFeed(SmallHarness.Harness with { Layout = layout });
            Assert.True(wire.AreaMm2 >= area);
            Assert.True(wire.CutLengthMm > cut);
            (area, cut) = (wire.AreaMm2, wire.CutLengthMm!.Value);
        }
    }

    [Fact]
    public void The_same_harness_gives_the_same_plan()
    {
        var again = HarnessPlanner.Plan(SmallHarness.Harness, PlanningOptions.Usual);
        Assert.Equal(SmallHarness.Plan.Wires.Select(Told), again.Wires.Select(Told));
        Assert.Equal(SmallHarness.Plan.RoutingObjective, again.RoutingObjective);
    }

    [Fact]
    public void Lengths_are_path_plus_allowances_rounded_up_once()
    {
        foreach (var wire in SmallHarness.Plan.Wires)
        {
            var exact = wire.PathLengthMm!.Value + wire.Allowances.Sum(a => a.LengthMm);
            Assert.InRange(wire.CutLengthMm!.Value - exact, 0, 10);
            Assert.Equal(0, wire.CutLengthMm.Value % 10);
            Assert.Equal(wire.Allowances.Length, wire.Allowances.Select(a => a.What).Distinct(StringComparer.Ordinal).Count());
        }
    }

    [Fact]
    public void Splices_keep_clear_of_one_another_and_of_moving_runs()
    {
        var plan = SmallHarness.Plan;
        foreach (var splice in plan.Splices)
        {
            var segment = plan.Tree.Segments.Single(s => s.Id == splice.Segment);
            Assert.InRange(splice.AtMm, 40, segment.LengthMm!.Value - 40);
            Assert.DoesNotContain(plan.Splices, o => o != splice && o.Segment == splice.Segment && Math.Abs(o.AtMm - splice.AtMm) < 40);
        }
    }

    [Fact]
    public void A_place_without_a_path_gets_an_assumed_run_and_an_error()
    {
        var layout = SmallHarness.Harness.Layout;
        var plan = HarnessPlanner.Plan(SmallHarness.Harness with { Layout = layout with { Paths = [.. layout.Paths.Where(p => p.To != "ignition coil")] } }, PlanningOptions.Usual);
        Assert.Contains(plan.PlanningFindings, f => f.Rule == "no-path" && f.Where.Contains("ignition coil"));
        Assert.Contains(plan.Tree.Segments, s => s.Assumed && s.To == "ignition coil");
    }

    [Fact]
    public void An_unknown_path_leaves_its_lengths_unknown()
    {
        var layout = SmallHarness.Harness.Layout;
        var paths = layout.Paths.Select(p => p.To == "ignition coil" ? p with { LengthMm = null, Known = LengthKnown.Unknown } : p);
        var plan = HarnessPlanner.Plan(SmallHarness.Harness with { Layout = layout with { Paths = [.. paths] } }, PlanningOptions.Usual);
        var wire = plan.Wires.Single(w => w.Circuit == "ignition");
        Assert.Null(wire.PathLengthMm);
        Assert.Null(wire.CutLengthMm);
    }

    private static string Told(Wire w) => $"{w.Id} {w.From} {w.To} {w.SizeLabel} {w.CutLengthMm} {w.DecidedBy} {w.RunnerUp} {w.Margin} {w.Worst}";

    private static Wire HornFeed(Harness harness) => HarnessPlanner.Plan(harness, PlanningOptions.Usual).Wires.Single(w => w.Circuit == "horn");

    private static Harness WithHorn(Harness harness, double amperes) =>
        harness with { Things = [.. harness.Things.Select(t => t.Id == "horn" ? t with { Elements = [t.Elements[0] with { CurrentA = amperes }] } : t)] };
}
