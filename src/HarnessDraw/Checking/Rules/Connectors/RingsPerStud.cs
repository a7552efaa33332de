using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class RingsPerStud : MeasuredRule
{
    public override RuleInfo Info { get; } = new("rings-per-stud", "Too many rings on one stud", Severity.Warning, Consequence.DoesNotLast, "FAA AC 43.13-1B chapter 11; ABYC E-11 as quoted",
        "A thick stack settles, loosens and heats.")
    {
        Limits = [new("rings", 4, "rings", "FAA AC 43.13-1B chapter 11; ABYC E-11 as quoted")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) => StudStacks.Of(context, ground: false).Select(s =>
        new Measure($"stud {PointWords.OfNode(s.Pin)}", s.Wires.Count, context.Limit(Info, "rings"), "rings", () => context.Found(Info, $"{s.Wires.Count} rings on {PointWords.OfNode(s.Pin)} ({Wording.List(s.Wires.Select(w => w.Named()))}): {Figure.Number(context.Limit(Info, "rings"))} are the most.",
            "Use a bus bar; largest ring at the bottom.", [s.Pin, .. s.Wires.Select(w => w.Id)], s.Cause(context, context.Limit(Info, "rings")), s.Thing.At)));
}
