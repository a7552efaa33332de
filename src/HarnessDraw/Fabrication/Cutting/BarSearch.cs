namespace HarnessDraw.Fabrication.Cutting;

/// <summary>
/// Whether the pieces fit on a given number of bars: bar by bar, the longest piece left with every fullest company, waste never above what the number
/// of bars allows. Answers yes with the bars, no (proven), or not known after its steps.
/// </summary>
internal sealed class BarSearch(PackingTask task, int bars, long stepLimit)
{
    private readonly int[] left = [.. task.Pieces.Select(p => p.Count)];
    private readonly List<int[]> laid = [];
    private readonly HashSet<string> hopeless = new(StringComparer.Ordinal);
    private long steps;

    /// <summary>True: it was looked at in full, and what <see cref="Find"/> said is proven.</summary>
    public bool Complete => steps <= stepLimit;

    public List<int[]>? Find()
    {
        var waste = (bars * task.Capacity) - task.TotalLength;
        return waste >= 0 && Place(waste) ? laid : null;
    }

    private bool Place(long waste)
    {
        var first = Array.FindIndex(left, n => n > 0);
        if (first < 0)
        {
            return true;
        }

        if (laid.Count == bars || steps > stepLimit)
        {
            return false;
        }

        var state = string.Create(left.Length, left, static (span, l) =>
        {
            for (var i = 0; i < l.Length; i++)
            {
                span[i] = (char)(l[i] + 32);
            }
        });
        if (hopeless.Contains(state))
        {
            return false;
        }

        var bar = new int[left.Length];
        bar[first] = 1;
        left[first]--;
        var ways = new List<(int[] Bar, long Room)>();
        Company(first, bar, task.Capacity - task.Pieces[first].Length, waste, ways);
        foreach (var (way, room) in ways.OrderBy(w => w.Room))
        {
            Move(way, first, -1);
            laid.Add(way);
            if (Place(waste - room))
            {
                return true;
            }

            laid.RemoveAt(laid.Count - 1);
            Move(way, first, 1);
        }

        left[first]++;
        if (steps <= stepLimit && hopeless.Count < 200_000)
        {
            hopeless.Add(state);
        }

        return false;
    }

    // every company that leaves no room for a piece still there: one that does could take that piece from another bar
    private void Company(int from, int[] bar, long room, long waste, List<(int[] Bar, long Room)> ways)
    {
        if (++steps > stepLimit || ways.Count > 2000)
        {
            steps = ways.Count > 2000 ? stepLimit + 1 : steps;
            return;
        }

        for (var c = from; c < bar.Length; c++)
        {
            if (left[c] > 0 && task.Pieces[c].Length <= room)
            {
                left[c]--;
                bar[c]++;
                Company(c, bar, room - task.Pieces[c].Length, waste, ways);
                bar[c]--;
                left[c]++;
            }
        }

        if (room <= waste && IsFull(room))
        {
            ways.Add(([.. bar], room));
        }
    }

    private bool IsFull(long room)
    {
        for (var c = left.Length - 1; c >= 0; c--)
        {
            if (left[c] > 0)
            {
                return task.Pieces[c].Length > room;
            }
        }

        return true;
    }

    // the longest piece of the bar was taken before its company was sought
    private void Move(int[] way, int first, int sign)
    {
        for (var c = 0; c < way.Length; c++)
        {
            left[c] += sign * (way[c] - (c == first ? 1 : 0));
        }
    }
}
