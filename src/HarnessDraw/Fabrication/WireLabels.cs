using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>
/// A label for one end of a wire: the id, what the wire does, where this end goes, and the shrink sleeve it is printed on. <see cref="End"/> is 'A' or 'B'.
/// </summary>
public sealed record WireLabel(string Wire, char End, string Function, string GoesTo, double OutsideMm, LabelSleeve? Sleeve, int Copies)
{
    /// <summary>Farthest from its end, mm; null while the length of the wire is unknown.</summary>
    public double? AtMm { get; init; }

    /// <summary>Further labels on the wire where it runs open, told with end A.</summary>
    public int? BetweenIfOpen { get; init; }


    /// <summary>The two lines as printed, the id first and largest.</summary>
    public string Text => $"{Wire} {GoesTo}";
}

/// <summary>Labels in the order they are put on: by branch and lay order, end A before end B.</summary>
public static class WireLabels
{
    /// <summary>Labels of one harness with everything in it.</summary>
    public static ImmutableArray<WireLabel> Of(Plan plan) => Of(FabricationOrder.Everything(plan));

    /// <summary>Labels of an order, each with the number that is printed.</summary>
    public static ImmutableArray<WireLabel> Of(FabricationOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        return [.. CutRows.ByBranch(order.Shown).SelectMany(r => (WireLabel[])[LabelOf(order, r.Wire, 'A', r.Wire.From), LabelOf(order, r.Wire, 'B', r.Wire.To)])];
    }

    private static WireLabel LabelOf(FabricationOrder order, Wire wire, char end, WireEnd to) =>
        new(wire.Id, end, wire.Circuit, to.ToString(), wire.OutsideMm, LabelSleeve.For(wire.OutsideMm), order.QuantityOf(wire.Builds))
        {
            AtMm = wire.CutLengthMm is { } mm ? LabelSpacing.AtMm(mm) : null,
            BetweenIfOpen = end == 'A' && wire.CutLengthMm is { } length ? LabelSpacing.Between(length) : null,
        };
}
