using System.Diagnostics;
using System.Globalization;
using HarnessDraw.Tests.Troubleshooting;

namespace HarnessDraw.Benchmarks;

/// <summary>Simulated technicians over every single fault of the examples that shows.</summary>
internal static class TechnicianSurvey
{
    /// <param name="arguments">
    /// Names of examples; 'every=N' searches for every N-th fault only; 'part=K/N' for the K-th of N parts of them; 'into=FILE' adds a line a search to the file,
    /// 'table=FILE' prints the table of what such a file holds, and nothing is searched.
    /// </param>
    public static void Print(string[] arguments)
    {
        string? Given(string key) => arguments.FirstOrDefault(a => a.StartsWith(key + "=", StringComparison.Ordinal))?[(key.Length + 1)..];
        Console.Write(TechnicianTable.Head);
        if (Given("table") is { } table)
        {
            foreach (var example in File.ReadLines(table).Select(TechnicianTable.Read).GroupBy(s => s.Name, StringComparer.Ordinal))
            {
                Console.Write(TechnicianTable.Row(example.Key, [.. example.Select(s => s.Search)]));
            }

            return;
        }

        var every = int.Parse(Given("every") ?? "1", CultureInfo.InvariantCulture);
        int[] part = [.. (Given("part") ?? "1/1").Split('/').Select(p => int.Parse(p, CultureInfo.InvariantCulture))];
        var names = arguments.Where(a => !a.Contains('=', StringComparison.Ordinal)).ToArray();
        foreach (var name in names.Length > 0 ? names : [ExampleHarness.Saloon, ExampleHarness.Tractor, ExampleHarness.Coach])
        {
            var watch = Stopwatch.StartNew();
            var technician = new Technician(ExampleHarness.Planned(ExampleHarness.PathOf(name)).Plan);
            Console.Error.WriteLine($"{name}: {technician.Ranking.Faults.Length} faults solved in {watch.ElapsedMilliseconds} ms");
            var searches = TechnicianTable.Searches(technician, every, part[0] - 1, part[1]);
            Console.Write(TechnicianTable.Row(name, searches));
            if (Given("into") is { } into)
            {
                File.AppendAllLines(into, searches.Select(s => TechnicianTable.Line(name, s)));
            }

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
