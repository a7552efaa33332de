using System.Collections.Immutable;
using System.Globalization;

namespace HarnessDraw.Fabrication.Cutting;

/// <summary>Wire on hand: a part reel or an offcut, by its own name. A null type, size or colour fits any.</summary>
public sealed record StockPiece(string Id, string? WireType, string? SizeLabel, string? Colour, double LengthMm, int Pieces)
{
    public bool Fits(Reel reel)
    {
        ArgumentNullException.ThrowIfNull(reel);
        return (WireType is null || WireType == reel.WireType) && (SizeLabel is null || SameSize(SizeLabel, reel)) && (Colour is null || Colour == reel.Colour);
    }

    // '1.5', '1.50 mm2' and '1,5' are one size; a gauge is compared as it is written
    private static bool SameSize(string size, Reel reel) =>
        size == reel.SizeLabel
        || (!reel.SizeLabel.Contains("AWG", StringComparison.Ordinal)
            && double.TryParse(size.Replace("mm2", "", StringComparison.Ordinal).Replace(',', '.').Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var mm2)
            && double.TryParse(reel.SizeLabel, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var own) && mm2 == own);
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
