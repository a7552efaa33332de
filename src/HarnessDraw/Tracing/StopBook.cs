using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>What is known of each point of a plan: its name and place in words and its volts.</summary>
internal sealed class StopBook(Plan plan)
{
    private readonly Dictionary<string, NodeVolts> volts = plan.Nodes.GroupBy(n => n.Node, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    public TraceStop Stop(string node, WayStates states) => new(node, Name(node), Where(node))
    {
        OffV = Volts(node, states.Off),
        OnV = Volts(node, states.On),
        CrankV = Volts(node, states.Crank),
    };

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

        return Owner(node) is { Kind: ThingKind.Fuse } fuse ? $"fuse {fuse.Id}, {node[(fuse.Id.Length + 1)..]}" : node;
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
