using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SplicesTooNear : IDesignRule
{
    public RuleInfo Info { get; } = new("splices-too-near", "Splices too near to each other or to a breakout", Severity.Warning, Consequence.DoesNotLast, "vehicle service practice: 40 mm",
        "Splices side by side make a hard lump that chafes, and a breakout pulls on one.")
    {
        Limits = [new("apart", PlanningOptions.Usual.SpliceClearMm, "mm", "vehicle service practice: 40 mm from splices, breakouts, connectors"), new("apart, sealed", PlanningOptions.Usual.SealedSpliceClearMm, "mm", "vehicle service practice: sealed splices side by side")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var apart = context.Limit(Info, "apart");
        var isSealed = context.Harness.Catalogue.Splices.Where(p => p.Sealed).Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        double Apart(Splice a, Splice b) => a.Part is not null && b.Part is not null && isSealed.Contains(a.Part) && isSealed.Contains(b.Part) ? context.Limit(Info, "apart, sealed") : apart;
        foreach (var group in context.Plan.Splices.GroupBy(s => s.Segment, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var along = group.OrderBy(s => s.AtMm).ThenBy(s => s.Id, StringComparer.Ordinal).ToList();
            foreach (var (a, b) in along.Zip(along.Skip(1)).Where(p => p.Second.AtMm - p.First.AtMm < Apart(p.First, p.Second) - 1e-9 && context.CanMeet(p.First.Builds, p.Second.Builds)))
            {
                yield return context.Found(Info, $"{a.Id} and {b.Id} are {Figure.Millimetres(b.AtMm - a.AtMm)} apart on {group.Key}.", $"Stagger them {Figure.Millimetres(Apart(a, b))}.", [a.Id, b.Id, group.Key], a.Builds.And(b.Builds));
            }

            if (context.Segment(group.Key) is { LengthMm: { } length } segment)
            {
                foreach (var (splice, place, mm) in along.SelectMany(s => new[] { (s, segment.From, s.AtMm), (s, segment.To, length - s.AtMm) }).Where(p => p.Item3 < apart - 1e-9 && IsBreakout(context, p.Item2)))
                {
                    yield return context.Found(Info, $"{splice.Id} is {Figure.Millimetres(Math.Max(0, mm))} from the breakout at {place}.", $"Move it {Figure.Millimetres(apart)} away.", [splice.Id, place], splice.Builds);
                }
            }
        }
    }

    private static bool IsBreakout(RuleContext context, string place) => context.Plan.Tree.Segments.Count(s => (s.From == place || s.To == place) && !s.Wires.IsEmpty) > 2;
}
