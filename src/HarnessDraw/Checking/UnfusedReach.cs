using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>A wire that current from a source enters before any fuse, with the unfused length up to its far end in mm.</summary>
public sealed record UnfusedReach(Wire Wire, string Start, double LengthMm, bool BeyondExempt, bool Sheathed)
{
    private sealed record Front(string Node, string Start, double LengthMm, bool BeyondExempt, bool Sheathed);

    /// <summary>Every such wire from one post. A lead that is unfused for a stated reason restarts the length at its far end.</summary>
    public static IEnumerable<UnfusedReach> From(RuleContext context, string post)
    {
        ArgumentNullException.ThrowIfNull(context);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var open = new PriorityQueue<Front, (double, string)>();
        open.Enqueue(new(post, post, 0, false, true), (0, post));
        while (open.TryDequeue(out var here, out _))
        {
            if (!seen.Add(here.Node) || context.IsGround(here.Node))
            {
                continue;
            }

            foreach (var hop in context.Graph.From(here.Node).Where(h => h.Kind != HopKind.Fuse && !seen.Contains(h.B)))
            {
                var next = Beyond(context, here, hop);
                open.Enqueue(next, (next.LengthMm, next.Node));
                if (hop.Wire is { } wire && !IsExempt(context, wire))
                {
                    yield return new(wire, next.Start, next.LengthMm, next.BeyondExempt, next.Sheathed);
                }
            }
        }
    }

    private static Front Beyond(RuleContext context, Front here, Hop hop) => hop.Wire switch
    {
        null => here with { Node = hop.B },
        { } wire when IsExempt(context, wire) => new(hop.B, hop.B, 0, true, true),
        { } wire => here with { Node = hop.B, LengthMm = here.LengthMm + (wire.PathLengthMm ?? 0), Sheathed = here.Sheathed && context.SegmentsOf(wire).All(s => s.Covering is not null) },
    };

    private static bool IsExempt(RuleContext context, Wire wire) => context.Circuit(wire.Circuit)?.UnfusedBecause is not null;
}
