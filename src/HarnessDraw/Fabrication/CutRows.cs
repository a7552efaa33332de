using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>The wires of a plan as rows, in the orders that a bench asks for. Every order holds the same rows, numbered anew.</summary>
public static class CutRows
{
    /// <summary>All wires by reel (type, then the largest size first, then colour), the longest first within a reel, unknown lengths last; ties by id.</summary>
    public static ImmutableArray<CutRow> ByReel(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Numbered(plan.Wires
            .Select(w => RowOf(plan, w))
            .OrderBy(r => r.Reel.WireType, StringComparer.Ordinal)
            .ThenByDescending(r => r.Reel.AreaMm2)
            .ThenBy(r => r.Reel.SizeLabel, StringComparer.Ordinal)
            .ThenBy(r => r.Reel.Colour, StringComparer.Ordinal)
            .ThenByDescending(r => r.Wire.CutLengthMm ?? double.NegativeInfinity)
            .ThenBy(r => r.Wire.Id, StringComparer.Ordinal));
    }

    /// <summary>By branch, and in it as the wires are laid on the board: the longest first, of equal length the heaviest; wires of no named branch last.</summary>
    public static ImmutableArray<CutRow> ByBranch(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var facts = new WireFactFinder(plan);
        var branches = plan.Wires.ToDictionary(w => w.Id, facts.BranchOf, StringComparer.Ordinal);
        return Numbered(plan.Wires
            .Select(w => RowOf(plan, w))
            .OrderBy(r => branches[r.Wire.Id] is null)
            .ThenBy(r => branches[r.Wire.Id], StringComparer.Ordinal)
            .ThenByDescending(r => r.Wire.CutLengthMm ?? double.NegativeInfinity)
            .ThenByDescending(r => r.Wire.AreaMm2)
            .ThenBy(r => r.Wire.Id, NaturalOrder.Instance));
    }

    /// <summary>By wire id, numbers in an id counted as numbers.</summary>
    public static ImmutableArray<CutRow> ByWire(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Numbered(plan.Wires.Select(w => RowOf(plan, w)).OrderBy(r => r.Wire.Id, NaturalOrder.Instance));
    }

    private static CutRow RowOf(Plan plan, Wire wire) => new(0, wire, new Reel(wire.WireType, wire.AreaMm2, wire.SizeLabel, wire.Colour), ExactMm(plan, wire));

    private static ImmutableArray<CutRow> Numbered(IEnumerable<CutRow> rows) => [.. rows.Select((r, i) => r with { Number = i + 1 })];

    /// <summary>The cut length before it was rounded up; a length given by hand stands for itself. Null while a length on the way is unknown.</summary>
    public static double? ExactMm(Plan plan, Wire wire)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(wire);
        var roundedUpToMm = PlanningOptions.Usual.With(plan.Harness.Allowances).RoundUpToMm;
        if (wire.CutLengthMm is not { } cutMm)
        {
            return null;
        }

        var sumMm = wire.PathLengthMm + wire.Allowances.Sum(a => a.LengthMm);
        var isRoundedSum = sumMm is { } mm && mm > cutMm - roundedUpToMm - 0.0001 && mm <= cutMm + 0.0001;
        return isRoundedSum ? sumMm : cutMm;
    }
}
