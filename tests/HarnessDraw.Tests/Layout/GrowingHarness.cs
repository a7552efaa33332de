using System.Diagnostics;
using System.Globalization;
using System.Text;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Layout;

/// <summary>Harnesses of a wished number of lamp circuits along one trunk, four on a fuse, to see how planning, states and faults grow.</summary>
internal static class GrowingHarness
{
    private const int OnAFuse = 4;
    private const int AtAPlace = 6;

    /// <summary>A table in Markdown: milliseconds, the best of a few runs, on one thread of this machine.</summary>
    public static string Table(params int[] circuits)
    {
        var text = new StringBuilder("| circuits | wires | plan | states | faults solved | faults |\n|--:|--:|--:|--:|--:|--:|\n");
        foreach (var n in circuits)
        {
            var harness = Read(n);
            var plan = HarnessPlanner.Plan(harness, PlanningOptions.Usual);
            var study = FaultFinder.Find(plan);
            text.Append(CultureInfo.InvariantCulture, $"| {n} | {plan.Wires.Length} | {Best(() => HarnessPlanner.Plan(harness, PlanningOptions.Usual)):0} ms | {Best(() => NetworkSolver.Solve(plan)):0} ms | {study.Solved} | {Best(() => FaultFinder.Find(plan)):0} ms |\n");
        }

        return text.ToString();
    }

    /// <summary>Writes growth.yaml and layout.yaml into a folder.</summary>
    public static void Put(int circuits, string folder)
    {
        File.WriteAllText(Path.Combine(folder, "growth.yaml"), Description(circuits));
        File.WriteAllText(Path.Combine(folder, "layout.yaml"), Layout(circuits));
    }

    public static Plan Plan(int circuits) => HarnessPlanner.Plan(Read(circuits), PlanningOptions.Usual);

    private static HarnessDraw.Model.Harness Read(int circuits)
    {
        var read = HarnessReader.Read("growth.yaml", new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["growth.yaml"] = Description(circuits), ["layout.yaml"] = Layout(circuits) }));
        return read.Value ?? throw new InvalidOperationException(string.Join('\n', read.Diagnostics.Select(d => d.Message)));
    }

    private static double Best(Func<object> run)
    {
        var best = double.PositiveInfinity;
        var all = Stopwatch.StartNew();
        for (var i = 0; i < 10 && (i < 2 || all.Elapsed.TotalSeconds < 8); i++)
        {
            var watch = Stopwatch.StartNew();
            run();
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
        }

        return best;
    }

    private static string Description(int circuits)
    {
        var text = new StringBuilder("harness: Growth\nvehicle: Invented\nvehicle-layout: layout.yaml\npower:\n  ground: negative\n  returns-by: body\n  sources:\n    battery: { kind: battery, nominal: 24 V, at: place 0, posts: { plus: M8, minus: M8 } }\n    alternator: { kind: alternator, nominal: 24 V, output: 200 A, at: place 0, studs: { B+: M8 } }\n");
        string On(int from, int step) => string.Join(", ", Enumerable.Range(0, circuits).Where(i => i % step == from).Select(i => $"lamp {i}"));
        text.Append(CultureInfo.InvariantCulture, $"states:\n  first: {{ key: run, on: [{On(0, 2)}] }}\n  second: {{ key: run, on: [{On(1, 2)}] }}\n  running: {{ key: run, engine: running, on: [{On(0, 3)}] }}\n  night: {{ key: run, engine: running, on: [{On(1, 3)}] }}\n  rain: {{ key: run, engine: running, on: [{On(2, 3)}] }}\n");
        text.Append("things:\n  bar: { at: place 0, bar: 4 studs M8 }\n");
        for (var p = 0; p <= circuits / AtAPlace; p++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  ground {p}: {{ at: place {p}, ground: M8 }}\n");
        }

        for (var i = 0; i < circuits; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  bulb {i}: {{ at: place {i / AtAPlace}, blades: {{ 1: 6.3 mm, 2: 6.3 mm }}, lamp: {{ 1: 21 W }}, returns: 2 }}\n");
        }

        text.Append("protection:\n  M1: { kind: bolt-in, on: bar, rating: 250 A }\n");
        for (var f = 0; f <= circuits / OnAFuse; f++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  F{f}: {{ kind: blade, on: bar }}\n");
        }

        text.Append("circuits:\n  battery cable: { from: battery.plus, feeds: [bar], live: always, unfused: short and sheathed }\n  battery ground: { from: battery.minus, to: ground 0 }\n  charge lead: { from: alternator.B+, feeds: [M1.out], live: always, protected-by: M1 }\n");
        for (var i = 0; i < circuits; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  lamp {i}: {{ from: F{i / OnAFuse}, feeds: [bulb {i}.1], live: run }}\n");
        }

        return text.ToString();
    }

    private static string Layout(int circuits)
    {
        var text = new StringBuilder("vehicle-layout: A long one\nroot: place 0\nplaces:\n");
        for (var p = 0; p <= circuits / AtAPlace; p++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  place {p}: {{ at: [{150 * p}, 0, 500] }}\n");
        }

        text.Append("paths:\n");
        for (var p = 1; p <= circuits / AtAPlace; p++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - {{ from: place {p - 1}, to: place {p}, measured: 160 mm }}\n");
        }

        return text.ToString();
    }
}
