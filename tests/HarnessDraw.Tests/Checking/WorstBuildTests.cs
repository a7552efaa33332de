using System.Collections.Immutable;
using HarnessDraw.Checking;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>The worst valid build counts, and the finding names the smallest option set that causes it.</summary>
public sealed class WorstBuildTests
{
    [Theory]
    [InlineData(12.3, false)]
    [InlineData(11.9, true)]
    public void A_drop_in_a_build_that_is_not_the_usual_one_is_found(double voltsAtLamp, bool found)
    {
        var single = SmallPlan.Plan.Builds[1];
        ImmutableArray<NodeVolts> nodes = [.. SmallPlan.Plan.Nodes.Select(n => n.Node == "headlamp left.56b" ? n with { Volts = n.Volts.ToImmutableSortedDictionary(StringComparer.Ordinal).SetItem("night", voltsAtLamp) } : n)];
        var plan = SmallPlan.Plan with { FurtherBuilds = [new(single, nodes)] };
        var drops = HarnessChecker.Check(plan, RuleSettings.BuiltIn).Where(f => f.Rule == "loop-drop").ToList();
        Assert.Equal(found, drops.Count > 0);
        Assert.All(drops, d => Assert.True(d.Builds.Holds(single) && !d.Builds.Holds(SmallPlan.Plan.Builds[0]), d.Message));
    }
}
