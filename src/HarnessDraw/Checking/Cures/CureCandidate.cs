using System.Collections.Immutable;

namespace HarnessDraw.Checking.Cures;

/// <summary>A change to the description that may cure a finding, as 'try --set' takes it, and in words.</summary>
public sealed record CureCandidate(ImmutableArray<string> Changes, string Words);

/// <summary>Changes of one kind, the smallest first: of each ladder the first that cures is told.</summary>
public sealed record CureLadder(ImmutableArray<CureCandidate> Rungs)
{
    /// <summary>Both changed together, rung by rung; the shorter ladder stays on its last.</summary>
    public static CureLadder Together(CureLadder a, CureLadder b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return new([.. Enumerable.Range(0, Math.Max(a.Rungs.Length, b.Rungs.Length)).Select(i => (A: a.Rungs[Math.Min(i, a.Rungs.Length - 1)], B: b.Rungs[Math.Min(i, b.Rungs.Length - 1)]))
            .Select(p => new CureCandidate([.. p.A.Changes, .. p.B.Changes], $"{p.A.Words} and {p.B.Words}"))]);
    }
}
