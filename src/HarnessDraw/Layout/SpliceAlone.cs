namespace HarnessDraw.Layout;

/// <summary>What the gaps between unspliced lanes cost the lanes that arrive at a splice; see <see cref="SpliceSearch"/>.</summary>
internal sealed record SpliceAlone(List<double> Bounds, int[][] Cost, int[] Passing, (int Low, int High)? Legs)
{
    /// <summary>The fewest crossings by choice (see <see cref="SpliceChoices"/>) of what lies between given places, as many lanes as arrive.</summary>
    public int[] LeastBetween(double[] places)
    {
        var (first, last) = (new int[places.Length + 1], new int[places.Length + 1]);
        for (var i = 0; i <= places.Length; i++)
        {
            (first[i], last[i]) = (i == 0 ? 0 : Before(places[i - 1], itself: true), i == places.Length ? Bounds.Count : Before(places[i], itself: false));
        }

        var before = new int[Passing.Length + 1];
        for (var i = 0; i < Passing.Length; i++)
        {
            before[i + 1] = before[i] + Passing[i];
        }

        var least = new int[(int)Math.Pow(places.Length + 1, Cost.Length)];
        Array.Fill(least, int.MaxValue);
        Put(0, 0, 1, 0, Legs?.Low ?? int.MaxValue, Legs?.High ?? int.MinValue);
        return least;

        void Put(int lane, int choice, int times, int sum, int low, int high)
        {
            if (lane == Cost.Length)
            {
                least[choice] = Math.Min(least[choice], sum + before[high] - before[low]);
                return;
            }

            for (var i = 0; i <= places.Length; i++)
            {
                for (var gap = first[i]; gap <= last[i]; gap++)
                {
                    Put(lane + 1, choice + (i * times), times * (places.Length + 1), sum + Cost[lane][gap], Math.Min(low, gap), Math.Max(high, gap));
                }
            }
        }
    }

    // how many bounds lie before a place
    private int Before(double place, bool itself)
    {
        var at = Bounds.BinarySearch(place);
        return at < 0 ? ~at : at + (itself ? 1 : 0);
    }
}
