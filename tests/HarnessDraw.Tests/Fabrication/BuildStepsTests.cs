using HarnessDraw.Fabrication;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Fabrication;

public class BuildStepsTests
{
    [Fact]
    public void Every_build_tells_every_optional_wire_once_and_fits_what_its_plan_holds()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        Assert.Equal(plan.BuildCount, plan.Builds.Length);
        var steps = BuildSteps.Of(plan);
        var optional = plan.Wires.Count(w => !w.Builds.IsAlways);
        Assert.Equal(plan.Builds.Length * optional, steps.Length);
        foreach (var (build, told) in plan.Builds.Zip(steps.Chunk(optional)))
        {
            Assert.Equal(plan.For(build).Wires.Where(w => !w.Builds.IsAlways).Select(w => w.Id).Order(StringComparer.Ordinal), told.Where(s => s.What == "fit").Select(s => s.Wire.Id).Order(StringComparer.Ordinal));
            Assert.All(told.Where(s => s.What != "fit"), s => Assert.Contains(s.What, new[] { "leave off", "remove", "cap" }));
        }

        Assert.True(steps[0].IsUsual);
    }
}
