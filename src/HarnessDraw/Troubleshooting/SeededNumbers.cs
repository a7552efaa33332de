namespace HarnessDraw.Troubleshooting;

/// <summary>Numbers that look thrown and are the same for one seed on every machine (SplitMix64, Steele, Lea and Flood 2014).</summary>
public sealed class SeededNumbers(ulong seed)
{
    private ulong state = seed;

    /// <summary>From 0 up to, not including, 1.</summary>
    public double Next()
    {
        state += 0x9E3779B97F4A7C15;
        var z = state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) / (double)(1UL << 53);
    }

    /// <summary>From 0 up to, not including, <paramref name="count"/>.</summary>
    public int Below(int count) => Math.Min(count - 1, (int)(Next() * count));
}
