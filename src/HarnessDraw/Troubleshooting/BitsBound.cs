namespace HarnessDraw.Troubleshooting;

/// <summary>
/// What a reading can tell at the most: which of the faults it is that move the point at all, or that it is none of them. Quickly reckoned, so that most points need
/// not be looked at closely.
/// </summary>
internal sealed class BitsBound
{
    private readonly int[] ends;
    private readonly double[] whole;
    private readonly double[] parts;

    /// <param name="probability">By case; together 1.</param>
    /// <param name="ends">For each fault the case behind its last: variants of one fault follow one another.</param>
    public BitsBound(double[] probability, int[] ends)
    {
        this.ends = ends;
        whole = new double[ends.Length];
        for (var (f, c) = (0, 0); f < ends.Length; f++)
        {
            for (; c < ends[f]; c++)
            {
                whole[f] += probability[c];
            }
        }

        parts = Array.ConvertAll(whole, Part);
    }

    /// <param name="values">Volts by case.</param>
    /// <param name="soundV">Volts without a fault.</param>
    /// <param name="meterV">What is less off counts as that.</param>
    public double Of(double[] values, double soundV, double meterV)
    {
        var (bits, untouched) = (0.0, 0.0);
        for (var (f, c) = (0, 0); f < ends.Length; f++)
        {
            var touched = false;
            for (; c < ends[f]; c++)
            {
                touched |= Math.Abs(values[c] - soundV) >= meterV;
            }

            bits += touched ? parts[f] : 0;
            untouched += touched ? 0 : whole[f];
        }

        return bits + Part(untouched);
    }

    private static double Part(double mass) => mass > 0 ? -mass * Math.Log2(mass) : 0;
}

/// <summary>The most bits a minute of any test so far, in whatever order they are looked at: what cannot reach it is not looked at closely, and the best stays the best.</summary>
internal sealed class MostWorth
{
    private double value;

    public double Value => Volatile.Read(ref value);

    public void Raise(double to)
    {
        for (var seen = Value; to > seen;)
        {
            var found = Interlocked.CompareExchange(ref value, to, seen);
            if (found == seen)
            {
                return;
            }

            seen = found;
        }
    }
}
