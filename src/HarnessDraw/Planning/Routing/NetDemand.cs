namespace HarnessDraw.Planning.Routing;

/// <summary>What a net asks of the tree: the places of its members (the root first) and the largest current of each.</summary>
internal sealed record NetDemand(int[] Places, double[] LargestA)
{
    /// <summary>Copper guessed for a current before sizes are known, mm2.</summary>
    public static double GuessMm2(double currentA) => Math.Max(0.5, 0.2 * currentA);
}
