using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class OpenQuestions : IDesignRule
{
    public RuleInfo Info { get; } = new("open-questions", "Values still unknown", Severity.Advice, Consequence.Untidy, "common practice, no source",
        "Unknown is an honest answer, as long as somebody goes and finds out.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var open = context.Harness.OpenQuestions;
        if (!open.IsEmpty)
        {
            yield return context.Found(Info, $"{Wording.Count(open.Length, "value")} still unknown: {Wording.List(open.Select(q => q.What))}.", "Find them out at the vehicle.", open.Select(q => q.What), at: open[0].At);
        }
    }
}
