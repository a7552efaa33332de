namespace HarnessDraw.Planning.Cavities;

/// <summary>A wire that has or seeks a cavity: the range of places round the tree of what it leads to (one place for an unspliced wire).</summary>
public readonly record struct CavityWire(double Low, double High)
{
    public bool IsSpliced => Low < High;
}

/// <summary>
/// What the cavities of a connector lead to on the chart. Wires run in the order of their cavities at the connector and in the order of their places behind it: two of them cross where these
/// differ. A spliced wire may run anywhere up to its splice; the splice's bar, from its outermost end to the other, crosses the unspliced wires between.
/// </summary>
public sealed class CavityOrder
{
    private readonly CavityWire[] wires;
    private readonly double[] gaps;

    public CavityOrder(CavityWire[] wires)
    {
        ArgumentNullException.ThrowIfNull(wires);
        this.wires = wires;
        double[] places = [.. new SortedSet<double>(wires.SelectMany(w => (double[])[w.Low, w.High]))];
        gaps = [.. places.Select((p, i) => i == 0 ? p - 1 : (p + places[i - 1]) / 2), .. places.Length == 0 ? [] : (double[])[places[^1] + 1]];
        Places = Array.ConvertAll(wires, w => w.Low);
    }

    /// <summary>Where each wire runs: its place, or the gap between places that a spliced wire has.</summary>
    public double[] Places { get; }

    /// <summary>Where spliced wires may run.</summary>
    public ReadOnlySpan<double> Gaps => gaps;

    public bool IsSpliced(int wire) => wires[wire].IsSpliced;

    /// <summary>Crossings with the wires where they run now.</summary>
    public int Crossings(int[] cavities)
    {
        ArgumentNullException.ThrowIfNull(cavities);
        var count = 0;
        for (var i = 0; i < wires.Length; i++)
        {
            count += wires[i].IsSpliced ? Bar(i, Places[i]) : 0;
            for (var j = 0; j < i; j++)
            {
                count += Cross(cavities[i], Places[i], cavities[j], Places[j]);
            }
        }

        return count;
    }

    /// <summary>Crossings of one wire with all others if it had a cavity; the wire <paramref name="but"/> is left out.</summary>
    public int CrossingsOf(int wire, int cavity, int[] cavities, int but = -1)
    {
        ArgumentNullException.ThrowIfNull(cavities);
        var count = 0;
        for (var j = 0; j < wires.Length; j++)
        {
            count += j == wire || j == but ? 0 : Cross(cavity, Places[wire], cavities[j], Places[j]);
        }

        return count;
    }

    /// <summary>Lets each spliced wire run where it costs least, the others being where they are, until none gains.</summary>
    /// <returns>True where one runs elsewhere now.</returns>
    public bool Settle(int[] cavities)
    {
        ArgumentNullException.ThrowIfNull(cavities);
        var moved = false;
        for (var again = true; again;)
        {
            again = false;
            for (var i = 0; i < wires.Length; i++)
            {
                if (!wires[i].IsSpliced)
                {
                    continue;
                }

                var (before, best) = (Places[i], int.MaxValue);
                var place = before;
                if (gaps.Contains(before))
                {
                    best = CrossingsOf(i, cavities[i], cavities) + Bar(i, before);
                }

                foreach (var gap in gaps)
                {
                    Places[i] = gap;
                    if (CrossingsOf(i, cavities[i], cavities) + Bar(i, gap) is var now && now < best)
                    {
                        (best, place) = (now, gap);
                    }
                }

                Places[i] = place;
                again |= place != before;
            }

            moved |= again;
        }

        return moved;
    }

    /// <summary>Crossings of a spliced wire's bar if it ran at this place.</summary>
    public int Bar(int wire, double place)
    {
        var (low, high) = (Math.Min(wires[wire].Low, place), Math.Max(wires[wire].High, place));
        var count = 0;
        foreach (var other in wires)
        {
            count += !other.IsSpliced && other.Low > low && other.Low < high ? 1 : 0;
        }

        return count;
    }

    private static int Cross(int cavity, double place, int other, double otherPlace) =>
        cavity != other && place != otherPlace && cavity < other != place < otherPlace ? 1 : 0;
}
