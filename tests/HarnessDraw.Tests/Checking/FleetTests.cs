using HarnessDraw.Checking;
using HarnessDraw.Fabrication;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Reading;

namespace HarnessDraw.Tests.Checking;

/// <summary>A fleet of one harness in many builds: 64 wires, five options of three choices, two rules between them.</summary>
public class FleetTests
{
    [Fact]
    public void All_builds_of_64_wires_and_five_options_are_listed_and_checked()
    {
        var (plan, findings) = Check(FleetHarness.Read("10 A"));
        var steps = BuildSteps.Of(plan);
        Assert.Equal(64, plan.Wires.Length);
        // rear and roof: 9 pairs less 'tow' without 'rack' twice; front and body: 9 less 'plough' with 'crane'; cab: 3
        Assert.Equal(7 * 8 * 3, plan.BuildCount);
        Assert.Equal(plan.BuildCount, plan.Builds.Length);
        Assert.Equal(plan.Builds.Length * plan.Wires.Count(w => !w.Builds.IsAlways), steps.Length);
        Assert.Equal(findings.Length, findings.DistinctBy(f => (f.Rule, f.Message)).Count());
    }

    [Fact]
    public void A_fuse_that_only_two_options_overload_together_is_told_once_with_those_two()
    {
        // lamps 0, 5 and 10 hang on F1: 5 A each, the second only with 'tow', the third only with 'plough'
        var (_, findings) = Check(FleetHarness.Read("15 A"));
        var sum = Assert.Single(findings, f => f.Rule is "fuse-state-sum" or "fuse-load-high" && f.Where.Contains("F1"));
        // 'tow' needs 'rack', which is therefore not said
        Assert.Equal("front=plough, rear=tow", sum.Builds.ToString());
        var space = new OptionSpace(FleetHarness.Read("15 A").Options, FleetHarness.Read("15 A").OptionRules);
        Assert.All(findings, f => Assert.Equal(space.Smallest(f.Builds).ToString(), f.Builds.ToString()));
    }

    [Fact]
    public void Rules_that_leave_no_build_are_told_where_they_stand_and_nothing_is_planned()
    {
        var vehicle = new SmallVehicle { Rest = "options:\n  charging: { one of: [exciter, single wire], usual: exciter }\n  cooling: { one of: [belt fan, electric fan], usual: belt fan }\n  rules: [§exciter needs electric fan, exciter excludes electric fan, single wire needs electric fan, electric fan excludes single wire]\n" };
        var message = vehicle.MessageAtMark();
        Assert.Contains("the rules leave no build at all: each of the 4 combinations of charging, cooling breaks one", message.Message, StringComparison.Ordinal);
        Assert.True(vehicle.Read().Failed);
    }

    private static (Plan Plan, System.Collections.Immutable.ImmutableArray<Finding> Findings) Check(Harness harness)
    {
        var plan = HarnessPlanner.Plan(harness, PlanningOptions.Usual);
        return (plan, HarnessChecker.Check(plan, RuleSettings.BuiltIn));
    }
}
