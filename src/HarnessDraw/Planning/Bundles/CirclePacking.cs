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
    private const int Starts = 4;
    private const int Rounds = 14;
    private const double GoldenAngle = 2.399963229728653;

    // a start that is this far behind the best after some rounds does not catch up
    private const int RoundsToShow = 5;
    private const double FarBehind = 1.02;

    // steps that push apart, and after how many it is looked anew which circles are neighbours: those nearer than half the least radius
    private const int Steps = 30;
    private const int StepsOfNeighbours = 10;
    private const double NearInLeast = 0.5;

    // shares of a distance: less is not a move
    private const double Touching = 1e-7;

    /// <summary>Outside diameter of the bundle in the unit of <paramref name="diameters"/>.</summary>
    public static double Diameter(double[] diameters, double factor)
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
            _ => ByFactor(diameters, factor),
        };
    }

    /// <summary>The trade's rule: a factor times the root of the sum of squares.</summary>
    public static double ByFactor(ReadOnlySpan<double> diameters, double factor)
    {
        var square = 0.0;
        foreach (var d in diameters)
        {
            square += d * d;
        }

        return factor * Math.Sqrt(square);
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
        for (var start = 0; start < Starts; start++)
        {
            var circles = new Circles(radii, start);
            var (ring, own) = (Math.Sqrt(square / 0.62), double.PositiveInfinity);
            for (var round = 0; round < Rounds && (round < RoundsToShow || own <= best * FarBehind); round++)
            {
                circles.Relax(ring);
                own = Math.Min(own, circles.Enclosing());
                best = Math.Min(best, own);
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

    /// <summary>Circles of given radii, largest first, about the middle of a ring.</summary>
    private sealed class Circles
    {
        private readonly double[] radii;
        private readonly double[] x;
        private readonly double[] y;
        private readonly (int I, int J)[] neighbours;
        private int neighbourCount;

        public Circles(double[] radii, int start)
        {
            this.radii = radii;
            (x, y) = Start(radii, start);
            neighbours = new (int, int)[radii.Length * (radii.Length - 1) / 2];
        }

        /// <summary>Pushes overlapping circles apart and pulls all into the ring, step by step.</summary>
        public void Relax(double ring)
        {
            var moved = true;
            for (var step = 0; step < Steps && moved; step++)
            {
                if (step % StepsOfNeighbours == 0)
                {
                    FindNeighbours();
                }

                moved = false;
                var next = 0;
                for (var i = 0; i < radii.Length; i++)
                {
                    for (; next < neighbourCount && neighbours[next].I == i; next++)
                    {
                        moved |= Part(i, neighbours[next].J);
                    }

                    moved |= PullIn(i, ring - radii[i]);
                }
            }
        }

        /// <summary>Radius that holds the circles once they are spread just enough that none overlap.</summary>
        public double Enclosing()
        {
            var spread = 1.0;
            for (var i = 0; i < radii.Length; i++)
            {
                for (var j = i + 1; j < radii.Length; j++)
                {
                    spread = Math.Max(spread, (radii[i] + radii[j]) / Math.Max(Math.Sqrt(SquareBetween(i, j)), 1e-9));
                }
            }

            var ring = 0.0;
            for (var i = 0; i < radii.Length; i++)
            {
                ring = Math.Max(ring, (spread * Math.Sqrt((x[i] * x[i]) + (y[i] * y[i]))) + radii[i]);
            }

            return ring;
        }

        private double SquareBetween(int i, int j)
        {
            var (dx, dy) = (x[j] - x[i], y[j] - y[i]);
            return (dx * dx) + (dy * dy);
        }

        private void FindNeighbours()
        {
            var near = NearInLeast * radii[^1];
            neighbourCount = 0;
            for (var i = 0; i < radii.Length; i++)
            {
                for (var j = i + 1; j < radii.Length; j++)
                {
                    var within = radii[i] + radii[j] + near;
                    if (SquareBetween(i, j) < within * within)
                    {
                        neighbours[neighbourCount++] = (i, j);
                    }
                }
            }
        }

        private bool Part(int i, int j)
        {
            // most pairs lie apart: the root is taken only for those that do not
            var (dx, dy, apart) = (x[j] - x[i], y[j] - y[i], radii[i] + radii[j]);
            var square = (dx * dx) + (dy * dy);
            if (square >= apart * apart)
            {
                return false;
            }

            var distance = Math.Sqrt(square);
            var push = distance > 1e-12 ? (apart - distance) / (2 * distance) : 0;
            x[i] -= dx * push;
            y[i] -= dy * push;
            x[j] += dx * push;
            y[j] += dy * push;
            return apart - distance > Touching * apart;
        }

        private bool PullIn(int i, double reach)
        {
            var square = (x[i] * x[i]) + (y[i] * y[i]);
            if (square <= reach * reach || square <= 1e-24)
            {
                return false;
            }

            var distance = Math.Sqrt(square);
            x[i] *= reach / distance;
            y[i] *= reach / distance;
            return distance - reach > Touching * reach;
        }
    }
}
