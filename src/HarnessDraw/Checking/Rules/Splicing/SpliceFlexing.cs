using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SpliceFlexing : IDesignRule
{
    public RuleInfo Info { get; } = new("splice-flexing", "Splice where the harness moves", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "Strands break where the stiff splice ends.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Splices.Select(s => (Splice: s, Path: context.Segment(s.Segment) is { } segment ? context.PathOf(segment) : null)).Where(p => p.Path?.MovesMm > 0)
            .Select(p => context.Found(Info, $"{p.Splice.Id} lies on {p.Path!.From} to {p.Path.To}, which moves ±{Figure.Millimetres(p.Path.MovesMm!.Value)}.", "Move it to a fixed stretch.", [p.Splice.Id, p.Splice.Segment], p.Splice.Builds, p.Path.At));
}
