namespace HarnessDraw.Troubleshooting;

/// <summary>
/// What a reading tells of the fault, in bits: entropy of what the meter may show, less what would still be open of it if the fault were known. Meter errors and
/// ohms that nobody knows blur it as they do in <see cref="Trust.LogReading"/>, so that no test is praised for parting what it cannot part.
/// </summary>
internal sealed class ReadingBits
{
    // standard deviations beyond which nothing is counted
    internal const double Reach = 3;
    internal const int MostBins = 1024;
    private readonly double[] all = new double[MostBins];
    private readonly double[] own = new double[MostBins];

    /// <param name="at">By case where the reading lies, in steps of a meter.</param>
    /// <param name="sigma">By case its standard deviation, in the same steps.</param>
    /// <param name="probability">By case; together 1.</param>
    /// <param name="ends">For each fault the case behind its last: variants of one fault follow one another.</param>
    /// <param name="common">Where most cases lie: those of <paramref name="commonSigma"/> there are counted at once.</param>
    /// <param name="commonSigma">Standard deviation there.</param>
    public double Of(ReadOnlySpan<double> at, ReadOnlySpan<double> sigma, ReadOnlySpan<double> probability, ReadOnlySpan<int> ends, double common, double commonSigma)
    {
        var (low, high) = (common - (Reach * commonSigma), common + (Reach * commonSigma));
        for (var i = 0; i < at.Length; i++)
        {
            low = Math.Min(low, at[i] - (Reach * sigma[i]));
            high = Math.Max(high, at[i] + (Reach * sigma[i]));
        }

        var bins = Math.Min(MostBins, (int)(high - low) + 2);
        Array.Clear(all, 0, bins);
        var (bits, atCommon, begin) = (0.0, 0.0, 0);
        foreach (var end in ends)
        {
            var (whole, alike) = (0.0, true);
            for (var i = begin; i < end; i++)
            {
                whole += probability[i];
                alike &= at[i] == common && sigma[i] == commonSigma;
            }

            if (alike)
            {
                atCommon += whole;
            }
            else if (whole > 0)
            {
                var (from, to) = (bins, 0);
                for (var i = begin; i < end; i++)
                {
                    from = Math.Min(from, Bin(at[i] - (Reach * sigma[i]) - low, bins));
                    to = Math.Max(to, Bin(at[i] + (Reach * sigma[i]) - low, bins));
                }

                Array.Clear(own, from, to - from + 1);
                for (var i = begin; i < end; i++)
                {
                    Spread(own, at[i] - low, sigma[i], probability[i], bins);
                }

                bits -= whole * Entropy(own.AsSpan(from, to - from + 1), whole);
                for (var b = from; b <= to; b++)
                {
                    all[b] += own[b];
                }
            }

            begin = end;
        }

        if (atCommon > 0)
        {
            Array.Clear(own, 0, bins);
            Spread(own, common - low, commonSigma, atCommon, bins);
            bits -= atCommon * Entropy(own.AsSpan(0, bins), atCommon);
            for (var b = 0; b < bins; b++)
            {
                all[b] += own[b];
            }
        }

        return bits + Entropy(all.AsSpan(0, bins), 1);
    }

    private static int Bin(double steps, int bins) => Math.Clamp((int)steps, 0, bins - 1);

    private static void Spread(double[] into, double at, double sigma, double mass, int bins)
    {
        var (from, to) = (Bin(at - (Reach * sigma), bins), Bin(at + (Reach * sigma), bins));
        Span<double> shape = stackalloc double[to - from + 1];
        var sum = 0.0;
        for (var b = from; b <= to; b++)
        {
            var z = (b + 0.5 - at) / sigma;
            sum += shape[b - from] = Math.Exp(-z * z / 2);
        }

        for (var b = from; b <= to; b++)
        {
            into[b] += mass * shape[b - from] / sum;
        }
    }

    private static double Entropy(ReadOnlySpan<double> masses, double whole)
    {
        var entropy = 0.0;
        foreach (var mass in masses)
        {
            entropy -= mass > 0 ? mass / whole * Math.Log2(mass / whole) : 0;
        }

        return entropy;
    }
}
