namespace HarnessDraw.Layout;

/// <summary>
/// A monotone map from true to drawn coordinates along one axis, fitted to the drawn places (pool adjacent violators, then knots), so that the body's lines lie
/// where the loads were drawn. Outside the places it goes on with the mean slope.
/// </summary>
public sealed class BodyWarp
{
    private readonly double[] from;
    private readonly double[] to;
    private readonly double slope;

    private BodyWarp(double[] from, double[] to, double slope) => (this.from, this.to, this.slope) = (from, to, slope);

    public static BodyWarp Fit(IReadOnlyList<(double True, double Drawn)> pairs, int knots = 9)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        var sorted = pairs.ToArray();
        Array.Sort(sorted);
        var blocks = new List<(double TrueSum, double DrawnSum, int Count)>();
        foreach (var (t, d) in sorted)
        {
            blocks.Add((t, d, 1));
            while (blocks.Count > 1 && Mean(blocks[^2]) >= Mean(blocks[^1]))
            {
                var (a, b) = (blocks[^2], blocks[^1]);
                blocks.RemoveAt(blocks.Count - 1);
                blocks[^1] = (a.TrueSum + b.TrueSum, a.DrawnSum + b.DrawnSum, a.Count + b.Count);
            }
        }

        var from = new List<double>();
        var to = new List<double>();
        var step = Math.Max(1, blocks.Count / (double)knots);
        for (var k = 0.0; k < blocks.Count; k += step)
        {
            Add(blocks[(int)k]);
        }

        if (blocks.Count > 0)
        {
            Add(blocks[^1]);
        }

        var wide = from.Count > 1 ? from[^1] - from[0] : 0;
        var slope = wide > 1 ? (to[^1] - to[0]) / wide : 0.2;
        return new([.. from], [.. to], Math.Max(0.01, slope));

        static double Mean((double TrueSum, double DrawnSum, int Count) b) => b.DrawnSum / b.Count;

        void Add((double TrueSum, double DrawnSum, int Count) b)
        {
            var t = b.TrueSum / b.Count;
            if (from.Count == 0 || t > from[^1] + 1e-6)
            {
                from.Add(t);
                to.Add(Mean(b));
            }
        }
    }

    public double Map(double value)
    {
        if (from.Length == 0)
        {
            return value * slope;
        }

        if (value <= from[0])
        {
            return to[0] - ((from[0] - value) * slope);
        }

        for (var i = 1; i < from.Length; i++)
        {
            if (value <= from[i])
            {
                return to[i - 1] + ((value - from[i - 1]) / (from[i] - from[i - 1]) * (to[i] - to[i - 1]));
            }
        }

        return to[^1] + ((value - from[^1]) * slope);
    }
}
