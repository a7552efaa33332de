namespace HarnessDraw.Fabrication.Cutting;

/// <summary>The most valuable pattern that fits on a bar, by dynamic programming over its length; counts its own work.</summary>
internal sealed class PatternKnapsack(PackingTask task)
{
    private readonly int capacity = (int)task.Capacity;
    private bool[][] taken = [];

    /// <summary>Steps done so far: lengths looked at times parcels of pieces.</summary>
    public long Work { get; private set; }

    /// <summary>Best value and its pattern, at most <paramref name="most"/> pieces of each class.</summary>
    public double Best(double[] value, int[] most, int[] pattern)
    {
        var best = new double[capacity + 1];
        var parcels = Parcels(c => value[c] > 1e-12, most);
        Grow(parcels.Count);
        for (var p = 0; p < parcels.Count; p++)
        {
            var (c, n) = parcels[p];
            var length = (int)task.Pieces[c].Length * n;
            var worth = value[c] * n;
            var row = taken[p];
            Array.Clear(row);
            for (var s = capacity; s >= length; s--)
            {
                var with = best[s - length] + worth;
                if (with > best[s] + 1e-12)
                {
                    best[s] = with;
                    row[s] = true;
                }
            }

            Work += capacity - length;
        }

        Array.Clear(pattern);
        var at = capacity;
        for (var p = parcels.Count - 1; p >= 0; p--)
        {
            if (taken[p][at])
            {
                var (c, n) = parcels[p];
                pattern[c] += n;
                at -= (int)task.Pieces[c].Length * n;
            }
        }

        return best[capacity];
    }

    /// <summary>Best value in whole numbers, exact: what a proof may rest on.</summary>
    public long BestWhole(long[] value, int[] most)
    {
        var best = new long[capacity + 1];
        foreach (var (c, n) in Parcels(c => value[c] > 0, most))
        {
            var length = (int)task.Pieces[c].Length * n;
            var worth = value[c] * n;
            for (var s = capacity; s >= length; s--)
            {
                best[s] = Math.Max(best[s], best[s - length] + worth);
            }

            Work += capacity - length;
        }

        return best[capacity];
    }

    // n pieces as parcels of 1, 2, 4 ...: every number up to n can be put together from them
    private List<(int Class, int Number)> Parcels(Func<int, bool> counts, int[] most)
    {
        var parcels = new List<(int, int)>();
        for (var c = 0; c < most.Length; c++)
        {
            var n = (int)Math.Min(most[c], capacity / task.Pieces[c].Length);
            if (n <= 0 || !counts(c))
            {
                continue;
            }

            for (var size = 1; n > 0; size *= 2)
            {
                parcels.Add((c, Math.Min(size, n)));
                n -= Math.Min(size, n);
            }
        }

        return parcels;
    }

    private void Grow(int rows)
    {
        var had = taken.Length;
        if (rows <= had)
        {
            return;
        }

        Array.Resize(ref taken, rows);
        for (var r = had; r < rows; r++)
        {
            taken[r] = new bool[capacity + 1];
        }
    }
}
