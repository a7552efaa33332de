using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class HoleEdgeBare : IDesignRule
{
    public RuleInfo Info { get; } = new("hole-edge-bare", "Bundle near the edge of a hole that no grommet fits", Severity.Warning, Consequence.Fire, "FAA AC 43.13-1B chapter 11: a grommet where the gap is under 3/8 in",
        "The edge of a panel cuts through covering and insulation.")
    {
        Limits = [new("gap", 9.5, "mm", "FAA AC 43.13-1B chapter 11: 3/8 in")],
    };

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Layout.Openings.Where(o => o.Holds is null && !(o.Round && context.Harness.Catalogue.Grommets.Any(g => Math.Abs(g.HoleMm - Math.Min(o.WidthMm, o.HeightMm)) < 0.5)))
            .Select(o => (Opening: o, BundleMm: context.Plan.Tree.Segments.Where(s => (s.From == o.Place || s.To == o.Place) && !s.Wires.IsEmpty).Select(s => s.DiameterMm).DefaultIfEmpty(0).Max()))
            .Select(p => (p.Opening, p.BundleMm, GapMm: (Math.Min(p.Opening.WidthMm, p.Opening.HeightMm) - p.BundleMm) / 2))
            .Where(p => p.BundleMm > 0 && p.GapMm >= 0 && p.GapMm < context.Limit(Info, "gap"))
            .Select(p => context.Found(Info, $"The bundle of {Figure.Of(p.BundleMm, "mm")} at {p.Opening.Place} has {Figure.Of(Math.Round(p.GapMm, 1), "mm")} to the edge of the hole, and no grommet of the catalogue fits it; {Figure.Of(context.Limit(Info, "gap"), "mm")} is the least without one.",
                "Drill the hole for a grommet, or line its edge and clip the bundle clear of it.", [p.Opening.Place], at: p.Opening.At));
}
