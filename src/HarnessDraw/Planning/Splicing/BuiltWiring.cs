using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Routing;

namespace HarnessDraw.Planning.Splicing;

/// <summary>What of a built harness a plan keeps of its own accord: where the splices of a net sit, which ends they join, and the ids of the wires.</summary>
internal sealed class BuiltWiring(FrozenHarness? built)
{
    private readonly ILookup<string, FrozenWire> wires = (built?.Wires ?? []).ToLookup(w => w.Net, StringComparer.Ordinal);
    private readonly ILookup<string, FrozenSplice> splices = (built?.Splices ?? []).ToLookup(s => s.Net, StringComparer.Ordinal);

    /// <summary>Ids that a built wire has or had: no other wire gets one of them.</summary>
    public IEnumerable<string> WireIds => wires.SelectMany(g => g.Select(w => w.Id));

    /// <summary>Where a built splice sits on the tree now; null when its stretch is no longer in it or too short for it.</summary>
    public static TreePoint? PointOf(FrozenSplice splice, RoutedTree tree)
    {
        foreach (var segment in tree.Segments)
        {
            var (from, to) = (tree.PlaceId(segment.From), tree.PlaceId(segment.To));
            var at = (splice.From, splice.To) == (from, to) ? splice.AtMm : (splice.From, splice.To) == (to, from) ? segment.LengthMm - splice.AtMm : double.NaN;
            if (at >= 0 && at <= segment.LengthMm)
            {
                return new(segment.Number, at);
            }
        }

        return null;
    }

    /// <summary>Points that built splices take, whatever net is wired first.</summary>
    public IEnumerable<TreePoint> Points(RoutedTree tree) => splices.SelectMany(g => g).Select(s => PointOf(s, tree)).OfType<TreePoint>();

    /// <summary>
    /// The junctions of a net as they were built; ends that were not there join the nearest. Null for a net that had no splice, or whose splices no longer make one net.
    /// </summary>
    public Junction? JunctionOf(Net net, ImmutableArray<PinRef> members, RoutedTree tree, Func<PinRef, int> placeOf)
    {
        var kept = splices[net.Id].Select(s => (Splice: s, Point: PointOf(s, tree))).ToArray();
        if (kept.Length == 0 || kept.Any(k => k.Point is null))
        {
            return null;
        }

        var junctions = kept.ToDictionary(k => k.Splice.Id, k => new Junction(k.Point!.Value, [], [], true) { Id = k.Splice.Id }, StringComparer.Ordinal);
        for (var m = 0; m < members.Length; m++)
        {
            var wire = wires[net.Id].FirstOrDefault(w => (IsAt(w.From, members[m]) && junctions.ContainsKey(w.To)) || (IsAt(w.To, members[m]) && junctions.ContainsKey(w.From)));
            var joined = wire is null
                ? junctions.Values.OrderBy(j => tree.FromPlaceMm(j.Point, placeOf(members[m]))).ThenBy(j => j.Id, StringComparer.Ordinal).First()
                : junctions[junctions.ContainsKey(wire.To) ? wire.To : wire.From];
            joined.Members.Add(m);
        }

        return Linked(net, junctions) is { } top && junctions.Values.All(j => j.Members.Count + LinksOf(net, j).Count() > 1) ? top : null;
    }

    /// <summary>The id that a built wire of the net has between two ends, each a pin or a splice's id.</summary>
    public string? IdOf(Net net, (PinRef? Pin, string? Splice) from, (PinRef? Pin, string? Splice) to) => WireOf(net, from, to)?.Id;

    /// <summary>The built wire of the net between two ends, each a pin or a splice's id.</summary>
    public FrozenWire? WireOf(Net net, (PinRef? Pin, string? Splice) from, (PinRef? Pin, string? Splice) to)
    {
        bool Is(string end, (PinRef? Pin, string? Splice) now) => now.Splice == end || (now.Pin is { } pin && IsAt(end, pin));
        return wires[net.Id].FirstOrDefault(w => (Is(w.From, from) && Is(w.To, to)) || (Is(w.From, to) && Is(w.To, from)));
    }

    // every junction hangs once below the first; null when some hang nowhere
    private Junction? Linked(Net net, Dictionary<string, Junction> junctions)
    {
        var top = junctions.Values.First();
        var seen = new HashSet<string>(StringComparer.Ordinal) { top.Id! };
        var open = new Queue<Junction>([top]);
        while (open.TryDequeue(out var next))
        {
            foreach (var other in LinksOf(net, next).Where(id => junctions.ContainsKey(id) && seen.Add(id)))
            {
                next.Links.Add(junctions[other]);
                open.Enqueue(junctions[other]);
            }
        }

        return seen.Count == junctions.Count ? top : null;
    }

    private IEnumerable<string> LinksOf(Net net, Junction junction) =>
        wires[net.Id].SelectMany(w => w.From == junction.Id ? new[] { w.To } : w.To == junction.Id ? [w.From] : []).Where(id => splices[net.Id].Any(s => s.Id == id));

    // the cavity of a mate is chosen later: any of them is it
    private static bool IsAt(string end, PinRef pin) => pin.Pin is null ? end == pin.Thing || end.StartsWith(pin.Thing + ".", StringComparison.Ordinal) : end == pin.ToString();
}
