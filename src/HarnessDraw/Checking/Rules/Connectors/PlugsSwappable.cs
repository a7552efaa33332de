using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class PlugsSwappable : IDesignRule
{
    public RuleInfo Info { get; } = new("plugs-swappable", "Like plugs within reach of each other", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "What can be swapped will be swapped.")
    {
        Limits = [new("reach", 300, "mm", "common practice, no source: slack of two legs")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var plugs = context.Connectors.Where(c => c.Thing.Side == Side.Bay && c.Thing.Kind is not ThingKind.Mate && c.Wires.Length > 0 && context.Place(c.Thing.Place) is not null).DistinctBy(c => c.Thing.Id).ToList();
        foreach (var group in plugs.GroupBy(c => c.Part.Id, StringComparer.Ordinal))
        {
            var left = group.ToList();
            while (left.Count > 0)
            {
                var near = left.Where(c => Apart(context, left[0].Thing, c.Thing) <= context.Limit(Info, "reach") && context.CanMeet(c.Thing.OnlyWith, left[0].Thing.OnlyWith)).ToList();
                left = [.. left.Except(near)];
                if (near.Count > 1)
                {
                    yield return context.Found(Info, $"The plugs of {Wording.List(near.Select(c => c.Thing.Id))} are alike ({group.First().Part.Title}) and reach each other: they can be swapped.", "Use another body, colour-tape them, or shorten one leg.", near.Select(c => c.Thing.Id), at: near[0].Thing.At);
                }
            }
        }
    }

    private static double Apart(RuleContext context, Thing a, Thing b)
    {
        var (p, q) = (context.Place(a.Place)!, context.Place(b.Place)!);
        return Math.Sqrt(((p.Xmm - q.Xmm) * (p.Xmm - q.Xmm)) + ((p.Ymm - q.Ymm) * (p.Ymm - q.Ymm)) + ((p.Zmm - q.Zmm) * (p.Zmm - q.Zmm)));
    }
}
