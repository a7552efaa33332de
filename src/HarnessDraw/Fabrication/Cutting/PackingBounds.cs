namespace HarnessDraw.Fabrication.Cutting;

/// <summary>Lower bounds on the number of bars that need no search.</summary>
internal static class PackingBounds
{
    /// <summary>Total length over bar length, rounded up.</summary>
    public static int ByLength(PackingTask task) => (int)((task.TotalLength + task.Capacity - 1) / task.Capacity);

    /// <summary>
    /// Best of the bounds L2 of Martello and Toth over every threshold k: pieces longer than capacity - k lie alone, those longer than half no two
    /// together, and what room they leave takes the shorter ones down to k.
    /// </summary>
    public static int ByHalves(PackingTask task)
    {
        var best = 0;
        foreach (var k in task.Pieces.Select(p => p.Length).Where(l => 2 * l <= task.Capacity).Append(0).Distinct())
        {
            long alone = 0, half = 0, halfLength = 0, restLength = 0;
            foreach (var piece in task.Pieces)
            {
                if (piece.Length > task.Capacity - k)
                {
                    alone += piece.Count;
                }
                else if (2 * piece.Length > task.Capacity)
                {
                    half += piece.Count;
                    halfLength += piece.Length * piece.Count;
                }
                else if (piece.Length >= k)
                {
                    restLength += piece.Length * piece.Count;
                }
            }

            var left = restLength - ((half * task.Capacity) - halfLength);
            var more = left <= 0 ? 0 : (left + task.Capacity - 1) / task.Capacity;
            best = Math.Max(best, (int)(alone + half + more));
        }

        return best;
    }
}
