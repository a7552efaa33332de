using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

// the charts of before, where circuits stay on theirs
internal sealed partial record ChartParts
{
    /// <summary>Cuts that put the circuits on the charts of before; null where one would be left without any.</summary>
    public List<int>? KeptCuts { get; }

    private static (List<string> Circuits, List<int>? Cuts) AsBefore(List<string> circuits, FrozenChart before)
    {
        var chartOf = before.Sheets.SelectMany((s, n) => s.Circuits.Select(c => (c, n))).DistinctBy(c => c.c, StringComparer.Ordinal).ToDictionary(c => c.c, c => c.n, StringComparer.Ordinal);
        var last = circuits.Select(c => chartOf.GetValueOrDefault(c, -1)).FirstOrDefault(n => n >= 0);
        var placed = circuits.ConvertAll(c => (Circuit: c, Chart: last = chartOf.GetValueOrDefault(c, last)));
        var counts = before.Sheets.Select((_, n) => placed.Count(p => p.Chart == n)).ToList();
        var cuts = counts.Select((_, n) => counts.Take(n + 1).Sum()).SkipLast(1).ToList();
        return ([.. placed.OrderBy(p => p.Chart).Select(p => p.Circuit)], counts.Contains(0) ? null : cuts);
    }
}
