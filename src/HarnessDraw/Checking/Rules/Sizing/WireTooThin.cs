using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class WireTooThin : MeasuredRule
{
    public override RuleInfo Info { get; } = new("wire-too-thin", "Wire thinner than the bay allows", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "Thin wire breaks where it moves and is pulled, whatever it carries.")
    {
        Limits = [new("in the bay", PlanningOptions.Usual.SmallestAreaMm2, "mm²", "common practice, no source: 0.5 mm² or 20 AWG in an engine bay")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        context.Plan.Wires.Where(w => new[] { w.From.At, w.To.At }.Any(at => context.Thing(at)?.Side != Side.Cabin))
            .Where(w => w.AreaMm2 < context.Limit(Info, "in the bay"))
            .Select(w => new Measure($"size of {w.Named()}", w.AreaMm2, context.Limit(Info, "in the bay"), "mm²", () => context.Found(Info,
                $"{w.Named()} is {Figure.Area(w.AreaMm2)} in the bay; {Figure.Area(context.Limit(Info, "in the bay"))} is the least that lasts there.", "Use a larger size.", [w.Id, w.Circuit], w.Builds, context.Circuit(w.Circuit)?.At), AtLeast: true));
}
