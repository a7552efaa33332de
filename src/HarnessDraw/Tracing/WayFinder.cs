using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>Finds whole ways in the graph of a plan and notes, in words, where the description gives none.</summary>
internal sealed class WayFinder(TracedPlan traced)
{
    private readonly Plan plan = traced.Plan;
    private readonly CurrentGraph graph = traced.Graph;
    private readonly List<string> notKnown = [];

    public IReadOnlyList<string> NotKnown => notKnown;

    public TraceWay Find(Target target)
    {
        var pin = target.Pin.ToString();
        var builder = new WayBuilder(plan, traced.Book, traced.Spread, target);
        AddFeed(builder, target, pin);
        if (target.Load is { } load)
        {
            var thing = plan.Harness.ThingOf(target.Pin.Thing);
            var other = load.PinA == target.Pin.Pin ? load.PinB : load.PinA;
            var back = other is null ? CurrentGraph.Body : CurrentGraph.Node(thing.Id, other);
            builder.Pass(new Step(pin, back, HopKind.Load, ElementWords.Of(thing, load)), back);
            AddReturn(builder, back);
        }
        else if (target.Circuit.IsReturn && !traced.GroundedPoles.Contains(target.Circuit.From?.ToString() ?? pin))
        {
            AddReturn(builder, pin);
        }

        return builder.ToWay();
    }

    private void AddFeed(WayBuilder builder, Target target, string pin)
    {
        var from = target.Circuit.From?.ToString();
        if (target.Circuit.IsReturn)
        {
            builder.Start(from ?? pin);
            Follow(builder, from ?? pin, graph.Way(from ?? pin, n => n == pin), pin);
            return;
        }

        var isSource = target.Circuit.From is { } start && plan.Harness.Power.Sources.Any(s => s.Id == start.Thing);
        var whole = graph.Way(pin, n => isSource ? n == from : traced.LivePoles.Contains(n));
        if (whole is not null)
        {
            AddBackwards(builder, pin, whole);
            return;
        }

        AddFeedFromFuse(builder, target, pin);
    }

    // the way up to the circuit's own beginning, and before it the nearest fuse that the description names
    private void AddFeedFromFuse(WayBuilder builder, Target target, string pin)
    {
        var from = target.Circuit.From?.ToString();
        var known = from is null ? null : graph.Way(pin, n => n == from);
        var beginning = known is null ? pin : from!;
        foreach (var fuse in target.Circuit.ProtectedBy)
        {
            var way = graph.Way(CurrentGraph.Node(fuse, "out"), n => traced.LivePoles.Contains(n));
            if (way is not null)
            {
                AddBackwards(builder, CurrentGraph.Node(fuse, "out"), way);
                builder.Pass(new Step(CurrentGraph.Node(fuse, "out"), beginning, HopKind.NotDescribed, "the description does not say how"), beginning);
                notKnown.Add($"the wiring from {fuse} to {PointWords.OfNode(beginning)} is not described");
                Follow(builder, beginning, known is null ? null : Reversed(known), pin);
                return;
            }
        }

        notKnown.Add($"how {PointWords.OfNode(beginning)} is fed from a source is not described");
        builder.Start(beginning);
        Follow(builder, beginning, known is null ? null : Reversed(known), pin);
    }

    private void AddReturn(WayBuilder builder, string from)
    {
        var way = graph.Way(from, traced.GroundedPoles.Contains);
        if (way is null)
        {
            notKnown.Add($"how current returns from {PointWords.OfNode(from)} to a source is not described");
            return;
        }

        Follow(builder, from, way, null);
    }

    private static void AddBackwards(WayBuilder builder, string end, List<Step> way)
    {
        // found from the load towards the source; told from the source on
        var start = way.Aggregate(end, (at, step) => step.Other(at));
        builder.Start(start);
        Follow(builder, start, Reversed(way), end);
    }

    private static void Follow(WayBuilder builder, string start, List<Step>? way, string? end)
    {
        var at = start;
        foreach (var step in way ?? [])
        {
            at = step.Other(at);
            builder.Pass(step, at);
        }

        if (way is null && end is not null && at != end)
        {
            builder.Pass(new Step(at, end, HopKind.NotDescribed, "the description does not say how"), end);
        }
    }

    private static List<Step> Reversed(List<Step> way) => [.. Enumerable.Reverse(way)];
}
