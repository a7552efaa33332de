using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>What the owner pays for a unit of a part and what the unit weighs in grams; null: not said. A unit is that of the purchase list.</summary>
public sealed record PartPrice(string Part, double? Each, double? MassGram, SourceSpan? At);

/// <summary>Prices and masses by part, and the currency they are in, if said.</summary>
public sealed record PriceList(ImmutableArray<PartPrice> Parts, string? Currency)
{
    public static readonly PriceList None = new([], null);

    /// <summary>The row of a part, or of a wire in any colour ('thin-wall-105 1.5 mm2').</summary>
    public PartPrice? Of(string part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return Parts.FirstOrDefault(p => p.Part == part) ?? Parts.FirstOrDefault(p => part.LastIndexOf(' ') is > 0 and var at && p.Part == part[..at]);
    }
}
