using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>
/// A label for one end of a wire: the id, what the wire does, where this end goes, and the shrink sleeve it is printed on. <see cref="End"/> is 'A' or 'B'.
/// </summary>
public sealed record WireLabel(string Wire, char End, string Function, string GoesTo, double OutsideMm, LabelSleeve? Sleeve)
{
    /// <summary>The two lines as printed, the id first and largest.</summary>
    public string Text => $"{Wire} {GoesTo}";
}

/// <summary>Labels in the order they are put on: by branch and lay order, end A before end B.</summary>
public static class WireLabels
{
    public static ImmutableArray<WireLabel> Of(Plan plan) =>
    [
        .. CutRows.ByBranch(plan).SelectMany(r => (WireLabel[])[LabelOf(r.Wire, 'A', r.Wire.From), LabelOf(r.Wire, 'B', r.Wire.To)]),
    ];

    private static WireLabel LabelOf(Wire wire, char end, WireEnd to) =>
        new(wire.Id, end, wire.Circuit, to.ToString(), wire.OutsideMm, LabelSleeve.For(wire.OutsideMm));
}
