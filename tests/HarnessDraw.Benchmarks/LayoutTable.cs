using System.Globalization;

namespace HarnessDraw.Benchmarks;

/// <summary>What was measured on the finished sheets of one random harness. No paper: it was refused. Faults: null when they were not looked for.</summary>
internal sealed record LayoutResult(int Circuits, int Seed)
{
    public string? Paper { get; init; }
    public int Sheets { get; init; }
    public int Crossings { get; init; }
    public int? Bound { get; init; }
    public int? StraightBound { get; init; }
    public int PairsTwice { get; init; }
    public int LeadersCrossing { get; init; }
    public SortedDictionary<string, int>? Faults { get; init; }

    /// <summary>Metres of lanes on paper.</summary>
    public double LaneM { get; init; }
    public double Ratio { get; init; }
    public (double X, double Y)? Tau { get; init; }
    public (double X, double Y)? TauOfAll { get; init; }
    public double Seconds { get; init; }
}

/// <summary>Lines and the table of a long run: a line a harness, so that it can be made in pieces, a row a number of circuits.</summary>
internal static class LayoutTable
{
    public const string Head = """
        | circuits | harnesses | refused | on several sheets | papers | faults found on the sheets | leaders crossing | crossings | excess over the straight-lane bound | excess over the lower bound | pairs crossing twice | lanes, m a harness | width to height of the paper | tau along, across | with level pairs | s a harness |
        |--:|--:|--:|--:|---|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|
        """;

    public static string Line(LayoutResult r) => string.Join('\t', [
        Text(r.Circuits), Text(r.Seed), r.Paper ?? "-", Text(r.Sheets), Text(r.Crossings), Text(r.Bound), Text(r.StraightBound), Text(r.PairsTwice), Text(r.LeadersCrossing),
        r.Faults is null ? "-" : string.Join(';', r.Faults.Select(f => $"{f.Key}={f.Value}")), Text(r.LaneM), Text(r.Ratio), Text(r.Tau), Text(r.TauOfAll), Text(r.Seconds)]);

    public static LayoutResult Read(string line)
    {
        var part = line.Split('\t');
        return new((int)Number(part[0])!, (int)Number(part[1])!)
        {
            Paper = part[2] == "-" ? null : part[2],
            Sheets = (int)Number(part[3])!,
            Crossings = (int)Number(part[4])!,
            Bound = (int?)Number(part[5]),
            StraightBound = (int?)Number(part[6]),
            PairsTwice = (int)Number(part[7])!,
            LeadersCrossing = (int)Number(part[8])!,
            Faults = part[9] == "-" ? null : new(part[9].Split(';', StringSplitOptions.RemoveEmptyEntries).Select(f => f.Split('=')).ToDictionary(f => f[0], f => (int)Number(f[1])!, StringComparer.Ordinal), StringComparer.Ordinal),
            LaneM = Number(part[10])!.Value,
            Ratio = Number(part[11])!.Value,
            Tau = Two(part[12]),
            TauOfAll = Two(part[13]),
            Seconds = Number(part[14])!.Value,
        };
    }

    /// <summary>The row of harnesses with one number of circuits.</summary>
    public static string Row(int circuits, List<LayoutResult> all)
    {
        var drawn = all.FindAll(r => r.Paper is not null);
        var faults = drawn.Where(d => d.Faults is not null).SelectMany(d => d.Faults!).GroupBy(f => f.Key, StringComparer.Ordinal).Select(g => $"{g.Key} {g.Sum(f => f.Value)}").ToList();
        var looked = drawn.Count(d => d.Faults is not null);
        var found = looked == 0 ? "not looked for" : (faults.Count == 0 ? "0" : string.Join(", ", faults)) + (looked < drawn.Count ? $" (on {looked} of them)" : "");
        var papers = drawn.GroupBy(d => d.Paper, StringComparer.Ordinal).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Count()} {g.Key}");
        return string.Create(CultureInfo.InvariantCulture, $"| {circuits} | {all.Count} | {all.Count - drawn.Count} | {drawn.Count(d => d.Sheets > 1)} | {string.Join(", ", papers)} | {found} | {drawn.Sum(d => d.LeadersCrossing)} | {drawn.Sum(d => d.Crossings)} | {Excess(drawn, d => d.StraightBound)} | {Excess(drawn, d => d.Bound)} | {drawn.Sum(d => d.PairsTwice)} | {Mean(drawn, d => d.LaneM):0.0} | {Mean(drawn, d => d.Ratio):0.00} | {Taus(drawn, d => d.Tau)} | {Taus(drawn, d => d.TauOfAll)} | {Mean(drawn, d => d.Seconds):0.000} |");
    }

    // the mean of what each harness with a bound lies above it
    private static string Excess(List<LayoutResult> drawn, Func<LayoutResult, int?> bound)
    {
        var known = drawn.FindAll(d => bound(d) > 0);
        return known.Count == 0 ? "no bound" : string.Create(CultureInfo.InvariantCulture, $"{known.Average(d => (d.Crossings - bound(d)!.Value) * 100.0 / bound(d)!.Value):0.00} % ({known.Count})");
    }

    private static string Taus(List<LayoutResult> drawn, Func<LayoutResult, (double X, double Y)?> tau)
    {
        var known = drawn.Select(tau).OfType<(double X, double Y)>().ToList();
        return known.Count == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{known.Average(t => t.X):0.00}, {known.Average(t => t.Y):0.00}");
    }

    private static double Mean(List<LayoutResult> drawn, Func<LayoutResult, double> value) => drawn.Count == 0 ? 0 : drawn.Average(value);

    private static string Text(double? number) => number?.ToString("0.####", CultureInfo.InvariantCulture) ?? "-";

    private static string Text((double X, double Y)? two) => two is { } t ? $"{Text(t.X)},{Text(t.Y)}" : "-";

    private static double? Number(string text) => text == "-" ? null : double.Parse(text, CultureInfo.InvariantCulture);

    private static (double X, double Y)? Two(string text) => text == "-" ? null : (Number(text.Split(',')[0])!.Value, Number(text.Split(',')[1])!.Value);
}
