using System.Diagnostics;
using System.Globalization;
using HarnessDraw.Planning;
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
    private const string Bands = "bands=";
    private static readonly string[] Usual = ["12=75", "30=75", "60=75", "150=75", "500=10", "2000=3"];

    private sealed record Drawn(string Paper, int Sheets, int Crossings, int? Bound, int? StraightBound, int PairsTwice, Dictionary<string, int> Faults, double Milliseconds, double Ratio, (double X, double Y)? Tau, (double X, double Y)? TauOfAll);

    /// <summary>
    /// Prints the table; sizes as '60=40' (circuits = seeds), none: the usual long run; with 'quick' among them the checker, which takes nine tenths of the time, is
    /// left out: crossings, order of loads and papers alone. 'bands=24' draws bundles of more than 24 wires as bands.
    /// </summary>
    public static void Print(string[] asked)
    {
        var isQuick = asked.Contains("quick");
        var options = new SheetOptions { BandOver = asked.Where(a => a.StartsWith(Bands, StringComparison.Ordinal)).Select(a => int.Parse(a[Bands.Length..], CultureInfo.InvariantCulture)).FirstOrDefault() };
        var sizes = asked.Where(a => a != "quick" && !a.StartsWith(Bands, StringComparison.Ordinal)).ToArray();
        Console.WriteLine("| circuits | harnesses | refused | on several sheets | papers | faults found on the sheets | crossings | excess over the straight-lane bound | excess over the lower bound | pairs crossing twice | width to height of the chart | tau along, across | with level pairs | s a harness |");
        Console.WriteLine("|--:|--:|--:|--:|---|---|--:|--:|--:|--:|--:|--:|--:|--:|");
        foreach (var size in sizes.Length > 0 ? sizes : Usual)
        {
            var parts = size.Split('=');
            Row(int.Parse(parts[0], CultureInfo.InvariantCulture), int.Parse(parts[1], CultureInfo.InvariantCulture), options, isQuick);
        }
    }

    private static void Row(int circuits, int seeds, SheetOptions options, bool isQuick)
    {
        var drawn = new List<Drawn>();
        var refused = 0;
        for (var seed = 1; seed <= seeds; seed++)
        {
            if (Draw(RandomHarness.OfLongRun(seed, circuits), options, isQuick) is { } result)
            {
                drawn.Add(result);
                if (result.PairsTwice > 0 || result.Faults.Count > 0)
                {
                    Console.Error.WriteLine($"{circuits} circuits, seed {seed}: {result.PairsTwice} pairs twice, {string.Join(", ", result.Faults.Select(f => $"{f.Key} {f.Value}"))}");
                }
            }
            else
            {
                refused++;
                Console.Error.WriteLine($"{circuits} circuits, seed {seed}: refused");
            }
        }

        var faults = drawn.SelectMany(d => d.Faults).GroupBy(f => f.Key).Select(g => $"{g.Key} {g.Sum(f => f.Value)}").ToList();
        var papers = drawn.GroupBy(d => d.Paper).OrderByDescending(g => g.Count()).Select(g => $"{g.Count()} {g.Key}");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {circuits} | {seeds} | {refused} | {drawn.Count(d => d.Sheets > 1)} | {string.Join(", ", papers)} | {(isQuick ? "not looked for" : faults.Count == 0 ? "0" : string.Join(", ", faults))} | {drawn.Sum(d => d.Crossings)} | {Excess(drawn, d => d.StraightBound)} | {Excess(drawn, d => d.Bound)} | {drawn.Sum(d => d.PairsTwice)} | {Mean(drawn, d => d.Ratio):0.00} | {Taus(drawn, d => d.Tau)} | {Taus(drawn, d => d.TauOfAll)} | {Mean(drawn, d => d.Milliseconds) / 1000:0.000} |"));
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

    private static string Excess(List<Drawn> drawn, Func<Drawn, int?> bound)
    {
        var known = drawn.Where(d => bound(d) is not null).ToList();
        var (found, least) = (known.Sum(d => d.Crossings), known.Sum(d => bound(d)!.Value));
        return least == 0 ? "no bound" : string.Create(CultureInfo.InvariantCulture, $"{(found - least) * 100.0 / least:0.00} % ({known.Count})");
    }

    private static string Taus(List<Drawn> drawn, Func<Drawn, (double X, double Y)?> tau)
    {
        var known = drawn.Select(tau).OfType<(double X, double Y)>().ToList();
        return known.Count == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{known.Average(t => t.X):0.00}, {known.Average(t => t.Y):0.00}");
    }

    private static double Mean(List<Drawn> drawn, Func<Drawn, double> value) => drawn.Count == 0 ? 0 : drawn.Average(value);

    private static Drawn? Draw(Plan plan, SheetOptions options, bool isQuick)
    {
        var watch = Stopwatch.StartNew();
        var result = WallChart.Compose(plan, [], options);
        var took = watch.Elapsed.TotalMilliseconds;
        if (result.Refused is not null)
        {
            Console.Error.WriteLine(result.Refused);
            return null;
        }

        var faults = result.Sheets.SelectMany(s => isQuick ? [] : SheetChecker.Check(s)).GroupBy(f => f.Kind).ToDictionary(g => g.Key, g => g.Count());
        var twice = result.Sheets.Sum(s => LaneMeeting.Crossings(s).Count(m => m.Value > 1));
        var ratios = result.Sheets.Select(s => s.Paper.WidthMm / s.Paper.HeightMm);
        var figures = result.Figures!;
        return new(figures.Paper.StartsWith("roll", StringComparison.OrdinalIgnoreCase) ? "roll" : figures.Paper, result.Sheets.Length, figures.Crossings, figures.CrossingsLowerBound, figures.CrossingsStraightLaneBound, twice, faults, took, ratios.Average(), DrawnPlaces.Tau(plan, result.Sheets), DrawnPlaces.Tau(plan, result.Sheets, 0));
    }
}
