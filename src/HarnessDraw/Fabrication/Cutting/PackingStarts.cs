namespace HarnessDraw.Fabrication.Cutting;

/// <summary>Quick ways to lay pieces on bars; each gives bars as counts per class.</summary>
internal static class PackingStarts
{
    /// <summary>Longest first, each onto the first bar (or the fullest bar) that still has room.</summary>
    public static List<int[]> Fit(PackingTask task, bool fullest)
    {
        var bars = new List<int[]>();
        var rooms = new List<long>();
        for (var c = 0; c < task.Pieces.Length; c++)
        {
            for (var n = 0; n < task.Pieces[c].Count; n++)
            {
                var length = task.Pieces[c].Length;
                var at = -1;
                for (var b = 0; b < bars.Count; b++)
                {
                    if (rooms[b] >= length && (at < 0 || rooms[b] < rooms[at]))
                    {
                        at = b;
                        if (!fullest)
                        {
                            break;
                        }
                    }
                }

                if (at < 0)
                {
                    at = bars.Count;
                    bars.Add(new int[task.Pieces.Length]);
                    rooms.Add(task.Capacity);
                }

                bars[at][c]++;
                rooms[at] -= length;
            }
        }

        return bars;
    }

    /// <summary>Bar by bar: the longest piece left, then what fills the rest of the bar best (subset sum, longer pieces preferred).</summary>
    public static List<int[]> Fill(PackingTask task)
    {
        var left = task.Pieces.Select(p => p.Count).ToArray();
        var bars = new List<int[]>();
        while (Array.FindIndex(left, n => n > 0) is var first and >= 0)
        {
            left[first]--;
            var bar = SubsetSum.Fullest(task, left, task.Capacity - task.Pieces[first].Length);
            for (var c = 0; c < bar.Length; c++)
            {
                left[c] -= bar[c];
            }

            bar[first]++;
            bars.Add(bar);
        }

        return bars;
    }
}
