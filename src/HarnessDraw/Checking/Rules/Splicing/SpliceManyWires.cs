using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SpliceManyWires : MeasuredRule
{
    public override RuleInfo Info { get; } = new("splice-many-wires", "Too many wires in one splice", Severity.Warning, Consequence.DoesNotLast, "FAA AC 43.13-1B chapter 11; common practice",
        "Strands in the middle of a thick joint are not held.")
    {
        Limits = [new("wires", 4, "wires", "FAA AC 43.13-1B chapter 11; common practice")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) => context.Plan.Splices.Select(s =>
    {
        var wires = s.Wires.Select(context.Wire).OfType<Wire>().ToList();
        var most = context.Builds.Heaviest(wires, w => w.Builds, _ => 1).Count;
        return new Measure($"splice {s.Id}", most, context.Limit(Info, "wires"), "wires", () => context.Found(Info, $"{s.Id} joins {most} wires ({Wording.List(s.Wires)}).", "Use a bus bar, or split it in two splices 40 mm apart.", [s.Id, .. s.Wires],
            s.Builds.And(context.Builds.CauseOf(wires, w => w.Builds, _ => 1, context.Limit(Info, "wires")))));
    });
}
