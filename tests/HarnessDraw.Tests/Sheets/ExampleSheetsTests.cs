using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tracing;

namespace HarnessDraw.Tests.Sheets;

public class ExampleSheetsTests
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Connector_sheets_and_cut_list_of_the_examples_are_faultless_and_whole(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var black in new[] { false, true })
        {
            var connectors = ConnectorSheets.Compose(plan, [], new() { BlackInk = black });
            var cutList = CutListSheets.Compose(plan, [], new() { BlackInk = black });
            SheetPictures.Put(name, [.. connectors.Sheets, .. cutList.Sheets]);
            Assert.Null(connectors.Refused);
            Assert.Null(cutList.Refused);
            Assert.Equal([], connectors.Sheets.Concat(cutList.Sheets).SelectMany(s => SheetChecker.Check(s).Select(f => $"{s.Title}: {f}")));
            var ids = cutList.Sheets.SelectMany(ItemWalk.Texts).Where(t => t.Weight == FaceWeight.Bold && t.Tag?.For == t.Text).Select(t => t.Text);
            Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), ids.Order(StringComparer.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_circuit_of_the_examples_can_be_followed(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var circuit in plan.Harness.Circuits)
        {
            var trace = CircuitTracer.Trace(plan, circuit.Id).Value!;
            Assert.NotEmpty(trace.Ways);
            Assert.All(TraceTextWriter.Write(trace).Split('\n'), l => Assert.True(l.Length <= 96, l));
            if (Environment.GetEnvironmentVariable("HARNESSDRAW_PICTURES") is { Length: > 0 } folder)
            {
                File.AppendAllText(Path.Combine(folder, name + ".traces.txt"), TraceTextWriter.Write(trace) + "\n=====\n");
            }
        }
    }
}
