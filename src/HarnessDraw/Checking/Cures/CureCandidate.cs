using System.Collections.Immutable;

namespace HarnessDraw.Checking.Cures;

/// <summary>A change to the description that may cure a finding, as 'try --set' takes it, and in words.</summary>
public sealed record CureCandidate(ImmutableArray<string> Changes, string Words);

/// <summary>Changes of one kind, the smallest first: of each ladder the first that cures is told.</summary>
public sealed record CureLadder(ImmutableArray<CureCandidate> Rungs)
{
    /// <summary>Steps of a ladder: beyond so many sizes nobody looks for the cure there.</summary>
    internal const int MostRungs = 6;

    // colours for a new circuit, when the one that the program would choose cannot be told from its neighbours
    private static readonly ImmutableArray<string> NewColours = ["", ", colour: WH/RD", ", colour: GY/YE", ", colour: BN/WH"];

    /// <summary>A change that adds a circuit: in the colour that the program chooses, else in others.</summary>
    public static CureLadder InColours(string words, Func<string, ImmutableArray<string>> changes) => new([.. NewColours.Select(c => new CureCandidate(changes(c), words))]);

    /// <summary>A ladder of one rung.</summary>
    public static CureLadder Of(string words, params ReadOnlySpan<string> changes) => new([new([.. changes], words)]);

    /// <summary>Both changed together, rung by rung; the shorter ladder stays on its last.</summary>
    public static CureLadder Together(CureLadder a, CureLadder b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        return new([.. Enumerable.Range(0, Math.Max(a.Rungs.Length, b.Rungs.Length)).Select(i => (A: a.Rungs[Math.Min(i, a.Rungs.Length - 1)], B: b.Rungs[Math.Min(i, b.Rungs.Length - 1)]))
            .Select(p => new CureCandidate([.. p.A.Changes, .. p.B.Changes], $"{p.A.Words} and {p.B.Words}"))]);
    }
}
