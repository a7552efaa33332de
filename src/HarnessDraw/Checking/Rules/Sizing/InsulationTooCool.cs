using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class InsulationTooCool : IDesignRule
{
    public RuleInfo Info { get; } = new("insulation-below-zone", "Insulation class below its zone's temperature", Severity.Error, Consequence.Fire, "vehicle service practice: insulation class by zone",
        "Insulation hotter than its class hardens, cracks and bares the copper.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Wires.Select(w => (Wire: w, Type: context.TypeOf(w)))
            .Where(p => p.Type is not null)
            .SelectMany(p => context.SegmentsOf(p.Wire).Select(s => (p.Wire, Type: p.Type!, Segment: s, Zone: context.Zone(s.Zone))))
            .Where(p => p.Zone?.AmbientC > p.Type.MaxC)
            .GroupBy(p => (p.Segment.Id, p.Type.Id))
            .Select(g => OfSegment(context, g.First().Segment, g.First().Type, g.First().Zone!, [.. g.Select(p => p.Wire)]));

    private Finding OfSegment(RuleContext context, Segment segment, WireType type, Zone zone, List<Wire> wires)
    {
        var better = context.Harness.Catalogue.WireTypes.Where(t => t.MaxC >= zone.AmbientC).OrderBy(t => t.MaxC).ThenBy(t => t.Id, StringComparer.Ordinal).FirstOrDefault();
        return context.Found(Info, $"{Wording.Count(wires.Count, "wire")} of {type.Title} ({Figure.Of(type.MaxC, "°C")}) {(wires.Count == 1 ? "runs" : "run")} from {segment.From} to {segment.To} in '{zone.Id}' at {Figure.Of(zone.AmbientC!.Value, "°C")}: {Wording.List(wires.Select(w => w.Id))}.",
            better is null ? "Reroute, or sleeve and shield." : $"Use {better.Title} ({Figure.Of(better.MaxC, "°C")}), or reroute.", [segment.Id, .. wires.Select(w => w.Id)], at: zone.At);
    }
}
