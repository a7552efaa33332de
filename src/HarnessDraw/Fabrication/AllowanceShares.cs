using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>
/// A wire's allowances by what they are for, both ends together, millimetres. Each allowance of the wire is counted in one share and no other, so that the
/// shares add up to the difference between the exact cut length and the route.
/// </summary>
public sealed record AllowanceShares(ImmutableSortedDictionary<string, double> Mm)
{
    /// <summary>What an allowance can be for, in the order of the cut list; what fits none of them is 'other'.</summary>
    public static readonly ImmutableArray<string> Kinds =
        ["lay", "twist", "breakout", "bend", "service loop", "drip loop", "strip", "re-termination", "dress", "stud stack", "cut at the car", "other"];

    public double this[string kind] => Mm.GetValueOrDefault(kind);

    public static AllowanceShares Of(Wire wire)
    {
        ArgumentNullException.ThrowIfNull(wire);
        return new(wire.Allowances.GroupBy(KindOf, StringComparer.Ordinal)
            .ToImmutableSortedDictionary(g => g.Key, g => g.Sum(a => a.LengthMm), StringComparer.Ordinal));
    }

    /// <summary>'dress (from)' is dress, 'service loop S4' a service loop.</summary>
    private static string KindOf(Allowance allowance) =>
        Kinds.FirstOrDefault(k => allowance.What == k || allowance.What.StartsWith(k + " ", StringComparison.Ordinal)) ?? "other";
}
