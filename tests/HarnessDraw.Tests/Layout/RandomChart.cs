using HarnessDraw.Layout;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Layout;

/// <summary>A random harness as the geometry engine takes it, whole on one chart however large: what lane order, packing and their times are measured on.</summary>
public static class RandomChart
{
    public static ChartProblem Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var things = plan.Harness.Things.ToDictionary(t => t.Id, StringComparer.Ordinal);
        var mate = plan.Harness.Things.FirstOrDefault(t => t.Kind == ThingKind.Mate);
        var pins = mate?.Pins.Select((p, i) => (p.Name, i)).DistinctBy(p => p.Name).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal) ?? [];
        var splices = plan.Splices.Select((s, i) => (s.Id, i)).ToDictionary(s => s.Id, s => s.i, StringComparer.Ordinal);
        var wires = plan.Wires.Where(w => w.From.At != w.To.At).ToList();
        var cards = wires.SelectMany(w => (WireEnd[])[w.From, w.To]).Where(e => !e.IsSplice && e.At != mate?.Id).Select(e => e.At).Distinct(StringComparer.Ordinal).ToList();
        var cardOf = cards.Select((c, i) => (c, i)).ToDictionary(c => c.c, c => c.i, StringComparer.Ordinal);
        var used = wires.SelectMany(w => (WireEnd[])[w.From, w.To]).Where(e => e.At == mate?.Id).Select(e => pins[e.Pin!]).Order().ToList();
        var nets = plan.Circuits().Select((c, i) => (c, i)).ToDictionary(c => c.c, c => c.i, StringComparer.Ordinal);

        // only places on the way to something
        var parent = plan.Tree.Segments.ToDictionary(s => s.To, s => s.From, StringComparer.Ordinal);
        var needed = new HashSet<string>(StringComparer.Ordinal) { plan.Tree.Root };
        foreach (var start in cards.Select(c => things[c].Place).Concat(plan.Splices.Select(s => plan.Tree.Segments.First(g => g.Id == s.Segment).To)))
        {
            for (var place = start; needed.Add(place); place = parent[place])
            {
            }
        }

        var places = plan.Harness.Layout.Places.Where(p => needed.Contains(p.Id)).ToList();
        var node = places.Select((p, i) => (p.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        var rows = used.Select((_, i) => 20 + (4.8 * i)).ToList();
        return new(
            [.. places.Select(p => new ChartNode(parent.TryGetValue(p.Id, out var from) ? node[from] : -1, -p.Xmm, -p.Ymm) { CaptionMm = parent.ContainsKey(p.Id) ? 9 : 0 })],
            [.. cards.Select(c => new ChartCard(node[things[c].Place], 60, 7, 0))],
            [.. plan.Splices.Select(s => plan.Tree.Segments.First(g => g.Id == s.Segment) is var on ? new ChartSplice(node[on.To], Math.Clamp(s.AtMm / (on.LengthMm ?? 100), 0, 1), 8) : null!)],
            [.. wires.Select(w => new ChartLane(EndOf(w.From), EndOf(w.To), nets[w.Circuit]))],
            mate is null ? null : new([.. rows], 60, rows.Count == 0 ? 20 : rows[^1] + 5) { LabelMm = 40 });

        ChartEnd EndOf(WireEnd end) => end.IsSplice ? new(ChartEndKind.Splice, splices[end.At])
            : end.At == mate?.Id ? new(ChartEndKind.Pin, used.BinarySearch(pins[end.Pin!]))
            : new(ChartEndKind.Card, cardOf[end.At]);
    }

    private static IEnumerable<string> Circuits(this Plan plan) => plan.Wires.Select(w => w.Circuit).Distinct(StringComparer.Ordinal);
}
