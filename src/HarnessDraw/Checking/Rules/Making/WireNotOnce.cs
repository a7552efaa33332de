using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Making;

internal sealed class WireNotOnce : IDesignRule
{
    public RuleInfo Info { get; } = new("wire-not-once", "A wire that is not exactly once on cut list, board, connector and test sheets", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "What one sheet shows and another leaves out is built wrong by whoever has the other.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var plan = context.Plan;
        foreach (var twice in plan.Wires.GroupBy(w => w.Id, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            yield return context.Found(Info, $"{twice.Key} is the id of {twice.Count()} wires ({Wording.List(twice.Select(w => w.Circuit))}): lists cannot tell them apart.", "Give each wire an id of its own.", [twice.Key, .. twice.Select(w => w.Circuit)]);
        }

        var known = plan.Wires.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var (where, wire) in plan.Cavities.Where(c => c.Wire is not null && !known.Contains(c.Wire)).Select(c => ($"cavity {PointWords.Of(c.Connector, c.Cavity)}", c.Wire!))
            .Concat(plan.Tree.Segments.SelectMany(s => s.Wires.Where(w => !known.Contains(w)).Select(w => ($"segment {s.Id}", w)))).Concat(plan.Splices.SelectMany(s => s.Wires.Where(w => !known.Contains(w)).Select(w => ($"splice {s.Id}", w)))))
        {
            yield return context.Found(Info, $"{wire} is in {where} and not in the cut list.", "Plan the harness again from its description.", [wire]);
        }

        foreach (var (wire, segment) in NotLaid(plan))
        {
            yield return context.Found(Info, $"{wire.Named()} runs in {segment}, and the board does not show it there.", "Plan the harness again from its description.", [wire.Id, segment], wire.Builds);
        }

        var filled = plan.Cavities.Where(c => c.Wire is not null).Select(c => (c.Connector, c.Wire!)).ToHashSet();
        foreach (var end in PlannedEnd.Of(plan).Where(e => context.PartOf(context.Thing(e.End.At)) is { } part && part.Cavities.Any(c => c.Name == e.End.Pin) && !filled.Contains((e.End.At, e.Wire.Id))))
        {
            yield return context.Found(Info, $"{end.Wire.Named()} ends in {PointWords.Of(end.End)}, and the insertion list does not have it there.", "Plan the harness again from its description.", [end.Wire.Id, end.End.ToString()], end.Wire.Builds);
        }
    }

    // a long harness has as many of these pairs as wires times places: they are held against each other wire by wire
    private static IEnumerable<(Wire Wire, string Segment)> NotLaid(Plan plan)
    {
        var shown = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var segment in plan.Tree.Segments)
        {
            foreach (var id in segment.Wires)
            {
                if (!shown.TryGetValue(id, out var on))
                {
                    shown.Add(id, on = []);
                }

                on.Add(segment.Id);
            }
        }

        foreach (var wire in plan.Wires)
        {
            var on = shown.TryGetValue(wire.Id, out var found) ? found.ToHashSet(StringComparer.Ordinal) : [];
            foreach (var segment in wire.Segments)
            {
                if (!on.Contains(segment))
                {
                    yield return (wire, segment);
                }
            }
        }
    }
}
