using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class SourcesJoinedUnfused : IDesignRule
{
    public RuleInfo Info { get; } = new("sources-joined-unfused", "Wire between two sources without a fuse at both ends", Severity.Error, Consequence.Fire, "ABYC E-11 as quoted; common practice",
        "A short between two batteries is fed from both ends: one fuse protects only its own side.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        // an alternator limits its own current: its lead is fused at the battery end
        var posts = context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery).ToList();
        for (var i = 0; i < posts.Count; i++)
        {
            var found = context.Graph.Search(posts[i].Node, _ => true);
            for (var j = i + 1; j < posts.Count; j++)
            {
                var way = PowerGraph.Way(found, posts[j].Node);
                if (way.Count(h => h.Fuse is not null) < 2 && way.FirstOrDefault(h => h.Wire is not null)?.Wire is { } wire)
                {
                    yield return Joined(context, posts[i], posts[j], way, wire);
                }
            }
        }
    }

    private Finding Joined(RuleContext context, LivePost a, LivePost b, IReadOnlyList<Hop> way, Wire wire)
    {
        var fuses = way.Where(h => h.Fuse is not null).Select(h => h.Fuse!).ToList();
        var said = fuses.Count == 0 ? "without any fuse" : $"with one fuse only ({fuses[0]})";
        return context.Found(Info, $"{PointWords.OfNode(a.Node)} and {PointWords.OfNode(b.Node)} are joined {said} by {Wording.List(way.Where(h => h.Wire is not null).Select(h => h.Wire!.Named()))}: a short is fed from both batteries.",
            "Put a fuse at both ends of the lead, each beside its battery.", [.. way.Where(h => h.Wire is not null).Select(h => h.Wire!.Id), a.Source.Id, b.Source.Id], wire.Builds, context.Circuit(wire.Circuit)?.At);
    }
}
