using BenchmarkDotNet.Attributes;
using HarnessDraw.Sheets;

namespace HarnessDraw.Benchmarks;

/// <summary>A checked plan to each kind of sheet.</summary>
[MemoryDiagnoser]
public class LayoutBenchmarks
{
    private Checking.CheckedPlan _planned = null!;

    [Params(ExampleHarness.Saloon, ExampleHarness.Tractor, ExampleHarness.Coach)]
    public string Example { get; set; } = "";

    [GlobalSetup]
    public void Prepare() => _planned = ExampleHarness.Planned(ExampleHarness.PathOf(Example));

    [Benchmark]
    public object Chart() => WallChart.Compose(_planned.Plan, _planned.Findings, new SheetOptions());

    [Benchmark]
    public object Connectors() => ConnectorSheets.Compose(_planned.Plan, _planned.Findings, new SheetOptions());

    [Benchmark]
    public object CutList() => CutListSheets.Compose(_planned.Plan, _planned.Findings, new SheetOptions());
}
