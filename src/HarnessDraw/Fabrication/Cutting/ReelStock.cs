using System.Collections.Immutable;

namespace HarnessDraw.Fabrication.Cutting;

/// <summary>Wire on hand: a part reel or an offcut, by its own name. A null type, size or colour fits any.</summary>
public sealed record StockPiece(string Id, string? WireType, string? SizeLabel, string? Colour, double LengthMm, int Pieces)
{
    public bool Fits(Reel reel)
    {
        ArgumentNullException.ThrowIfNull(reel);
        return (WireType is null || WireType == reel.WireType) && (SizeLabel is null || SizeLabel == reel.SizeLabel) && (Colour is null || Colour == reel.Colour);
    }
}

/// <summary>What wire is cut from: pieces on hand first, then new reels of one length. Figures without a source are common practice.</summary>
public sealed record ReelStock
{
    public ImmutableArray<StockPiece> OnHand { get; init; } = [];

    /// <summary>Length of a new reel, mm.</summary>
    public double NewReelMm { get; init; } = 30_000;

    /// <summary>Cut off the end of every reel and offcut, mm.</summary>
    public double EndTrimMm { get; init; } = 30;

    /// <summary>Lost at each cut, mm.</summary>
    public double KerfMm { get; init; }

    /// <summary>What is left is worth keeping from this length on, mm.</summary>
    public double KeepFromMm { get; init; } = 300;
}
