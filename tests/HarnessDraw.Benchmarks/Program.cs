using HarnessDraw.Benchmarks;
using HarnessDraw.Tests.Layout;

// 'layouts [quick] [SIZE=SEEDS ...]' draws random harnesses and prints what was measured on the sheets; 'layout CIRCUITS SEED FOLDER' shows one of them; 'graph FILE' writes the wires of a description as a graph for the comparison; everything else goes to BenchmarkDotNet.
if (args is ["graph", var file])
{
    Console.Out.Write(WireGraph.Write(ExampleHarness.Planned(file).Plan));
    return;
}

if (args is ["order", var example])
{
    var planned = ExampleHarness.Planned(example).Plan;
    var charts = HarnessDraw.Sheets.WallChart.Compose(planned, [], new()).Sheets;
    Console.WriteLine($"{DrawnPlaces.Tau(planned, charts)}, with level pairs {DrawnPlaces.Tau(planned, charts, 0)}");
    return;
}

if (args is ["layout", var many, var seed, var into])
{
    LayoutSurvey.Show(int.Parse(many, System.Globalization.CultureInfo.InvariantCulture), int.Parse(seed, System.Globalization.CultureInfo.InvariantCulture), into);
    return;
}

if (args is ["layouts", .. var sizes])
{
    LayoutSurvey.Print(sizes);
    return;
}

// 'growth' prints how planning, states and faults grow with the number of circuits
if (args is ["growth"])
{
    Console.Out.Write(GrowingHarness.Table(30, 150, 600));
    return;
}

// 'suspects NAME' prints how long a diagnosis takes
if (args is ["suspects", var vehicle])
{
    QuickAnswers.Suspects(vehicle);
    return;
}

// 'technicians [NAME ...] [every=N] [part=K/N] [into=FILE]' prints how simulated technicians find every single fault of the examples; 'technicians table=FILE' adds up what was put into the file
if (args is ["technicians", .. var vehicles])
{
    TechnicianSurvey.Print(vehicles);
    return;
}

// 'generate CIRCUITS FOLDER' writes the description of a growing harness and its layout
if (args is ["generate", var circuits, var folder])
{
    GrowingHarness.Put(int.Parse(circuits, System.Globalization.CultureInfo.InvariantCulture), folder);
    return;
}

BenchmarkDotNet.Running.BenchmarkSwitcher.FromAssembly(typeof(ExampleHarness).Assembly).Run(args);
