namespace HarnessDraw.Model;

/// <summary>Which cavities of a body sit directly beside each other.</summary>
internal static class CavityNeighbours
{
    private const double Reach = 1.3;

    /// <summary>Pairs both ways round.</summary>
    public static HashSet<(string A, string B)> Of(ConnectorPart part)
    {
        var nearest = part.Cavities.Select(c => part.Cavities.Where(o => o != c).Select(o => Distance(c, o)).DefaultIfEmpty(0).Min()).ToArray();
        var pairs = new HashSet<(string, string)>();
        for (var i = 0; i < part.Cavities.Length; i++)
        {
            for (var j = i + 1; j < part.Cavities.Length; j++)
            {
                var (a, b) = (part.Cavities[i], part.Cavities[j]);
                if (Distance(a, b) <= Reach * Math.Max(nearest[i], nearest[j]))
                {
                    pairs.Add((a.Name, b.Name));
                    pairs.Add((b.Name, a.Name));
                }
            }
        }

        return pairs;
    }

    private static double Distance(CavityPart a, CavityPart b) => Math.Sqrt(((a.Xmm - b.Xmm) * (a.Xmm - b.Xmm)) + ((a.Ymm - b.Ymm) * (a.Ymm - b.Ymm)));
}
