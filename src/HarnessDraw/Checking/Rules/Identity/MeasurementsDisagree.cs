using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class MeasurementsDisagree : IDesignRule
{
    public RuleInfo Info { get; } = new("measurements-disagree", "Two measurements of one path disagree", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "One of the two is wrong, and every wire on the path inherits it.")
    {
        Limits = [new("share", 3, "%", "common practice, no source"), new("length", 15, "mm", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var path in context.Harness.Layout.Paths.Where(p => p is { LengthMm: > 0, AgainMm: not null }))
        {
            var (a, b) = (path.LengthMm!.Value, path.AgainMm!.Value);
            var apart = Math.Abs(a - b);
            if (apart > context.Limit(Info, "length") && apart > context.Limit(Info, "share") / 100 * Math.Max(a, b))
            {
                yield return context.Found(Info, $"{path.From} to {path.To} was measured {Figure.Millimetres(a)} and {Figure.Millimetres(b)}: {Figure.Millimetres(apart)} apart.", "Measure again with a string on the real route.", [path.Id, path.From, path.To], at: path.At);
            }
        }
    }
}
