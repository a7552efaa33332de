using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>What is known of each point of a plan: its name and place in words and its volts.</summary>
internal sealed class StopBook(Plan plan)
{
    private readonly HarnessIndex index = new(plan.Harness);
    private readonly Dictionary<string, NodeVolts> volts = plan.Nodes.GroupBy(n => n.Node, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    public TraceStop Stop(string node, WayStates states) => new(node, Name(node), Where(node))
    {
        OffV = Volts(node, states.Off),
        OnV = Volts(node, states.On),
        CrankV = Volts(node, states.Crank),
        RunV = Volts(node, states.Run),
        Minutes = node == CurrentGraph.Body ? null : AccessMinutes.Of(index, End(node), cabinSide: false),
        Probe = Probe(node),
    };

    private WireEnd End(string node) => Owner(node) is { } thing ? new(thing.Id, node[(thing.Id.Length + 1)..]) : new(node, null);

    // a probe goes in beside the wire, never through its insulation
    private string Probe(string node)
    {
        if (node == CurrentGraph.Body)
        {
            return "";
        }

        if (Owner(node) is not { } thing)
        {
            return "under the wrap: measure at another point";
        }

        if (thing.Kind == ThingKind.Fuse)
        {
            return "at the fuse's contact, lid open";
        }

        if (thing.Kind is ThingKind.Mate or ThingKind.Inline)
        {
            return thing.Kind == ThingKind.Mate ? "back of the plug, wire side, in the bay" : "back of the plug, wire side";
        }

        return thing.Pins.First(p => node == CurrentGraph.Node(thing.Id, p.Name)).Style switch
        {
            PinStyle.Cavity => "back of the plug, wire side",
            PinStyle.Blade => "on the blade",
            _ => "on the stud",
        };
    }

    private double? Volts(string node, string? state) =>
        state is not null && volts.TryGetValue(node, out var known) && known.Volts.TryGetValue(state, out var value) ? value : null;

    private string Name(string node)
    {
        if (node == CurrentGraph.Body)
        {
            return "metal of the vehicle";
        }

        if (plan.Splices.Any(s => s.Id == node))
        {
            return $"splice {node}";
        }

        return Owner(node) is { Kind: ThingKind.Fuse } fuse ? $"fuse {fuse.Id}, {node[(fuse.Id.Length + 1)..]}" : PointWords.OfNode(node);
    }

    private string Where(string node)
    {
        if (plan.Splices.FirstOrDefault(s => s.Id == node) is { } splice)
        {
            var segment = plan.Tree.Segments.FirstOrDefault(s => s.Id == splice.Segment);
            var at = Math.Round(splice.AtMm, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture);
            return segment is null ? "place not known" : $"in the bundle, {at} mm from {segment.From} towards {segment.To}";
        }

        if (Owner(node) is not { } thing)
        {
            return "";
        }

        var side = thing.Kind == ThingKind.Mate ? "" : thing.Side == Side.Cabin ? ", cabin" : "";
        return $"at {thing.Place}{side}";
    }

    private Thing? Owner(string node) => plan.Harness.Things.FirstOrDefault(t => node.StartsWith(t.Id, StringComparison.Ordinal) && t.Pins.Any(p => node == CurrentGraph.Node(t.Id, p.Name)));
}
