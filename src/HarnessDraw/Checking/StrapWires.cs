using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The wires that join battery, body and engine.</summary>
internal static class StrapWires
{
    /// <summary>The battery's post on the grounded side, of several in series that of the lowest; null when the source has one post only.</summary>
    public static string? GroundedPost(RuleContext context, LivePost post)
    {
        var lowest = context.Harness.Power.Chain(post.Source)[^1].Id;
        return context.Thing(lowest)?.Elements.FirstOrDefault(e => e.Kind == ElementKind.Source) is { PinB: { } b } e ? $"{lowest}.{(post.Node == $"{post.Source.Id}.{e.PinA}" ? b : e.PinA)}" : null;
    }

    /// <summary>The battery's ground cable, and straps between ground points one of which sits where the starter does.</summary>
    public static IEnumerable<Wire> Of(RuleContext context)
    {
        var posts = context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery).Select(p => GroundedPost(context, p)).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var engine = context.Harness.Things.Where(t => t.Kind == ThingKind.Starter).Select(t => t.Place).ToHashSet(StringComparer.Ordinal);
        bool Ground(WireEnd end) => context.Thing(end.At)?.Kind == ThingKind.GroundPoint;
        bool AtEngine(WireEnd end) => context.Thing(end.At) is { } t && engine.Contains(t.Place);
        return context.Plan.Wires.Where(w =>
            (posts.Contains(w.From.ToString()) && Ground(w.To)) || (posts.Contains(w.To.ToString()) && Ground(w.From))
            || (Ground(w.From) && Ground(w.To) && (AtEngine(w.From) || AtEngine(w.To))));
    }
}
