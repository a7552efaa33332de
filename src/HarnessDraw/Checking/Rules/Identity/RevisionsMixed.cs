using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class RevisionsMixed : IDesignRule
{
    public RuleInfo Info { get; } = new("revisions-mixed", "Revision table that contradicts itself", Severity.Error, Consequence.Untidy, "ISO 7200: revision index and date of issue",
        "Two halves built to two revisions do not mate; the table is how anybody knows.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var drawing = context.Harness.Drawing;
        foreach (var twice in drawing.Revisions.GroupBy(r => r.Rev, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            yield return context.Found(Info, $"Revision {twice.Key} stands {twice.Count()} times ({Wording.List(twice.Select(r => r.On))}).", "Give every revision a letter of its own.", [twice.Key]);
        }

        if (drawing.Revisions.Length > 0 && drawing.IssuedOn is { } issued && drawing.Revisions[^1] is var last && last.On != issued && IsDate(last.On) && IsDate(issued))
        {
            yield return context.Found(Info, $"The sheet is issued {issued}, but its last revision {last.Rev} is of {last.On}.", "Issue the sheet with the date of its last revision.", [last.Rev]);
        }
    }

    private static bool IsDate(string text) => text.Length == 10 && text[4] == '-' && text[7] == '-';
}
