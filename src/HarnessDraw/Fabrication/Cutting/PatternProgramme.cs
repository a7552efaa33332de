namespace HarnessDraw.Fabrication.Cutting;

/// <summary>
/// The linear programme over cutting patterns: fewest bars, whole or not, that give every piece (column generation as published by Gilmore and Gomory, 1961).
/// Patterns are made when they are wanted and kept for later, smaller demands.
/// </summary>
internal sealed class PatternProgramme(PackingTask task, long workLimit)
{
    private const double Tiny = 1e-9;
    private readonly PatternKnapsack knapsack = new(task);
    private readonly List<int[]> pool = [];

    public bool Exhausted => knapsack.Work > workLimit;

    public void Know(IEnumerable<int[]> patterns) => pool.AddRange(patterns);

    /// <summary>Solves for a demand; the patterns used with how often, and the worth of a piece of each class.</summary>
    public (List<(int[] Pattern, double Times)> Used, double[] Worth) Solve(int[] demand)
    {
        int[] rows = [.. Enumerable.Range(0, demand.Length).Where(c => demand[c] > 0)];
        var basis = new Basis(rows, demand, task);
        var worth = new double[demand.Length];
        var fresh = new int[demand.Length];
        var fitting = pool.Where(p => Fits(p, demand)).ToList();
        for (var round = 0; round < 4000 && !Exhausted; round++)
        {
            basis.Worth(worth);
            if (basis.EnterSurplus(worth))
            {
                continue;
            }

            if (BestOf(fitting, worth, rows) is { } known)
            {
                basis.Enter(known);
                continue;
            }

            if (knapsack.Best(worth, demand, fresh) <= 1 + 1e-7)
            {
                break;
            }

            int[] made = [.. fresh];
            pool.Add(made);
            fitting.Add(made);
            basis.Enter(made);
        }

        basis.Worth(worth);
        return (basis.Used(), worth);
    }

    /// <summary>
    /// A bound that holds whatever the rounding: with whole worths, no pattern is worth more than V, so bars times V must cover the worth of all pieces
    /// (Farley, 1990).
    /// </summary>
    public int Bound(double[] worth, int[] demand)
    {
        const double scale = 1_000_000;
        long[] whole = [.. worth.Select(w => (long)Math.Floor(Math.Max(0, Math.Min(w, 2)) * scale))];
        var most = knapsack.BestWhole(whole, demand);
        var total = whole.Select((w, c) => w * demand[c]).Sum();
        return most <= 0 ? 0 : (int)((total + most - 1) / most);
    }

    private static bool Fits(int[] pattern, int[] demand)
    {
        for (var c = 0; c < pattern.Length; c++)
        {
            if (pattern[c] > demand[c])
            {
                return false;
            }
        }

        return true;
    }

    private static int[]? BestOf(List<int[]> patterns, double[] worth, int[] rows)
    {
        int[]? best = null;
        var most = 1 + 1e-6;
        foreach (var pattern in patterns)
        {
            var sum = 0.0;
            foreach (var c in rows)
            {
                sum += worth[c] * pattern[c];
            }

            if (sum > most)
            {
                (best, most) = (pattern, sum);
            }
        }

        return best;
    }

    /// <summary>Basis of the simplex method with its inverse; one row a class that is still wanted.</summary>
    private sealed class Basis
    {
        private readonly int[] rows;
        private readonly int classes;
        private readonly double[,] inverse;
        private readonly double[] amount;
        private readonly int[]?[] columns;

        public Basis(int[] rows, int[] demand, PackingTask task)
        {
            (this.rows, classes) = (rows, demand.Length);
            inverse = new double[rows.Length, rows.Length];
            amount = new double[rows.Length];
            columns = new int[]?[rows.Length];
            for (var r = 0; r < rows.Length; r++)
            {
                var many = (int)Math.Min(demand[rows[r]], task.Capacity / task.Pieces[rows[r]].Length);
                columns[r] = new int[demand.Length];
                columns[r]![rows[r]] = many;
                inverse[r, r] = 1.0 / many;
                amount[r] = (double)demand[rows[r]] / many;
            }
        }

        public void Worth(double[] worth)
        {
            Array.Clear(worth);
            for (var r = 0; r < rows.Length; r++)
            {
                if (columns[r] is not null)
                {
                    for (var c = 0; c < rows.Length; c++)
                    {
                        worth[rows[c]] += inverse[r, c];
                    }
                }
            }
        }

        /// <summary>A piece more than wanted costs nothing: enters where the worth of a class is negative.</summary>
        public bool EnterSurplus(double[] worth)
        {
            var worst = -1;
            for (var r = 0; r < rows.Length; r++)
            {
                if (worth[rows[r]] < -1e-7 && (worst < 0 || worth[rows[r]] < worth[rows[worst]]))
                {
                    worst = r;
                }
            }

            if (worst < 0)
            {
                return false;
            }

            var direction = new double[rows.Length];
            for (var r = 0; r < rows.Length; r++)
            {
                direction[r] = -inverse[r, worst];
            }

            return Pivot(direction, null);
        }

        public void Enter(int[] pattern)
        {
            var direction = new double[rows.Length];
            for (var r = 0; r < rows.Length; r++)
            {
                for (var c = 0; c < rows.Length; c++)
                {
                    direction[r] += inverse[r, c] * pattern[rows[c]];
                }
            }

            Pivot(direction, pattern);
        }

        public List<(int[] Pattern, double Times)> Used()
        {
            var used = new List<(int[], double)>();
            for (var r = 0; r < rows.Length; r++)
            {
                if (columns[r] is { } pattern && amount[r] > 1e-7)
                {
                    used.Add((pattern, amount[r]));
                }
            }

            return used;
        }

        private bool Pivot(double[] direction, int[]? column)
        {
            var leave = -1;
            var least = double.PositiveInfinity;
            for (var r = 0; r < rows.Length; r++)
            {
                if (direction[r] > Tiny && amount[r] / direction[r] < least - 1e-12)
                {
                    (leave, least) = (r, amount[r] / direction[r]);
                }
            }

            if (leave < 0)
            {
                return false;
            }

            var by = direction[leave];
            for (var c = 0; c < rows.Length; c++)
            {
                inverse[leave, c] /= by;
            }

            amount[leave] /= by;
            for (var r = 0; r < rows.Length; r++)
            {
                if (r == leave || direction[r] == 0)
                {
                    continue;
                }

                for (var c = 0; c < rows.Length; c++)
                {
                    inverse[r, c] -= direction[r] * inverse[leave, c];
                }

                amount[r] = Math.Max(0, amount[r] - (direction[r] * amount[leave]));
            }

            columns[leave] = column;
            return true;
        }
    }
}
