using System.Diagnostics;
using System.Globalization;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Fabrication;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Reading;

namespace HarnessDraw.Tests.Checking;

/// <summary>A fleet of one harness in many builds: 64 wires, five options of three choices, two rules between them.</summary>
public class FleetTests
{
    // two wires each, and the two of the battery
    private const int Lamps = 31;

    [Fact]
    public void All_builds_of_64_wires_and_five_options_are_listed_and_checked_within_two_seconds()
    {
        var harness = Harness("10 A");
        var (plan, findings) = Check(harness);
        var steps = BuildSteps.Of(plan);

        // the best of a few: what is timed is the work, not the loading of the program or what else the machine does
        var best = Enumerable.Range(0, 4).Min(_ =>
        {
            var watch = Stopwatch.StartNew();
            BuildSteps.Of(Check(harness).Plan);
            return watch.Elapsed.TotalSeconds;
        });
        Assert.Equal(64, plan.Wires.Length);
        // rear and roof: 9 pairs less 'tow' without 'rack' twice; front and body: 9 less 'plough' with 'crane'; cab: 3
        Assert.Equal(7 * 8 * 3, plan.BuildCount);
        Assert.Equal(plan.BuildCount, plan.Builds.Length);
        Assert.Equal(plan.Builds.Length * plan.Wires.Count(w => !w.Builds.IsAlways), steps.Length);
        Assert.True(best < 2, $"{best:0.00} s");
        Assert.Equal(findings.Length, findings.DistinctBy(f => (f.Rule, f.Message)).Count());
    }

    [Fact]
    public void A_fuse_that_only_two_options_overload_together_is_told_once_with_those_two()
    {
        // lamps 0, 5 and 10 hang on F1: 5 A each, the second only with 'tow', the third only with 'plough'
        var (_, findings) = Check(Harness("15 A"));
        var sum = Assert.Single(findings, f => f.Rule is "fuse-state-sum" or "fuse-load-high" && f.Where.Contains("F1"));
        // 'tow' needs 'rack', which is therefore not said
        Assert.Equal("front=plough, rear=tow", sum.Builds.ToString());
        var space = new OptionSpace(Harness("15 A").Options, Harness("15 A").OptionRules);
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

    private static Harness Harness(string firstFuse)
    {
        var text = new StringBuilder("harness: Fleet\nvehicle: Small van\nvehicle-layout: van.yaml\npower:\n  sources:\n    battery: { kind: battery, nominal: 12 V, at: tray, posts: { plus: M8, minus: M8 } }\n");
        text.Append("options:\n  rear: { one of: [plain, tow, lift], usual: plain }\n  roof: { one of: [bare, rack, bar], usual: bare }\n  front: { one of: [none, plough, winch], usual: none }\n  body: { one of: [box, crane, tank], usual: box }\n  cab: { one of: [day, sleeper, crew], usual: day }\n  rules: [tow needs rack, crane excludes plough]\n");
        string?[] only = [null, "rear: tow", "front: plough", "roof: rack", "body: crane", "cab: sleeper"];
        text.Append("things:\n  bus bar: { at: tray, bar: 12 studs M8 }\n  ground left: { at: wing, ground: M8 }\n  ground right: { at: nose, ground: M8 }\n");
        for (var i = 0; i < Lamps; i++)
        {
            var with = only[OptionOf(i)] is { } option ? $", only-with: {{ {option} }}" : "";
            text.Append(CultureInfo.InvariantCulture, $"  lamp {i}: {{ at: nose, blades: {{ 1: 6.3 mm, 2: 6.3 mm }}, lamp: {{ 1: 5 A }}, returns: {{ 2: ground {(i % 2 == 0 ? "left" : "right")} }}{with} }}\n");
        }

        text.Append("protection:\n");
        for (var f = 1; f <= Lamps; f++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  F{f}: {{ kind: blade, on: bus bar{(f == 1 ? $", rating: {firstFuse}" : "")} }}\n");
        }

        text.Append("circuits:\n  bar feed: { from: battery.plus, feeds: bus bar.1, unfused: short and booted }\n  battery ground: { from: battery.minus, to: ground left }\n");
        for (var i = 0; i < Lamps; i++)
        {
            var fuse = i is 0 or 5 or 10 ? 1 : i + 1;
            text.Append(CultureInfo.InvariantCulture, $"  light {i}: {{ from: F{fuse}, feeds: lamp {i}.1{(only[OptionOf(i)] is { } option ? $", only-with: {{ {option} }}" : "")} }}\n");
        }

        var read = HarnessReader.Read("d/fleet.yaml", new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["d/fleet.yaml"] = text.ToString(), ["d/van.yaml"] = new SmallVehicle().Layout }));
        Assert.False(read.Failed, string.Join('\n', read.Diagnostics.Select(d => d.Message)));
        return read.Value!;
    }

    // lamp 0 is in every build, lamp 5 with 'tow', lamp 10 with 'plough'
    private static int OptionOf(int lamp) => lamp switch { 0 => 0, 5 => 1, 10 => 2, _ => lamp % 6 };
}
