using HarnessDraw.Benchmarks;

// 'graph FILE' writes the wires of a description as a graph for the comparison; everything else goes to BenchmarkDotNet.
if (args is ["graph", var file])
{
    Console.Out.Write(WireGraph.Write(ExampleHarness.Planned(file).Plan));
    return;
}

BenchmarkDotNet.Running.BenchmarkSwitcher.FromAssembly(typeof(ExampleHarness).Assembly).Run(args);
