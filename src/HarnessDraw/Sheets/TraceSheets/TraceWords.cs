using System.Collections.Immutable;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>What is said of one way: where to test first, what it loses, what shares its fuse, what is not known.</summary>
internal sealed class TraceWords
{
    private readonly Plan plan;
    private readonly TraceWay way;
    private readonly ImmutableArray<string> notKnown;

    public TraceWords(Plan plan, TraceWay way, ImmutableArray<string> notKnown)
    {
        (this.plan, this.way, this.notKnown) = (plan, way, notKnown);
        First = FirstTest();
    }

    /// <summary>The stop to test first; null where no volts are known before the load.</summary>
    public TraceStop? First { get; }

    /// <summary>Sentences about this way alone.</summary>
    public IEnumerable<string> Own()
    {
        if (way.Stops[^1].LostV is { } lost)
        {
            yield return $"This loop loses {Shown.Fixed(lost, 2)} V.";
        }

        var siblings = Siblings().ToList();
        if (siblings.Count > 0)
        {
            yield return $"On the same fuse: {string.Join(", ", siblings)}. If they work, what they share with this circuit is good.";
        }

        // E beside the length says that it is estimated
        foreach (var note in notKnown.Where(n => !n.Contains("estimated (E)", StringComparison.Ordinal)).Where(n => way.Stops.Any(s => n.Contains(PointWords.OfNode(s.Node), StringComparison.Ordinal)) || way.Hops.Any(h => h.Wire is { } wire && n.Contains(wire, StringComparison.Ordinal))))
        {
            yield return $"Not known: {note}.";
        }
    }

    // half-way to the load, where a meter gets at it: a connector or a thing's own pin, no splice under tape
    private TraceStop? FirstTest()
    {
        var load = way.Hops.Select((h, i) => (h.Kind, i)).Where(h => h.Kind == HopKind.Load).Select(h => h.i).DefaultIfEmpty(way.Stops.Length - 1).First();
        var before = way.Stops.Take(load + 1).Skip(1).Where(s => s.OnV is { } v && Math.Abs(v) > 1 && plan.Splices.All(p => p.Id != s.Node)).ToList();
        return before.Count == 0 ? null : before.Skip(before.Count / 2).OrderByDescending(s => plan.Harness.Things.Any(t => t.ConnectorPart is not null && s.Node.StartsWith(t.Id + ".", StringComparison.Ordinal))).First();
    }

    private IEnumerable<string> Siblings()
    {
        var fuses = plan.Harness.Circuits.FirstOrDefault(c => c.Id == way.Circuit)?.ProtectedBy ?? [];
        var nearest = fuses.IsEmpty ? way.Hops.Where(h => h.Kind == HopKind.Fuse).Select(h => plan.Fuses.FirstOrDefault(f => h.Words.StartsWith($"fuse {f.Id},", StringComparison.Ordinal))).LastOrDefault() : plan.Fuses.FirstOrDefault(f => f.Id == fuses[0]);
        return nearest is null
            ? []
            : plan.Harness.Circuits.Where(c => c.Id != way.Circuit && !c.IsReturn && plan.Wires.Any(w => w.Circuit == c.Id && nearest.Wires.Contains(w.Id))).Select(c => c.Id);
    }
}
