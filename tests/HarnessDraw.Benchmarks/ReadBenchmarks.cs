using BenchmarkDotNet.Attributes;
using HarnessDraw.Reading;

namespace HarnessDraw.Benchmarks;

/// <summary>YAML text to a resolved harness.</summary>
[MemoryDiagnoser]
public class ReadBenchmarks
{
    [Params(ExampleHarness.Saloon, ExampleHarness.Tractor, ExampleHarness.Coach)]
    public string Example { get; set; } = "";

    [Benchmark]
    public object Read() => HarnessReader.Read(ExampleHarness.PathOf(Example), new DiskFiles());
}
