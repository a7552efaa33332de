namespace HarnessDraw.Layout;

/// <summary>
/// Sorts lanes between rows and slots with one vertical piece a lane. A pair meets once if its order is inverted, else never: of two lanes of one direction
/// that keep their order, the one ahead turns first. Rows lie three lanes apart and half a lane off the slots; where a row line
/// would run beside a slot line, the row turns off before the slot line begins, if no circle of such wishes forbids it.
/// </summary>
public static class PinChannel
{
    /// <summary>
    /// Track numbers from 0 for lanes that go from <paramref name="rowsMm"/> to <paramref name="slotsMm"/>, how many are used, and in how many pairs a row
    /// and a slot line run nearer than a pitch side by side.
    /// </summary>
    public static (int[] Tracks, int Count, int Close) Route(ReadOnlySpan<double> rowsMm, ReadOnlySpan<double> slotsMm, double pitchMm)
    {
        var n = rowsMm.Length;
        var rows = rowsMm.ToArray();
        var slots = slotsMm.ToArray();
        var order = Order(rows, slots);
        var tracks = new int[n];
        Array.Fill(tracks, -1);
        var used = new List<List<(double From, double To)>>();
        var left = new List<int>(order);
        while (left.Count > 0)
        {
            var at = Next(left, rows, slots, pitchMm);
            var i = left[at];
            left.RemoveAt(at);
            var (from, to) = (Math.Min(rows[i], slots[i]), Math.Max(rows[i], slots[i]));
            var least = 0;
            for (var j = 0; j < n; j++)
            {
                if (tracks[j] >= least && (Goes(j, i, rows, slots) || Clears(j, i, rows, slots, pitchMm)))
                {
                    least = tracks[j] + 1;
                }
            }

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

        var close = 0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                close += Clears(j, i, rows, slots, pitchMm) && tracks[j] >= tracks[i] ? 1 : 0;
            }
        }

        return (tracks, used.Count, close);
    }

    // lanes going down from the lowest row upwards, then lanes going up from the highest row downwards
    private static int[] Order(double[] rows, double[] slots)
    {
        var order = new int[rows.Length];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Array.Sort(order, (a, b) =>
        {
            var (downA, downB) = (slots[a] > rows[a], slots[b] > rows[b]);
            if (downA != downB)
            {
                return downA ? -1 : 1;
            }

            var byRow = downA ? rows[b].CompareTo(rows[a]) : rows[a].CompareTo(rows[b]);
            return byRow != 0 ? byRow : a.CompareTo(b);
        });
        return order;
    }

    // the first lane that waits for none; else the first that waits for no lane of its own direction
    private static int Next(List<int> left, double[] rows, double[] slots, double pitch)
    {
        var second = -1;
        for (var a = 0; a < left.Count; a++)
        {
            var (must, wants) = (false, false);
            for (var b = 0; b < left.Count && !must; b++)
            {
                must = a != b && Goes(left[b], left[a], rows, slots);
                wants |= a != b && Clears(left[b], left[a], rows, slots, pitch);
            }

            if (!must && !wants)
            {
                return a;
            }

            second = !must && second < 0 ? a : second;
        }

        return Math.Max(0, second);
    }

    // j must turn before i: same direction, order kept, j ahead, and their ways up or down share a height
    private static bool Goes(int j, int i, double[] rows, double[] slots)
    {
        if (i == j)
        {
            return false;
        }

        var isDown = slots[i] > rows[i];
        return slots[j] > rows[j] == isDown
            && (rows[j] > rows[i]) == isDown
            && (slots[j] > slots[i]) == isDown
            && Math.Min(rows[i], slots[i]) < Math.Max(rows[j], slots[j]) && Math.Min(rows[j], slots[j]) < Math.Max(rows[i], slots[i]);
    }

    // j should turn before i: j's row line would lie beside i's slot line
    private static bool Clears(int j, int i, double[] rows, double[] slots, double pitch) => i != j && Math.Abs(rows[j] - slots[i]) < 0.9 * pitch;

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
