using System.Collections.Immutable;

namespace HarnessDraw.Fabrication.Cutting;

/// <summary>A wire cut from a reel; <paramref name="Copy"/> counts the harnesses of a batch from 1.</summary>
public sealed record CutPiece(string Wire, int Copy, double LengthMm);

/// <summary>A reel or offcut with what is cut from it, in order, and what is left, mm. <paramref name="From"/> is the stock piece's name or 'new 1', 'new 2'.</summary>
public sealed record ReelUse(Reel Reel, string From, bool IsNew, double LengthMm, ImmutableArray<CutPiece> Pieces, double RestMm, bool KeepRest);

/// <summary>
/// What one reel's wire needs: new reels, the proven least number of them beside the pieces taken from stock, and why. <paramref name="UsedMm"/> is the sum of
/// all cut lengths.
/// </summary>
public sealed record ReelNeed(Reel Reel, int Pieces, double UsedMm, double NewReelMm, int NewReels, int LeastNewReels, bool Proven, string Why);

/// <summary>Why wires of one reel cannot be cut.</summary>
public sealed record CutProblem(ImmutableArray<string> Wires, string Message);

/// <summary>All reels and offcuts of an order.</summary>
public sealed record ReelPlan(ImmutableArray<ReelUse> Uses, ImmutableArray<ReelNeed> Needs, ImmutableArray<CutProblem> Problems)
{
    /// <summary>What each wire is cut from, wires of several harnesses with all their reels.</summary>
    public ImmutableDictionary<string, string> CutFrom => Uses
        .SelectMany(u => u.Pieces.Select(p => (p.Wire, u.From)))
        .GroupBy(x => x.Wire, StringComparer.Ordinal)
        .ToImmutableDictionary(g => g.Key, g => string.Join("; ", g.Select(x => x.From).Distinct(StringComparer.Ordinal)), StringComparer.Ordinal);
}
