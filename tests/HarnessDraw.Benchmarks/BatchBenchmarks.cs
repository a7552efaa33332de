using BenchmarkDotNet.Attributes;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Writing.Lists;
using HarnessDraw.Writing.Workbook;

namespace HarnessDraw.Benchmarks;

/// <summary>A batch of 2,000 rows: reels, cut list as CSV, workbook with every list.</summary>
[MemoryDiagnoser]
public class BatchBenchmarks
{
    private const int Rows = 2000;
    private FabricationOrder _order = null!;

    [GlobalSetup]
    public void Prepare()
    {
        var plan = ExampleHarness.Planned(ExampleHarness.PathOf(ExampleHarness.Saloon)).Plan;
        _order = FabricationOrder.Everything(plan with
        {
            Wires = [.. Enumerable.Range(0, Rows).Select(i => plan.Wires[i % plan.Wires.Length] with { Id = $"W{i:0000}", CutLengthMm = 300 + (i * 37 % 2900) })],
            Splices = [],
            Cavities = [],
        });
    }

    [Benchmark]
    public object Reels() => ReelPlanner.Plan(_order, new());

    [Benchmark]
    public object CutList() => ListCsvWriter.Write(CutListTables.Of(_order, "reel", ReelPlanner.Plan(_order, new()).CutFrom));

    [Benchmark]
    public object Workbook() => CutListWorkbook.Write(_order);
}
