using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class CrossLinkedInFuel : IDesignRule
{
    public RuleInfo Info { get; } = new("cross-linked-in-fuel", "Cross-linked insulation where fuel reaches it", Severity.Warning, Consequence.DoesNotLast, "vehicle service practice: XLPE is not fuel-resistant",
        "Fuel swells cross-linked polyethylene.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Wires.Where(w => context.TypeOf(w)?.CrossLinked == true)
            .SelectMany(w => context.SegmentsOf(w).Where(s => context.Zone(s.Zone)?.Exposure == Exposure.Fuel).Select(s => (Wire: w, Segment: s)))
            .GroupBy(p => p.Segment.Id, StringComparer.Ordinal)
            .Select(g => context.Found(Info, $"{Wording.List(g.Select(p => p.Wire.Id))} {(g.Count() == 1 ? "is" : "are")} cross-linked and {(g.Count() == 1 ? "runs" : "run")} where fuel reaches ({g.First().Segment.From} to {g.First().Segment.To}).",
                "Sleeve them, use a fuel-resistant family, or reroute.", [g.Key, .. g.Select(p => p.Wire.Id)]));
}
