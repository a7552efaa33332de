using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SpliceUnbalanced : IDesignRule
{
    public RuleInfo Info { get; } = new("splice-unbalanced", "Very unlike copper on the two sides of a splice", Severity.Advice, Consequence.DoesNotLast, "common practice, no source",
        "A barrel closed on the thick side does not hold the thin one.")
    {
        Limits = [new("area ratio", 3, "", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var unlike = context.Plan.Splices.Select(s => (Splice: s, Wires: s.Wires.Select(context.Wire).OfType<Wire>().ToList())).Where(p => p.Wires.Count > 1)
            .Select(p => (p.Splice, In: p.Wires[0].AreaMm2, Out: p.Wires.Skip(1).Sum(w => w.AreaMm2))).Where(p => Math.Max(p.In, p.Out) > context.Limit(Info, "area ratio") * Math.Min(p.In, p.Out) + 1e-9).ToList();
        if (unlike.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.List(unlike.Select(p => $"{p.Splice.Id} joins {Figure.Number(p.In)} to {Figure.Area(p.Out)}"))}: more than {Figure.Number(context.Limit(Info, "area ratio"))} to 1.", "Fold the thin wire back once in the barrel, or use a step-down splice.", unlike.Select(p => p.Splice.Id));
        }
    }
}
