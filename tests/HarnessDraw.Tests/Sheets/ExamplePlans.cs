using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Sheets;

/// <summary>The plans of the descriptions in the examples folder.</summary>
internal static class ExamplePlans
{
    public static TheoryData<string> Names => ["brackmere-six", "dunmarrow-18", "aldervane-coach"];

    public static Plan Of(string name)
    {
        var outcome = HarnessReader.Read(Repository.PathOf("examples", name + ".yaml"), new DiskFiles());
        Assert.False(outcome.Failed, string.Join('\n', outcome.Diagnostics));
        return HarnessPlanner.Plan(outcome.Value!, new PlanningOptions());
    }
}
