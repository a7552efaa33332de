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
        var waiting = new WaitingLanes(rowsMm.ToArray(), slotsMm.ToArray(), pitchMm);
        var n = rowsMm.Length;
        var tracks = new int[n];
        var used = new List<List<(double From, double To)>>();
        for (var k = 0; k < n; k++)
        {
            var i = waiting.Next();
            var (from, to) = (Math.Min(rowsMm[i], slotsMm[i]), Math.Max(rowsMm[i], slotsMm[i]));
            var track = waiting.LeastTrack(i);
            while (track < used.Count && !IsFree(used[track], from - (0.9 * pitchMm), to + (0.9 * pitchMm)))
            {
                track++;
            }

            if (track == used.Count)
            {
                used.Add([]);
            }

            used[track].Add((from, to));
            tracks[i] = track;
            waiting.Take(i, track);
        }

        return (tracks, used.Count, waiting.CloseCount);
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

/// <summary>The lanes of a channel that have no track yet: how many others each still waits for, and the least track that those which turned before it leave it.</summary>
internal sealed class WaitingLanes
{
    private readonly double[] rows;
    private readonly double[] slots;
    private readonly double pitch;

    // lanes going down from the lowest row upwards, then from a place on lanes going up from the highest row downwards; what is taken drops out
    private readonly int[] order;
    private int downCount;
    private int count;

    // lanes by the height of their slot
    private readonly int[] bySlot;
    private readonly double[] slotsInOrder;

    // by lane: how many others must, and how many should, turn before it; the least track it may take; its track (-1: it waits)
    private readonly int[] must;
    private readonly int[] should;
    private readonly int[] least;
    private readonly int[] tracks;

    public WaitingLanes(double[] rows, double[] slots, double pitch)
    {
        (this.rows, this.slots, this.pitch) = (rows, slots, pitch);
        count = rows.Length;
        order = Order(rows, slots);
        downCount = order.Count(IsDown);
        bySlot = [.. Enumerable.Range(0, count)];
        slotsInOrder = [.. slots];
        Array.Sort(slotsInOrder, bySlot);
        (must, should, least, tracks) = (new int[count], new int[count], new int[count], new int[count]);
        Array.Fill(tracks, -1);
        for (var i = 0; i < count; i++)
        {
            CountWishes(i, 1, 0);
        }
    }

    /// <summary>In how many pairs a row and a slot line run nearer than a pitch side by side, of the lanes taken so far.</summary>
    public int CloseCount { get; private set; }

    public int LeastTrack(int lane) => least[lane];

    /// <summary>The first lane that waits for none; else the first that waits for no lane of its own direction.</summary>
    public int Next()
    {
        var second = -1;
        for (var k = 0; k < count; k++)
        {
            var i = order[k];
            if (must[i] == 0 && should[i] == 0)
            {
                return i;
            }

            second = must[i] == 0 && second < 0 ? i : second;
        }

        return second < 0 ? order[0] : second;
    }

    public void Take(int lane, int track)
    {
        tracks[lane] = track;
        var at = Array.IndexOf(order, lane);
        Array.Copy(order, at + 1, order, at, count - at - 1);
        count--;
        downCount -= IsDown(lane) ? 1 : 0;
        CountWishes(lane, -1, track + 1);
    }

    // those that wait for a lane wait for one more or one less, and turn behind it
    private void CountWishes(int lane, int step, int leastTrack)
    {
        var (isDown, row, slot) = (IsDown(lane), rows[lane], slots[lane]);
        for (var k = isDown ? 0 : downCount; k < (isDown ? downCount : count); k++)
        {
            var i = order[k];
            if (isDown ? rows[i] < row && row < slots[i] && slots[i] < slot : slot <= slots[i] && slots[i] < row && row <= rows[i] && slot < rows[i] && i != lane)
            {
                must[i] += step;
                least[i] = Math.Max(least[i], leastTrack);
            }
        }

        // its row line would lie beside their slot lines
        var near = Array.BinarySearch(slotsInOrder, row - pitch);
        for (var k = near < 0 ? ~near : FirstOf(near); k < bySlot.Length && slotsInOrder[k] < row + pitch; k++)
        {
            var i = bySlot[k];
            if (i != lane && Math.Abs(row - slotsInOrder[k]) < 0.9 * pitch)
            {
                should[i] += step;
                least[i] = Math.Max(least[i], leastTrack);
                CloseCount += tracks[lane] >= tracks[i] && tracks[i] >= 0 ? 1 : 0;
            }
        }
    }

    private int FirstOf(int at)
    {
        while (at > 0 && slotsInOrder[at - 1] == slotsInOrder[at])
        {
            at--;
        }

        return at;
    }

    private bool IsDown(int lane) => slots[lane] > rows[lane];

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
}
