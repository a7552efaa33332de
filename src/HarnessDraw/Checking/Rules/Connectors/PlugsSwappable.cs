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
        var groups = plugs.GroupBy(c => c.Part.Id, StringComparer.Ordinal).SelectMany(g => Near(context, [.. g])).Where(n => n.Select(c => Job(context, c)).Distinct(StringComparer.Ordinal).Skip(1).Any()).ToList();
        if (groups.Count > 0)
        {
            var said = groups.Count == 1
                ? $"The plugs of {Wording.List(groups[0].Select(c => c.Thing.Id))} are alike ({groups[0][0].Part.Title}) and reach each other: they can be swapped."
                : $"{groups.Count} groups of plugs are alike and reach each other: {Wording.List(groups.Select(g => $"{Wording.List(g.Select(c => c.Thing.Id))} ({g[0].Part.Title})"), "; ")}.";
            yield return context.Found(Info, said, "Use another body, colour-tape them, or shorten one leg.", groups.SelectMany(g => g.Select(c => c.Thing.Id)), at: groups[0][0].Thing.At);
        }
    }

    private IEnumerable<List<ConnectorUse>> Near(RuleContext context, List<ConnectorUse> left)
    {
        while (left.Count > 0)
        {
            var near = left.Where(c => Apart(context, left[0].Thing, c.Thing) <= context.Limit(Info, "reach") && context.CanMeet(c.Thing.OnlyWith, left[0].Thing.OnlyWith)).ToList();
            left = [.. left.Except(near)];
            yield return near;
        }
    }

    /// <summary>What each cavity is for: plugs of one job may be swapped without harm.</summary>
    private static string Job(RuleContext context, ConnectorUse use) => string.Join(';', use.Wires.Select(w => $"{w.Cavity}={(context.IsReturn(w.Wire) ? "return" : w.Wire.Circuit)}"));

    private static double Apart(RuleContext context, Thing a, Thing b)
    {
        var (p, q) = (context.Place(a.Place)!, context.Place(b.Place)!);
        return Math.Sqrt(((p.Xmm - q.Xmm) * (p.Xmm - q.Xmm)) + ((p.Ymm - q.Ymm) * (p.Ymm - q.Ymm)) + ((p.Zmm - q.Zmm) * (p.Zmm - q.Zmm)));
    }
}
