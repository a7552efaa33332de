using HarnessDraw.Benchmarks;

// 'layouts [SIZE=SEEDS ...]' draws random harnesses and prints what was measured on the sheets; 'graph FILE' writes the wires of a description as a graph for the comparison; everything else goes to BenchmarkDotNet.
if (args is ["graph", var file])
{
    Console.Out.Write(WireGraph.Write(ExampleHarness.Planned(file).Plan));
    return;
}

if (args is ["layouts", .. var sizes])
{
    LayoutSurvey.Print(sizes);
    return;
}

BenchmarkDotNet.Running.BenchmarkSwitcher.FromAssembly(typeof(ExampleHarness).Assembly).Run(args);
