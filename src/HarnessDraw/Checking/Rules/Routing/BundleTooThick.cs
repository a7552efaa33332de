using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class BundleTooThick : MeasuredRule
{
    public override RuleInfo Info { get; } = new("bundle-too-thick", "Bundle too thick", Severity.Advice, Consequence.DoesNotLast, "FAA AC 43.13-1B chapter 11",
        "A thick bundle is stiff, hot inside and hard to mend.")
    {
        Limits = [new("wires", 75, "wires", "FAA AC 43.13-1B chapter 11"), new("diameter", 50, "mm", "FAA AC 43.13-1B chapter 11: 2 in")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        context.Plan.Tree.Segments.Where(s => !s.Wires.IsEmpty).OrderByDescending(s => s.DiameterMm).ThenBy(s => s.Id, StringComparer.Ordinal)
            .SelectMany(s => new[] { (Value: (double)s.Wires.Length, Limit: "wires", Unit: "wires"), (Value: s.DiameterMm, Limit: "diameter", Unit: "mm") }.Select(m =>
                new Measure($"bundle {s.Id}", m.Value, context.Limit(Info, m.Limit), m.Unit, () => context.Found(Info, $"{s.Id} ({s.From} to {s.To}) has {s.Wires.Length} wires, {Figure.Of(s.DiameterMm, "mm")}; {Figure.Of(context.Limit(Info, m.Limit), m.Unit)} is the most.", "Split it in two bundles.", [s.Id]))));
}
