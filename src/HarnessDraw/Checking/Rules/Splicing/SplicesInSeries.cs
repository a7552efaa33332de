using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SplicesInSeries : IDesignRule
{
    public RuleInfo Info { get; } = new("splices-in-series", "More than one splice between two connectors", Severity.Warning, Consequence.DoesNotLast, "FAA AC 43.13-1B chapter 11, from memory",
        "Each joint on a way adds resistance and one more place to fail.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var links = context.Plan.Wires.Where(w => w.From.IsSplice && w.To.IsSplice).ToList();
        if (links.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.List(links.Select(w => $"{w.Named()} joins {PointWords.Of(w.From)} and {PointWords.Of(w.To)}"))}: two splices lie between two connectors.", "Join at a stud or a bus bar, or in a connector.",
                links.SelectMany(w => new[] { w.Id, w.From.At, w.To.At, w.Circuit }), at: context.AtOf(links[0]));
        }
    }
}
