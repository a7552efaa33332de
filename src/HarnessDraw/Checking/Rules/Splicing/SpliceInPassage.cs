using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SpliceInPassage : IDesignRule
{
    public RuleInfo Info { get; } = new("splice-in-passage", "Splice where the harness passes a sealed hole", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "The lump leaves a gap for water in the grommet, and nobody can get at the joint.")
    {
        Limits = [new("clear of the hole", 40, "mm", "common practice, no source: as from a breakout")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var clear = context.Limit(Info, "clear of the hole");
        var holes = context.Harness.Layout.Openings.Where(o => context.Thing(o.Holds ?? "")?.Kind is not (ThingKind.Mate or ThingKind.Inline)).ToLookup(o => o.Place, StringComparer.Ordinal);
        return from splice in context.Plan.Splices
               let segment = context.Segment(splice.Segment)
               where segment is not null
               from end in new (string Place, double? Mm)[] { (segment.From, splice.AtMm), (segment.To, segment.LengthMm - splice.AtMm) }
               let mm = end.Mm ?? clear
               where mm < clear - 1e-9
               from hole in holes[end.Place]
               select context.Found(Info, $"{splice.Id} is {Figure.Millimetres(Math.Max(0, mm))} from the hole at {hole.Place}; {Figure.Millimetres(clear)} must be clear of joints.", $"Move it {Figure.Millimetres(clear)} away from the hole.", [splice.Id, hole.Place], splice.Builds, hole.At);
    }
}
