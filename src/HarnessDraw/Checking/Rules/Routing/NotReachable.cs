using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class NotReachable : IDesignRule
{
    public RuleInfo Info { get; } = new("not-reachable", "Connector or splice that is covered after assembly", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "What nobody can reach is neither tested nor mended.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var plugs = context.Connectors.Where(c => !c.Wires.IsEmpty && Cover(context, c.Thing.Place) is not null).Select(c => (c.Thing.Id, Cover: Cover(context, c.Thing.Place)!, c.Thing.At));
        var splices = context.Plan.Splices.Select(s => (s, Segment: context.Segment(s.Segment))).Where(p => p.Segment is not null && Cover(context, p.Segment.From) is not null && Cover(context, p.Segment.To) is not null)
            .Select(p => (p.s.Id, Cover: Cover(context, p.Segment!.To)!, At: context.Circuit(p.s.Circuit)?.At));
        return plugs.Concat(splices).DistinctBy(p => p.Id).Select(p => context.Found(Info, $"{p.Id} sits behind the {p.Cover}.", "Bring it out on a longer leg, or say in the notes how it is reached.", [p.Id], at: p.At));
    }

    private static string? Cover(RuleContext context, string place) => context.Place(place)?.Behind;
}
