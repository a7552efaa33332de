using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Fuses that feed what they sit on: no current comes into the ring, or it goes round the fuse that should guard it.</summary>
internal static class FeedCircles
{
    public static void Report(DiagnosticBag bag, ImmutableArray<Protection> protections, ImmutableArray<CircuitDraft> circuits)
    {
        var on = protections.Where(p => p.On is not null).ToDictionary(p => p.Id, p => p.On!, StringComparer.Ordinal);
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var circuit in circuits.Where(c => !c.Circuit.IsReturn && c.Circuit.From is { } from && on.ContainsKey(from.Thing)))
        {
            var way = new List<string> { circuit.Circuit.From!.Thing };
            // a ring is told at its first fuse
            foreach (var feed in circuit.Feeds.Where(f => !told.Contains(way[0]) && (f.Pin.Thing == on[way[0]] || IsRing(f.Pin.Thing, on, circuits, way))))
            {
                told.UnionWith(way);
                var others = way.Skip(1).Select(f => $", '{f}'");
                bag.Error(DiagnosticCodes.Cycle, $"'{circuit.Name.Value}' leads from '{way[0]}' to '{feed.Pin.Thing}', on which {(way.Count == 1 ? "it sits" : $"sits what feeds it (by way of{string.Concat(others)[1..]})")}: the current goes in a circle", feed.At.At,
                    $"feed '{feed.Pin.Thing}' from a battery, a bus bar or a fuse that sits elsewhere");
                break;
            }
        }
    }

    // all that feeds the panel of the first fuse comes, over fuses and their panels alone, from the thing that is fed
    private static bool IsRing(string fed, Dictionary<string, string> on, ImmutableArray<CircuitDraft> circuits, List<string> way)
    {
        var (panel, passed) = (on[way[0]], new List<string>());
        while (passed.Count <= on.Count)
        {
            var feeders = circuits.Where(c => !c.Circuit.IsReturn && c.Feeds.Any(f => f.Pin.Thing == panel)).Select(c => c.Circuit.From?.Thing).Distinct(StringComparer.Ordinal).ToList();
            if (feeders is not [{ } only] || !on.TryGetValue(only, out var next))
            {
                return false;
            }

            passed.Add(only);
            if (next == fed)
            {
                way.AddRange(passed);
                return true;
            }

            panel = next;
        }

        return false;
    }
}
