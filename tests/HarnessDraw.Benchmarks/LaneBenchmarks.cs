using BenchmarkDotNet.Attributes;
using HarnessDraw.Layout;
using HarnessDraw.Tests.Layout;

namespace HarnessDraw.Benchmarks;

/// <summary>Layout alone, of random harnesses on one chart each: shape, lane order, crossings and their bounds, and one packing.</summary>
[MemoryDiagnoser]
public class LaneBenchmarks
{
    private ChartProblem _problem = null!;

    [Params(12, 60, 150, 500, 2000)]
    public int Circuits { get; set; }

    [GlobalSetup]
    public void Prepare() => _problem = RandomChart.Of(RandomHarness.OfLongRun(2, Circuits));

    [Benchmark]
    public object Order() => ChartLayout.Start(_problem, new());

    [Benchmark]
    public object OrderAndPack() => ChartLayout.Start(_problem, new()).Pack();
}
