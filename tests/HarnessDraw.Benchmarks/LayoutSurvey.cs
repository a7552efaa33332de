using System.Diagnostics;
using System.Globalization;
using HarnessDraw.Sheets;
using HarnessDraw.Writing.Svg;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tests.Layout;

namespace HarnessDraw.Benchmarks;

/// <summary>
/// Draws many random harnesses and prints, a line a size, what was measured on the finished sheets by the checker of the tests: a long run whose table is kept.
/// </summary>
internal static class LayoutSurvey
{
    private static readonly string[] Usual = ["12=75", "30=75", "60=75", "150=75", "500=10", "2000=3"];

    /// <summary>
    /// Prints the table; sizes as '60=40' (circuits = seeds) or '60=21-40' (from seed to seed), none: the usual long run; with 'quick' among them the checker, which takes nine tenths of the time, is
    /// left out: crossings, order of loads and papers alone. 'bands=24' draws bundles of more than 24 wires as bands. 'into=FILE' adds a line a harness to the file,
    /// 'table=FILE' prints the table of what such a file holds, and nothing is drawn.
    /// </summary>
    public static void Print(string[] asked)
    {
        string? Given(string key) => asked.FirstOrDefault(a => a.StartsWith(key + "=", StringComparison.Ordinal))?[(key.Length + 1)..];
        Console.WriteLine(LayoutTable.Head);
        if (Given("table") is { } table)
        {
            foreach (var size in File.ReadLines(table).Select(LayoutTable.Read).GroupBy(r => r.Circuits).OrderBy(g => g.Key))
            {
                Console.WriteLine(LayoutTable.Row(size.Key, [.. size]));
            }

            return;
        }

        var options = new SheetOptions { BandOver = int.Parse(Given("bands") ?? "0", CultureInfo.InvariantCulture) };
        var sizes = asked.Where(a => char.IsAsciiDigit(a[0])).ToArray();
        foreach (var size in sizes.Length > 0 ? sizes : Usual)
        {
            var parts = size.Split('=', '-');
            var (circuits, last) = (int.Parse(parts[0], CultureInfo.InvariantCulture), int.Parse(parts[^1], CultureInfo.InvariantCulture));
            var results = new List<LayoutResult>();
            for (var seed = parts.Length > 2 ? int.Parse(parts[1], CultureInfo.InvariantCulture) : 1; seed <= last; seed++)
            {
                results.Add(Draw(circuits, seed, options, asked.Contains("quick")));
                if (Given("into") is { } into)
                {
                    File.AppendAllLines(into, [LayoutTable.Line(results[^1])]);
                }
            }

            Console.WriteLine(LayoutTable.Row(circuits, results));
        }
    }

    /// <summary>Writes the charts of one harness of the long run as SVG and prints what the checker finds on them and which wires cross twice, and where.</summary>
    public static void Show(int circuits, int seed, string folder)
    {
        var plan = RandomHarness.OfLongRun(seed, circuits);
        var wires = plan.Wires.ToDictionary(w => w.Id, w => $"{w.Id} ({w.From.At} to {w.To.At})", StringComparer.Ordinal);
        var result = WallChart.Compose(plan, [], new SheetOptions());
        Console.WriteLine(result.Refused ?? result.Figures!.ToString());
        Directory.CreateDirectory(folder);
        foreach (var (sheet, n) in result.Sheets.Select((s, i) => (s, i + 1)))
        {
            File.WriteAllBytes(Path.Combine(folder, $"{circuits}-{seed}.{n}.svg"), SvgWriter.Write(sheet));
            foreach (var fault in SheetChecker.Check(sheet))
            {
                Console.WriteLine($"{n}: {fault}");
            }

            foreach (var (pair, places) in LaneMeeting.Places(sheet).Where(m => m.Value.Count > 1))
            {
                Console.WriteLine($"{n}: {wires[pair.A]} and {wires[pair.B]} meet at {string.Join(" and ", places.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.0}, {p.Y:0.0}")))}");
            }
        }
    }

    private static LayoutResult Draw(int circuits, int seed, SheetOptions options, bool isQuick)
    {
        var plan = RandomHarness.OfLongRun(seed, circuits);
        var watch = Stopwatch.StartNew();
        var result = WallChart.Compose(plan, [], options);
        var took = watch.Elapsed.TotalSeconds;
        if (result.Refused is not null)
        {
            Console.Error.WriteLine($"{circuits} circuits, seed {seed}: {result.Refused}");
            return new(circuits, seed) { Seconds = took };
        }

        var faults = isQuick ? null : new SortedDictionary<string, int>(result.Sheets.SelectMany(s => SheetChecker.Check(s)).GroupBy(f => f.Kind).ToDictionary(g => g.Key, g => g.Count()), StringComparer.Ordinal);
        var twice = result.Sheets.Sum(s => LaneMeeting.Crossings(s).Count(m => m.Value > 1));
        if (twice > 0 || faults?.Count > 0)
        {
            Console.Error.WriteLine($"{circuits} circuits, seed {seed}: {twice} pairs twice, {string.Join(", ", faults?.Select(f => $"{f.Key} {f.Value}") ?? [])}");
        }

        var figures = result.Figures!;
        return new(circuits, seed)
        {
            Paper = figures.Paper.StartsWith("roll", StringComparison.OrdinalIgnoreCase) ? "roll" : figures.Paper,
            Sheets = result.Sheets.Length,
            Crossings = figures.Crossings,
            Bound = figures.CrossingsLowerBound,
            StraightBound = figures.CrossingsStraightLaneBound,
            PairsTwice = twice,
            LeadersCrossing = result.Sheets.Sum(LaneMeeting.Leaders),
            Faults = faults,
            LaneM = result.Sheets.Sum(LaneMeeting.LengthMm) / 1000,
            Ratio = result.Sheets.Average(s => s.Paper.WidthMm / s.Paper.HeightMm),
            Tau = DrawnPlaces.Tau(plan, result.Sheets),
            TauOfAll = DrawnPlaces.Tau(plan, result.Sheets, 0),
            Seconds = took,
        };
    }
}
