using System.Collections.Immutable;
using HarnessDraw.Fabrication.Supplies;

namespace HarnessDraw.Fabrication.Kits;

/// <summary>One kind of work: how often it is done, by which unit, and minutes each time.</summary>
public sealed record TimeLine(string Work, string Unit, double Count, double MinutesEach)
{
    public double Minutes => Count * MinutesEach;
}

/// <summary>What an order takes at the bench by stated unit times. The usual ones are common practice, no source, for one careful person with hand tools.</summary>
public static class TimeEstimate
{
    /// <summary>Kinds of work with the unit they are counted in and the usual minutes each.</summary>
    public static readonly ImmutableArray<(string Work, string Unit, double Minutes)> Usual =
    [
        ("cut", "wire", 0.4), ("strip", "end", 0.2), ("thread on", "item", 0.2), ("crimp", "terminal", 0.4), ("pull test", "die and size", 3), ("label", "label", 0.5), ("lay", "wire metre", 0.3),
        ("splice", "splice", 4), ("insert", "cavity", 0.3), ("plug", "cavity", 0.1), ("tie", "tie", 0.3), ("clip", "clip", 0.5), ("tape", "metre of tape", 0.8), ("sleeve", "metre", 1), ("test", "wire", 0.5),
    ];

    public static ImmutableArray<string> Works => [.. Usual.Select(u => u.Work)];

    /// <param name="order">What is made.</param>
    /// <param name="stated">Minutes by kind of work, in place of the usual ones.</param>
    public static ImmutableArray<TimeLine> Of(FabricationOrder order, ImmutableSortedDictionary<string, double> stated)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(stated);
        var counts = Counts(order);
        return [.. Usual.Select(u => new TimeLine(u.Work, u.Unit, counts[u.Work], stated.GetValueOrDefault(u.Work, u.Minutes)))];
    }

    private static Dictionary<string, double> Counts(FabricationOrder order)
    {
        var wires = order.Wires.Select(w => (Wire: w, Times: order.QuantityOf(w.Builds))).ToArray();
        var ends = wires.SelectMany(w => new[] { (End: w.Wire.From, w.Times), (End: w.Wire.To, w.Times) }).ToArray();
        var cuts = order.Each.SelectMany(b => CoveringCuts.Of(b.Plan).Select(c => (Cut: c, b.Times))).ToArray();
        var number = wires.Sum(w => w.Times);
        return new(StringComparer.Ordinal)
        {
            ["cut"] = number,
            ["strip"] = 2 * number,
            ["thread on"] = ends.Sum(e => e.End.ThreadOnFirst.Length * e.Times),
            ["crimp"] = ends.Where(e => e.End.Terminal is not null).Sum(e => e.Times),
            ["pull test"] = CrimpGroups.Of(order).Length,
            ["label"] = 2 * number,
            ["lay"] = wires.Sum(w => (w.Wire.CutLengthMm ?? 0) / 1000 * w.Times),
            ["splice"] = order.Plan.Splices.Sum(s => order.QuantityOf(s.Builds)),
            ["insert"] = order.Plan.Cavities.Where(c => c.Wire is not null).DistinctBy(c => (c.Connector, c.Side, c.Cavity, c.Wire)).Sum(c => order.Plan.Wires.FirstOrDefault(w => w.Id == c.Wire) is { } wire ? order.QuantityOf(wire.Builds) : 0),
            ["plug"] = new PartsCounter(order).Plugs().Sum(p => p.Value),
            ["tie"] = cuts.Sum(c => c.Cut.Ties * c.Times),
            ["clip"] = cuts.Sum(c => (c.Cut.Clips ?? 0) * c.Times),
            ["tape"] = cuts.Sum(c => (c.Cut.TapeM ?? 0) * c.Times),
            ["sleeve"] = cuts.Sum(c => (c.Cut.SleeveMm ?? 0) / 1000 * c.Times),
            ["test"] = number,
        };
    }
}
