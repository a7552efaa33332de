using BenchmarkDotNet.Attributes;
using HarnessDraw.Checking;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Checking;

namespace HarnessDraw.Benchmarks;

/// <summary>Many builds and many pieces: a fleet of 168 builds listed and checked (to reach: 2 s), 2,000 pieces cut from reels (to reach: 1 s).</summary>
[MemoryDiagnoser]
public class FleetBenchmarks
{
    private Harness _fleet = null!;
    private PackingTask _pieces = null!;

    [GlobalSetup]
    public void Prepare()
    {
        _fleet = FleetHarness.Read("10 A");
        var next = 7u;
        int Below(int n) => (int)((next = (next * 1664525) + 1013904223) >> 8) % n;
        _pieces = PackingTask.Of(299_700, [.. Enumerable.Range(0, 2000).Select(_ => 3000L + (100 * Below(300)))]);
    }

    [Benchmark]
    public object Builds()
    {
        var plan = HarnessPlanner.Plan(_fleet, PlanningOptions.Usual);
        return (HarnessChecker.Check(plan, RuleSettings.BuiltIn), BuildSteps.Of(plan));
    }

    [Benchmark]
    public object Pieces() => BarPacker.Pack(_pieces, PackingEffort.Quick);
}
