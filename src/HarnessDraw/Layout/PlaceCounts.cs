namespace HarnessDraw.Layout;

/// <summary>Counts by place in a row, and how many there are up to a place, each in log n steps (a binary indexed tree: Fenwick, Software: Practice and Experience 24 (1994)).</summary>
internal sealed class PlaceCounts(int places)
{
    private readonly int[] sums = new int[places + 1];

    public void Add(int place, int count)
    {
        for (var i = place + 1; i < sums.Length; i += i & -i)
        {
            sums[i] += count;
        }
    }

    /// <summary>How many there are at this place and before it.</summary>
    public int UpTo(int place)
    {
        var sum = 0;
        for (var i = place + 1; i > 0; i -= i & -i)
        {
            sum += sums[i];
        }

        return sum;
    }
}
