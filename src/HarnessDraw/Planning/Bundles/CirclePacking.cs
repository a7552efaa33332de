namespace HarnessDraw.Planning.Bundles;

/// <summary>
/// Diameter of the smallest circle found round wires of given diameters. One to three wires are exact (two side by side; the circle that
/// touches all three); up to nineteen are packed by pushing overlapping circles apart in a shrinking ring, within 2 % of the best known
/// packings of equal circles; beyond that the trade's factor times the root of the sum of squares is used.
/// </summary>
public static class CirclePacking
{
    /// <summary>Most wires that are packed one by one.</summary>
    public const int MostPacked = 19;
    private const double GoldenAngle = 2.399963229728653;

    /// <summary>Outside diameter of the bundle in the unit of <paramref name="diameters"/>.</summary>
    public static double Diameter(IReadOnlyList<double> diameters, double factor)
    {
        ArgumentNullException.ThrowIfNull(diameters);
        double[] radii = [.. diameters.Where(d => d > 0).OrderDescending().Select(d => d / 2)];
        return radii.Length switch
        {
            0 => 0,
            1 => 2 * radii[0],
            2 => 2 * (radii[0] + radii[1]),
            3 => 2 * RoundThree(radii[0], radii[1], radii[2]),
            <= MostPacked => 2 * Pack(radii),
            _ => factor * Math.Sqrt(diameters.Sum(d => d * d)),
        };
    }

    /// <summary>Radius round three circles, largest first: two set it when the third fits beside them, else Descartes' theorem.</summary>
    private static double RoundThree(double a, double b, double c)
    {
        var gap = a * b * (a + b) / ((a * a) + (a * b) + (b * b));
        if (c <= gap)
        {
            return a + b;
        }

        var (k, l, m) = (1 / a, 1 / b, 1 / c);
        return 1 / ((2 * Math.Sqrt((k * l) + (l * m) + (m * k))) - k - l - m);
    }

    private static double Pack(double[] radii)
    {
        var square = radii.Sum(r => r * r);
        var floor = Math.Max(radii[0] + radii[1], Math.Sqrt(square / 0.82));
        var best = double.PositiveInfinity;
        for (var start = 0; start < 4; start++)
        {
            var (x, y) = Start(radii, start);
            var ring = Math.Sqrt(square / 0.62);
            for (var round = 0; round < 14; round++)
            {
                Relax(radii, x, y, ring);
                var needed = Enclosing(radii, x, y);
                best = Math.Min(best, needed);
                ring = Math.Max(floor, best * (1 - (0.05 / (1 + (0.5 * round)))));
            }
        }

        return best;
    }

    private static (double[] X, double[] Y) Start(double[] radii, int start)
    {
        var (x, y) = (new double[radii.Length], new double[radii.Length]);
        if (start >= 2)
        {
            Rings(radii, x, y, start == 2 ? [1, 6, radii.Length] : [5, radii.Length]);
            return (x, y);
        }

        var area = 0.0;
        for (var i = 0; i < radii.Length; i++)
        {
            // the second start puts the thin wires in the middle
            var k = start == 0 ? i : radii.Length - 1 - i;
            var radius = Math.Sqrt(area / 0.7);
            x[k] = radius * Math.Cos((i * GoldenAngle) + start);
            y[k] = radius * Math.Sin((i * GoldenAngle) + start);
            area += radii[k] * radii[k];
        }

        return (x, y);
    }

    /// <summary>Rings of stated counts, from the middle outwards; the last takes the rest.</summary>
    private static void Rings(double[] radii, double[] x, double[] y, int[] counts)
    {
        var mean = radii.Average();
        var (done, radius) = (0, 0.0);
        foreach (var count in counts)
        {
            var here = Math.Min(count, radii.Length - done);
            radius = Math.Max(here > 1 ? mean / Math.Sin(Math.PI / here) : 0, done > 0 ? radius + (1.87 * mean) : 0);
            for (var i = 0; i < here; i++)
            {
                x[done + i] = radius * Math.Cos((2 * Math.PI * i / here) + (0.26 * done));
                y[done + i] = radius * Math.Sin((2 * Math.PI * i / here) + (0.26 * done));
            }

            done += here;
        }
    }

    private static void Relax(double[] radii, double[] x, double[] y, double ring)
    {
        var moved = true;
        for (var step = 0; step < 60 && moved; step++)
        {
            moved = false;
            for (var i = 0; i < radii.Length; i++)
            {
                for (var j = i + 1; j < radii.Length; j++)
                {
                    // most pairs lie apart: the root is taken only for those that do not
                    var (dx, dy) = (x[j] - x[i], y[j] - y[i]);
                    var (square, apart) = ((dx * dx) + (dy * dy), radii[i] + radii[j]);
                    if (square < apart * apart)
                    {
                        moved = true;
                        Part(x, y, i, j, Math.Sqrt(square), apart);
                    }
                }

                moved |= PullIn(x, y, i, ring - radii[i]);
            }
        }
    }

    private static void Part(double[] x, double[] y, int i, int j, double distance, double apart)
    {
        var push = distance > 1e-12 ? (apart - distance) / (2 * distance) : 0;
        var (dx, dy) = ((x[j] - x[i]) * push, (y[j] - y[i]) * push);
        x[i] -= dx;
        y[i] -= dy;
        x[j] += dx;
        y[j] += dy;
    }

    private static bool PullIn(double[] x, double[] y, int i, double reach)
    {
        var square = (x[i] * x[i]) + (y[i] * y[i]);
        if (square <= reach * reach || square <= 1e-24)
        {
            return false;
        }

        var share = reach / Math.Sqrt(square);
        x[i] *= share;
        y[i] *= share;
        return true;
    }

    /// <summary>Radius that holds the circles once they are spread just enough that none overlap.</summary>
    private static double Enclosing(double[] radii, double[] x, double[] y)
    {
        var spread = 1.0;
        for (var i = 0; i < radii.Length; i++)
        {
            for (var j = i + 1; j < radii.Length; j++)
            {
                var (dx, dy) = (x[j] - x[i], y[j] - y[i]);
                var distance = Math.Sqrt((dx * dx) + (dy * dy));
                spread = Math.Max(spread, (radii[i] + radii[j]) / Math.Max(distance, 1e-9));
            }
        }

        var ring = 0.0;
        for (var i = 0; i < radii.Length; i++)
        {
            ring = Math.Max(ring, (spread * Math.Sqrt((x[i] * x[i]) + (y[i] * y[i]))) + radii[i]);
        }

        return ring;
    }
}
