using BenchmarkDotNet.Attributes;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Writing.Pdf;
using HarnessDraw.Writing.Png;
using HarnessDraw.Writing.Svg;

namespace HarnessDraw.Benchmarks;

/// <summary>The wall chart to each file format.</summary>
[MemoryDiagnoser]
public class WriteBenchmarks
{
    private Sheet _chart = null!;

    [Params(ExampleHarness.Saloon, ExampleHarness.Coach)]
    public string Example { get; set; } = "";

    [GlobalSetup]
    public void Prepare()
    {
        var planned = ExampleHarness.Planned(ExampleHarness.PathOf(Example));
        _chart = WallChart.Compose(planned.Plan, planned.Findings, new SheetOptions()).Sheets[0];
    }

    [Benchmark]
    public object Svg() => SvgWriter.Write(_chart);

    [Benchmark]
    public object Png() => PngWriter.Write(_chart);

    [Benchmark]
    public object Pdf() => PdfWriter.Write([_chart], new PdfOptions("wall chart"));
}
