using System.Diagnostics;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Benchmarks;

/// <summary>How long a person waits for the first ranking and the next test of a diagnosis.</summary>
internal static class QuickAnswers
{
    private const int Runs = 5;

    /// <summary>Milliseconds of the first ranking (with its test) and of the next test after a reading, by load that is complained of: least and most of all loads tried.</summary>
    public static void Suspects(string name)
    {
        var plan = ExampleHarness.Planned(ExampleHarness.PathOf(name)).Plan;
        var loads = new FaultBench(plan).Loads.Select(l => l.Name).Distinct(StringComparer.Ordinal).Where((_, i) => i % 12 == 0).ToList();
        List<double> first = [], next = [];
        foreach (var load in loads)
        {
            var (best, after) = (double.MaxValue, double.MaxValue);
            for (var run = 0; run < Runs; run++)
            {
                var shooter = new Troubleshooter(plan);
                VehicleNote complaint = new(NoteKind.Dead, load, null, 0);
                var watch = Stopwatch.StartNew();
                var diagnosis = shooter.Diagnose([complaint]);
                best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
                if (diagnosis.Next is { Kind: TestKind.Volts or TestKind.Lost } test)
                {
                    VehicleNote reading = new(test.Kind == TestKind.Lost ? NoteKind.Lost : NoteKind.Volts, diagnosis.Bench.Points[test.Number].Name, diagnosis.Bench.States[test.State].Id, test.Outcomes[0].LowV);
                    watch.Restart();
                    shooter.Diagnose([complaint, reading]);
                    after = Math.Min(after, watch.Elapsed.TotalMilliseconds);
                }
            }

            first.Add(best);
            if (after < double.MaxValue)
            {
                next.Add(after);
            }
        }

        Console.WriteLine(FormattableString.Invariant($"{name}: {loads.Count} loads, first ranking {first.Min():0} to {first.Max():0} ms, next test {next.Min():0} to {next.Max():0} ms"));
    }
}
