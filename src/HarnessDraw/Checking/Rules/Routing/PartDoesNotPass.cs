using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class PartDoesNotPass : IDesignRule
{
    public RuleInfo Info { get; } = new("part-does-not-pass", "Connectors on both sides are larger than the hole", Severity.Error, Consequence.DoesNotWork, "workshop practice, no standard",
        "The harness is finished and does not go in: somebody cuts the plug off.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var opening in context.Harness.Layout.Openings.Where(o => context.Thing(o.Holds ?? "")?.Kind is not (ThingKind.Mate or ThingKind.Inline)))
        {
            var hole = Math.Min(opening.WidthMm, opening.HeightMm);
            var through = context.Plan.Wires.Where(w => context.SegmentsOf(w).Count(s => s.From == opening.Place || s.To == opening.Place) == 2).ToList();
            var (near, far) = (Largest(context, opening.Place, through, beyond: false), Largest(context, opening.Place, through, beyond: true));
            if (near is { } a && far is { } b && Math.Min(a.Mm, b.Mm) > hole)
            {
                var smaller = a.Mm <= b.Mm ? a : b;
                yield return context.Found(Info, $"{smaller.Thing.Id} needs {Figure.Of(smaller.Mm, "mm")} and {(a.Mm <= b.Mm ? b : a).Thing.Id} {Figure.Of(Math.Max(a.Mm, b.Mm), "mm")}; the hole at {opening.Place} is {Figure.Of(hole, "mm")}.", $"Fit the plug of {smaller.Thing.Id} after pulling, or enlarge the hole.", [opening.Place, a.Thing.Id, b.Thing.Id], at: opening.At);
            }
        }
    }

    private static (Thing Thing, double Mm)? Largest(RuleContext context, string place, List<Wire> through, bool beyond)
    {
        var far = new HashSet<string>(StringComparer.Ordinal) { place };
        foreach (var segment in context.Plan.Tree.Segments.Where(s => far.Contains(s.From)).ToList())
        {
            Add(context, segment.To, far);
        }

        var best = through.SelectMany(w => new[] { w.From, w.To }).Select(e => context.Thing(e.At)).OfType<Thing>().Where(t => far.Contains(t.Place) == beyond)
            .Select(t => (Thing: t, Part: context.PartOf(t))).Where(p => p.Part is not null)
            .Select(p => (p.Thing, Mm: p.Part!.LargestPassMm ?? Math.Min(p.Part.WidthMm, p.Part.HeightMm))).OrderByDescending(p => p.Mm).ThenBy(p => p.Thing.Id, StringComparer.Ordinal).ToList();
        return best.Count == 0 ? null : best[0];
    }

    private static void Add(RuleContext context, string place, HashSet<string> far)
    {
        if (far.Add(place))
        {
            foreach (var below in context.Plan.Tree.Below(place).ToList())
            {
                Add(context, below.To, far);
            }
        }
    }
}
