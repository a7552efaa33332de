namespace HarnessDraw.Planning.Cavities;

/// <summary>Gives each row its own column at least total cost, by shortest augmenting paths with prices (Hungarian method), O(n^3).</summary>
public static class LinearAssignment
{
    /// <summary>Column of each row. There must be at least as many columns as rows.</summary>
    public static int[] Solve(double[][] cost)
    {
        ArgumentNullException.ThrowIfNull(cost);
        var rows = cost.Length;
        var columns = rows == 0 ? 0 : cost[0].Length;
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, rows);
        var rowPrice = new double[rows + 1];
        var columnPrice = new double[columns + 1];
        var rowOf = new int[columns + 1];
        var way = new int[columns + 1];
        for (var row = 1; row <= rows; row++)
        {
            Augment(cost, row, rowPrice, columnPrice, rowOf, way);
        }

        var result = new int[rows];
        for (var column = 1; column <= columns; column++)
        {
            if (rowOf[column] > 0)
            {
                result[rowOf[column] - 1] = column - 1;
            }
        }

        return result;
    }

    private static void Augment(double[][] cost, int row, double[] rowPrice, double[] columnPrice, int[] rowOf, int[] way)
    {
        var columns = rowOf.Length - 1;
        var least = new double[columns + 1];
        var done = new bool[columns + 1];
        Array.Fill(least, double.PositiveInfinity);
        rowOf[0] = row;
        var at = 0;
        do
        {
            done[at] = true;
            var (current, step, next) = (rowOf[at], double.PositiveInfinity, 0);
            for (var c = 1; c <= columns; c++)
            {
                if (done[c])
                {
                    continue;
                }

                var slack = cost[current - 1][c - 1] - rowPrice[current] - columnPrice[c];
                if (slack < least[c])
                {
                    least[c] = slack;
                    way[c] = at;
                }

                if (least[c] < step)
                {
                    step = least[c];
                    next = c;
                }
            }

            for (var c = 0; c <= columns; c++)
            {
                if (done[c])
                {
                    rowPrice[rowOf[c]] += step;
                    columnPrice[c] -= step;
                }
                else
                {
                    least[c] -= step;
                }
            }

            at = next;
        }
        while (rowOf[at] != 0);
        while (at != 0)
        {
            rowOf[at] = rowOf[way[at]];
            at = way[at];
        }
    }
}
