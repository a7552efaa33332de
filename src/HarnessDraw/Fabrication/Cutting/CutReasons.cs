using System.Globalization;

namespace HarnessDraw.Fabrication.Cutting;

/// <summary>Why so many reels and no fewer, in words with numbers.</summary>
internal static class CutReasons
{
    public static string Of(Packing packing, double reelMm, int least)
    {
        var (bars, byLength) = (packing.Bars, packing.BarsByLength);
        var reels = bars == 1 ? "1 reel" : $"{bars} reels";
        if (bars == byLength)
        {
            return bars == 1 ? "all on one reel" : $"{reels}: the lengths added up need as many";
        }

        var open = bars > least && bars > packing.LowerBound ? $"; not proven least, at least {packing.LowerBound}" : "";
        return $"{reels}, not {byLength}: {Because(packing, reelMm)}{open}";
    }

    private static string Because(Packing packing, double reelMm)
    {
        var task = packing.Task;
        var shortest = task.Pieces[^1].Length;
        var alone = task.Pieces.Where(p => 2 * p.Length > task.Capacity && p.Length + shortest > task.Capacity).ToArray();
        if (alone.Length > 0)
        {
            return $"pieces of {string.Join(", ", alone.Take(3).Select(p => Metres(p.Length)))} pair with nothing";
        }

        var halves = task.Pieces.Where(p => 2 * p.Length > task.Capacity).Sum(p => p.Count);
        return halves > 0 && halves == packing.LowerBound
            ? string.Create(CultureInfo.InvariantCulture, $"{halves} pieces are longer than half a reel of {reelMm / 1000:0.##} m")
            : packing.ProvenBy == "total length" ? "no mix of lengths was found that wastes less" : "no mix of these lengths fills a reel well enough";
    }

    // tenths of a millimetre
    private static string Metres(long units) => string.Create(CultureInfo.InvariantCulture, $"{units / 10_000.0:0.###} m");
}
