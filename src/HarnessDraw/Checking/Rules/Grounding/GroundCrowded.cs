using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking.Rules.Grounding;

internal sealed class GroundCrowded : MeasuredRule
{
    public override RuleInfo Info { get; } = new("ground-crowded", "Too many rings on one ground point", Severity.Warning, Consequence.DoesNotLast, "FAA AC 43.13-1B chapter 11",
        "One loose nut then disturbs everything that returns there.")
    {
        Limits = [new("rings", 4, "rings", "FAA AC 43.13-1B chapter 11")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) => StudStacks.Of(context, ground: true).Select(s =>
        new Measure($"ground point {s.Thing.Id}", s.Wires.Count, context.Limit(Info, "rings"), "rings", () => context.Found(Info,
            $"{s.Thing.Id} takes {s.Wires.Count} rings, {Figure.Amps(s.Wires.Where(w => w.Worst is not null).Sum(w => w.Worst!.CurrentA))} ({Wording.List(s.Wires.Select(w => w.Named()))}).", "Split it in two points, or join small returns in a splice first.",
            [s.Thing.Id, .. s.Wires.Select(w => w.Id)], s.Cause(context, context.Limit(Info, "rings")), s.Thing.At)));
}
