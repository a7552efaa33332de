using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The wire a row is cut from: type, size and colour.</summary>
public sealed record Reel(string WireType, double AreaMm2, string SizeLabel, string Colour);

/// <summary>
/// One line of the cut list: a wire, the reel it comes from and its lengths. <see cref="ExactMm"/> is the length before it was rounded up, or the length
/// given by hand; null while a length on the way is unknown.
/// </summary>
public sealed record CutRow(int Number, Wire Wire, Reel Reel, double? ExactMm)
{
    /// <summary>Sum of the wire's allowances, mm.</summary>
    public double AllowanceMm => Wire.Allowances.Sum(a => a.LengthMm);

    /// <summary>The length in inches, converted once from the exact value and rounded up: to 1/4 in up to 36 in, to 1/2 in above.</summary>
    public double? CutIn => ExactMm is { } mm ? InchLength.RoundedUp(mm) : null;
}

/// <summary>The wires of a plan in the order they are cut.</summary>
public static class CutRows
{
    /// <summary>All wires by reel (type, then the largest size first, then colour), the longest first within a reel, unknown lengths last; ties by id.</summary>
    public static ImmutableArray<CutRow> ByReel(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var rows = plan.Wires
            .Select(w => new CutRow(0, w, new Reel(w.WireType, w.AreaMm2, w.SizeLabel, w.Colour), ExactOf(w)))
            .OrderBy(r => r.Reel.WireType, StringComparer.Ordinal)
            .ThenByDescending(r => r.Reel.AreaMm2)
            .ThenBy(r => r.Reel.SizeLabel, StringComparer.Ordinal)
            .ThenBy(r => r.Reel.Colour, StringComparer.Ordinal)
            .ThenByDescending(r => r.Wire.CutLengthMm ?? double.NegativeInfinity)
            .ThenBy(r => r.Wire.Id, StringComparer.Ordinal);
        return [.. rows.Select((r, i) => r with { Number = i + 1 })];
    }

    // a length given by hand stands for itself; a planned one is the sum before rounding up
    private static double? ExactOf(Wire wire)
    {
        if (wire.CutLengthMm is not { } cutMm)
        {
            return null;
        }

        var sumMm = wire.PathLengthMm + wire.Allowances.Sum(a => a.LengthMm);
        var isRoundedSum = sumMm is { } mm && mm > cutMm - 10.0001 && mm <= cutMm + 0.0001;
        return isRoundedSum ? sumMm : cutMm;
    }
}
