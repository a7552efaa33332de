namespace HarnessDraw.Layout;

/// <summary>
/// Sorts lanes between rows and slots with one vertical piece a lane. A pair meets once if its order is inverted, else never
/// (greedy tracks, each to the right of earlier lanes that keep their order). Rows must lie half a lane off the slots and three lanes apart:
/// then no row line comes nearer than half a pitch to a slot line.
/// </summary>
public static class PinChannel
{
    /// <summary>Track numbers from 0 for lanes that go from <paramref name="rowsMm"/> to <paramref name="slotsMm"/>, and how many are used.</summary>
    public static (int[] Tracks, int Count) Route(ReadOnlySpan<double> rowsMm, ReadOnlySpan<double> slotsMm, double pitchMm)
    {
        var n = rowsMm.Length;
        var rows = rowsMm.ToArray();
        var slots = slotsMm.ToArray();
        var tracks = new int[n];
        var order = new int[n];
        var downs = 0;
        for (var i = 0; i < n; i++)
        {
            tracks[i] = -1;
            if (slots[i] > rows[i])
            {
                order[downs++] = i;
            }
        }

        var at = downs;
        for (var i = 0; i < n; i++)
        {
            if (slots[i] <= rows[i])
            {
                order[at++] = i;
            }
        }

        Array.Sort(order, 0, downs, Comparer<int>.Create((a, b) => Descending(rows, a, b)));
        Array.Sort(order, downs, n - downs, Comparer<int>.Create((a, b) => Descending(rows, b, a)));
        var used = new List<List<(double From, double To)>>();
        for (var k = 0; k < n; k++)
        {
            var i = order[k];
            var least = 0;
            for (var e = k < downs ? 0 : downs; e < k; e++)
            {
                var j = order[e];
                var keeps = (rows[i] < rows[j]) == (slots[i] < slots[j]);
                if (keeps && tracks[j] >= least && Math.Min(rows[i], slots[i]) < Math.Max(rows[j], slots[j]) && Math.Min(rows[j], slots[j]) < Math.Max(rows[i], slots[i]))
                {
                    least = tracks[j] + 1;
                }
            }

            var (from, to) = (Math.Min(rows[i], slots[i]), Math.Max(rows[i], slots[i]));
            while (least < used.Count && !IsFree(used[least], from - (0.9 * pitchMm), to + (0.9 * pitchMm)))
            {
                least++;
            }

            if (least == used.Count)
            {
                used.Add([]);
            }

            used[least].Add((from, to));
            tracks[i] = least;
        }

        return (tracks, used.Count);
    }

    private static int Descending(double[] rows, int a, int b)
    {
        var byRow = rows[b].CompareTo(rows[a]);
        return byRow != 0 ? byRow : a.CompareTo(b);
    }

    private static bool IsFree(List<(double From, double To)> ranges, double from, double to)
    {
        foreach (var (f, t) in ranges)
        {
            if (f < to && from < t)
            {
                return false;
            }
        }

        return true;
    }
}
