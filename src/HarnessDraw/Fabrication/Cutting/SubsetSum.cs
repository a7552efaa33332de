namespace HarnessDraw.Fabrication.Cutting;

/// <summary>The fullest bar that can be cut from what is left.</summary>
internal static class SubsetSum
{
    /// <summary>Units up to which every sum is looked at; longer bars are filled longest piece first.</summary>
    private const long LargestTable = 200_000;

    public static int[] Fullest(PackingTask task, int[] left, long room)
    {
        var bar = new int[left.Length];
        if (room > LargestTable)
        {
            Greedy(task, left, bar, room);
            return bar;
        }

        // reached[s]: class of the last piece of a sum s, shorter classes last, so that walking back finds long pieces first
        var size = (int)room;
        var reached = new int[size + 1];
        var used = new int[size + 1];
        Array.Fill(reached, -1);
        reached[0] = left.Length;
        for (var c = 0; c < left.Length; c++)
        {
            if (left[c] == 0 || task.Pieces[c].Length > size)
            {
                continue;
            }

            var length = (int)task.Pieces[c].Length;
            Array.Clear(used);
            for (var s = length; s <= size; s++)
            {
                if (reached[s] < 0 && reached[s - length] >= 0 && used[s - length] < left[c])
                {
                    reached[s] = c;
                    used[s] = used[s - length] + 1;
                }
            }

            if (reached[size] >= 0)
            {
                break;
            }
        }

        var at = size;
        while (reached[at] < 0)
        {
            at--;
        }

        while (at > 0)
        {
            var c = reached[at];
            bar[c]++;
            at -= (int)task.Pieces[c].Length;
        }

        return bar;
    }

    private static void Greedy(PackingTask task, int[] left, int[] bar, long room)
    {
        for (var c = 0; c < left.Length; c++)
        {
            bar[c] = (int)Math.Min(left[c], room / task.Pieces[c].Length);
            room -= bar[c] * task.Pieces[c].Length;
        }
    }
}
