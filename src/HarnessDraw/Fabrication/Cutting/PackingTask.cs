using System.Collections.Immutable;

namespace HarnessDraw.Fabrication.Cutting;

/// <summary>Pieces of one length: the length in whole units (the packer does not care which) and how many there are.</summary>
public readonly record struct PieceClass(long Length, int Count);

/// <summary>What is to be cut from bars of one length: classes of pieces, the longest first, no length twice.</summary>
public sealed record PackingTask(long Capacity, ImmutableArray<PieceClass> Pieces)
{
    public long TotalLength => Pieces.Sum(p => p.Length * p.Count);

    public int TotalCount => Pieces.Sum(p => p.Count);

    /// <summary>The task of a list of lengths in any order.</summary>
    public static PackingTask Of(long capacity, IEnumerable<long> lengths) =>
        new(capacity, [.. lengths.GroupBy(l => l).OrderByDescending(g => g.Key).Select(g => new PieceClass(g.Key, g.Count()))]);

    /// <summary>The same task in the largest units that keep every length whole; sums of pieces stay multiples of it.</summary>
    internal PackingTask Reduced(out long unit)
    {
        unit = Pieces.Aggregate(0L, (g, p) => Gcd(g, p.Length));
        if (unit <= 1)
        {
            unit = 1;
            return this;
        }

        var by = unit;
        return new(Capacity / by, [.. Pieces.Select(p => p with { Length = p.Length / by })]);
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}

/// <summary>A way to cut one bar: how many pieces of each class of the task, and on how many bars.</summary>
public sealed record CutPattern(ImmutableArray<int> Counts, int Times);

/// <summary>
/// Pieces laid on bars. <see cref="LowerBound"/> is proven: no way of cutting needs fewer bars. <see cref="ProvenBy"/> says what proved it.
/// </summary>
public sealed record Packing(PackingTask Task, ImmutableArray<CutPattern> Patterns, int LowerBound, string ProvenBy)
{
    public int Bars => Patterns.Sum(p => p.Times);

    public bool IsProvenLeast => Bars == LowerBound;

    /// <summary>Bars that the total length alone would need.</summary>
    public int BarsByLength => Task.Capacity == 0 ? 0 : (int)((Task.TotalLength + Task.Capacity - 1) / Task.Capacity);
}
