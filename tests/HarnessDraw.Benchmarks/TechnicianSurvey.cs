using System.Diagnostics;
using HarnessDraw.Tests.Troubleshooting;

namespace HarnessDraw.Benchmarks;

/// <summary>Simulated technicians over every single fault of the examples that shows.</summary>
internal static class TechnicianSurvey
{
    /// <param name="arguments">Names of examples; 'every=N' searches for every N-th fault only.</param>
    public static void Print(string[] arguments)
    {
        var every = arguments.Where(a => a.StartsWith("every=", StringComparison.Ordinal)).Select(a => int.Parse(a["every=".Length..], System.Globalization.CultureInfo.InvariantCulture)).FirstOrDefault(1);
        var names = arguments.Where(a => !a.StartsWith("every=", StringComparison.Ordinal)).ToArray();
        Console.Write(TechnicianTable.Head);
        foreach (var name in names.Length > 0 ? names : [ExampleHarness.Saloon, ExampleHarness.Tractor, ExampleHarness.Coach])
        {
            var watch = Stopwatch.StartNew();
            var technician = new Technician(ExampleHarness.Planned(ExampleHarness.PathOf(name)).Plan);
            Console.Error.WriteLine($"{name}: {technician.Ranking.Faults.Length} faults solved in {watch.ElapsedMilliseconds} ms");
            var searches = TechnicianTable.Searches(technician, every);
            Console.Write(TechnicianTable.Row(name, searches));
            Console.Error.WriteLine($"{name}: searched after {watch.ElapsedMilliseconds} ms");
            foreach (var missed in searches.Where(s => !s.FirstInThree))
            {
                Console.Error.WriteLine($"  not within three{(missed.FirstAtLast ? "" : ", nor at the end")}: {missed.Fault}");
                foreach (var course in missed.Course)
                {
                    Console.Error.WriteLine($"    {course}");
                }
            }
        }
    }
}
