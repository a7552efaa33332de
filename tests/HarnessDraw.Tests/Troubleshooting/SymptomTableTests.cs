using HarnessDraw.Tests.Sheets;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Tests.Troubleshooting;

public class SymptomTableTests(ITestOutputHelper output)
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_fault_stands_once_and_every_load_that_works_has_faults(string name)
    {
        var plan = ExamplePlans.Of(name);
        var bench = new FaultBench(plan);
        var table = SymptomTable.Of(plan);
        output.WriteLine($"{table.Rows.Length} rows, {table.Unseen.Length} faults unseen");
        var faults = bench.Faults(FaultWeights.InService);
        Assert.Equal(faults.Length, table.Rows.Sum(r => r.Faults.Length) + table.Unseen.Length);
        foreach (var load in bench.Loads.Where((_, l) => bench.ShouldWork.Any(s => s[l])))
        {
            // its own burnt-out row: dead, and nothing else
            Assert.Contains(table.Rows, r => r.Faults.Any(f => f.Part == load.Name && f.Kind == FaultKind.Open) && r.Sees.Any(s => s.Load.Name == load.Name && s.Seen == LoadClass.Dead));
        }
    }

    [Fact]
    public void A_blown_fuse_takes_its_circuits_with_it_and_a_short_opens_it()
    {
        var table = SymptomTable.Of(ExamplePlans.Of("brackmere-six"));
        var fuse = table.Rows.Single(r => r.Faults.Any(f => f.Part == "fuse K17" && f.Kind == FaultKind.Open));
        Assert.Equal(["front lamp left", "front lamp right", "repeater left", "repeater right"], fuse.Sees.Where(s => s.Seen == LoadClass.Dead).Select(s => s.Load.Thing).Distinct().Order(StringComparer.Ordinal));
        var shorted = table.Rows.First(r => r.Faults.Any(f => f.Kind == FaultKind.ShortToGround && f.Part.Contains("turn left", StringComparison.Ordinal)));
        Assert.Contains("K17", shorted.Blown);
    }
}
