using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.Labels;

/// <summary>One label: what stands largest on it, and two lines below.</summary>
internal sealed record HarnessLabel(string Name, string Line, string Under)
{
    /// <summary>For the label of a wire's end: the wire.</summary>
    public Wire? Wire { get; init; }
    public ShrinkSleeve? Sleeve => Wire is null ? null : ShrinkSleeve.For(Wire.OutsideMm);
}

/// <summary>The labels of a plan in the order they are put on.</summary>
internal static class HarnessLabels
{
    /// <summary>Two for every wire, one at each end: by station of the end, then connector and cavity.</summary>
    public static ImmutableArray<HarnessLabel> OfWires(Plan plan)
    {
        var measure = new TreeMeasure(plan);
        var ends = plan.Wires.SelectMany(w => new[] { (Wire: w, Here: w.From, There: w.To), (Wire: w, Here: w.To, There: w.From) });
        return
        [
            .. ends.OrderBy(e => measure.Station(e.Here) ?? double.MaxValue)
                .ThenBy(e => e.Here.At, CavityOrder.Instance)
                .ThenBy(e => e.Here.Pin ?? "", CavityOrder.Instance)
                .ThenBy(e => e.Wire.Id, StringComparer.Ordinal)
                .Select(e => new HarnessLabel(e.Wire.Id, EndText.Words(e.Here), $"to {EndText.Words(e.There)}") { Wire = e.Wire }),
        ];
    }

    /// <summary>Branches and connectors: flags.</summary>
    public static ImmutableArray<HarnessLabel> OfParts(Plan plan)
    {
        var used = plan.Tree.Segments.Where(s => !s.Wires.IsEmpty).Select(s => s.To).ToHashSet(StringComparer.Ordinal);
        var branches = plan.Harness.Layout.Places.Where(p => p.Branch is not null && used.Contains(p.Id)).GroupBy(p => p.Branch!, StringComparer.Ordinal)
            .Select(g => new HarnessLabel(g.Key, "branch", $"ends at {string.Join(", ", g.Select(p => p.Id))}"));
        var ends = plan.Wires.SelectMany(w => new[] { w.From.At, w.To.At }).ToHashSet(StringComparer.Ordinal);
        var connectors = plan.Harness.Things.Where(t => t.ConnectorPart is not null && ends.Contains(t.Id)).OrderBy(t => t.Id, StringComparer.Ordinal)
            .Select(t => new HarnessLabel(t.Label + (t.SideMark is { } mark ? $" {mark}" : ""), t.Kind == ThingKind.Mate ? "firewall connector" : $"plug {t.ConnectorPart}", $"at {t.Place}"));
        return [.. branches, .. connectors];
    }

    /// <summary>One for each fuse, in the order of their names.</summary>
    public static ImmutableArray<HarnessLabel> OfFuses(Plan plan) =>
    [
        .. plan.Fuses.OrderBy(f => f.Id, CavityOrder.Instance)
            .Select(f => new HarnessLabel($"{f.Id}  {Shown.Number(f.RatingA, 1)} A", "fuse", f.LargestA is { } largest ? $"never above {Shown.Number(largest, 1)} A" : "same rating only")),
    ];
}
