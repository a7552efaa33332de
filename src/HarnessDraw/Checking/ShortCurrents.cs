using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The current of a dead short at the far end of a wire behind a fuse, in amperes.</summary>
public sealed record ShortCurrent(FuseChoice Fuse, Wire Wire, double CurrentA)
{
    /// <summary>For every wire behind every rated fuse that a battery can be traced to.</summary>
    public static IEnumerable<ShortCurrent> Of(RuleContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var searches = context.Graph.Posts.Where(p => p.Source.Kind != SourceKind.Alternator)
            .Select(p => (Post: p, Found: context.Reach(p.Node))).ToList();
        foreach (var fuse in context.Plan.Fuses.Where(f => f.RatingA is > 0))
        {
            foreach (var wire in fuse.Wires.Select(context.Wire).OfType<Wire>().Where(w => !context.IsReturn(w)))
            {
                var best = searches.Select(s => FarEnd(s.Post, s.Found, wire)).Max();
                if (best is { } amps)
                {
                    yield return new(fuse, wire, amps);
                }
            }
        }
    }

    private static double? FarEnd(LivePost post, Dictionary<string, Reached> found, Wire wire)
    {
        var ends = new[] { wire.From.ToString(), wire.To.ToString() }.Select(n => found.GetValueOrDefault(n)).OfType<Reached>().ToList();
        return ends.Count < 2 ? null : post.Volts / (post.InternalOhm + ends.Max(e => e.Ohm));
    }
}
