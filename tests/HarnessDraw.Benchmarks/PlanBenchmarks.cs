using BenchmarkDotNet.Attributes;
using HarnessDraw.Checking;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Reading;

namespace HarnessDraw.Benchmarks;

/// <summary>A resolved harness to a plan, and a plan to its findings.</summary>
[MemoryDiagnoser]
public class PlanBenchmarks
{
    private Harness _harness = null!;
    private Plan _plan = null!;

    [Params(ExampleHarness.Saloon, ExampleHarness.Tractor, ExampleHarness.Coach)]
    public string Example { get; set; } = "";

    [GlobalSetup]
    public void Prepare()
    {
        _harness = HarnessReader.Read(ExampleHarness.PathOf(Example), new DiskFiles()).Value!;
        _plan = HarnessPlanner.Plan(_harness, new PlanningOptions());
    }

    [Benchmark]
    public object Plan() => HarnessPlanner.Plan(_harness, new PlanningOptions());

    [Benchmark]
    public object Check() => HarnessChecker.Check(_plan, new RuleSettings());
}
