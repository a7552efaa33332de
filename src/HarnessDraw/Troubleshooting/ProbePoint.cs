using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>
/// A place where a meter can be put with everything plugged in: the back of a plug on the wire's side of its contact, a blade, a stud, a fuse's pin, a
/// splice. <paramref name="Name"/>: as the plan writes it; <paramref name="Minutes"/>: to get at it.
/// </summary>
public sealed record ProbePoint(string Name, string Where, double Minutes)
{
    /// <summary>Its name to a reader.</summary>
    public string Called => PointWords.OfNode(Name);

    /// <summary>Reached only by opening the covering of the bundle: no test asks for it.</summary>
    public bool UnderWrap => Minutes >= AccessMinutes.Wrap;

    internal int Node { get; init; }

    /// <summary>Wire whose copper is touched beyond its joint; -1: the node itself.</summary>
    internal int Wire { get; init; } = -1;
    internal bool AtFrom { get; init; }
}

/// <summary>Lists the points of a plan; what they cost is told by <see cref="AccessMinutes"/>.</summary>
internal static class ProbePoints
{
    public static ImmutableArray<ProbePoint> Of(PlanNetwork network, ImmutableSortedDictionary<string, string> build)
    {
        var plan = network.Plan;
        var points = new SortedDictionary<string, ProbePoint>(StringComparer.Ordinal);
        var nets = plan.Harness.Nets.GroupBy(n => n.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        List<(string Name, int Wire, WireEnd End, bool AtFrom)> ends = [];
        for (var w = 0; w < plan.Wires.Length; w++)
        {
            if (plan.Wires[w].Builds.Holds(build))
            {
                foreach (var (end, atFrom) in new[] { (plan.Wires[w].From, true), (plan.Wires[w].To, false) })
                {
                    var cabin = network.Index.Thing(end.At)?.Kind is ThingKind.Mate or ThingKind.Inline && nets.TryGetValue(plan.Wires[w].Net, out var net) && net.Side == Side.Cabin;
                    ends.Add((cabin ? $"{end}, cabin side" : end.ToString(), w, end, atFrom));
                }
            }
        }

        foreach (var at in ends.GroupBy(e => e.Name, StringComparer.Ordinal))
        {
            var (name, wire, end, atFrom) = at.First();
            var node = network.NodeAt(end, plan.Wires[wire].Net);
            var behind = at.Count() == 1 && end.Pin is { } pin && IsCavity(network.Index, new(end.At, pin));
            points[name] = new(name, Where(plan, network.Index, end.At), AccessMinutes.Of(network.Index, end, name.EndsWith(", cabin side", StringComparison.Ordinal))) { Node = node, Wire = behind ? wire : -1, AtFrom = atFrom };
            if (network.Index.Thing(end.At) is { Kind: ThingKind.Mate, BothSidesBuilt: false })
            {
                points.TryAdd($"{name}, cabin side", new($"{name}, cabin side", "under the dash", AccessMinutes.FirewallRear) { Node = node });
            }
        }

        var touched = network.Network.Branches.Where(b => b.When.Holds(build) && b.A != b.B).SelectMany(b => new[] { b.A, b.B }).ToHashSet();
        foreach (var (name, node) in network.Shown)
        {
            var thing = name.Contains('.', StringComparison.Ordinal) ? name[..name.LastIndexOf('.')] : name;
            if (touched.Contains(node) && network.Index.Thing(thing) is { } owner && owner.OnlyWith.Holds(build))
            {
                points.TryAdd(name, new(name, Where(plan, network.Index, thing), AccessMinutes.Of(network.Index, new(thing, name[Math.Min(name.Length, thing.Length + 1)..]), false)) { Node = node });
            }
        }

        return [.. points.Values.Where(p => network.Solver.RowOf(p.Node) != network.Solver.RowOf(0))];
    }

    public static string Where(Plan plan, HarnessIndex index, string at)
    {
        if (plan.Splices.FirstOrDefault(s => s.Id == at) is { } splice && plan.Tree.Segments.FirstOrDefault(s => s.Id == splice.Segment) is { } segment)
        {
            return FormattableString.Invariant($"in the bundle, {splice.AtMm:0} mm from {segment.From} towards {segment.To}");
        }

        return index.Thing(at) is { } thing ? thing.Side == Side.Cabin ? $"at {thing.Place}, cabin" : $"at {thing.Place}" : "in the bundle";
    }

    public static bool IsCavity(HarnessIndex index, PinRef pin) => index.IsMate(pin) || index.PinOf(pin)?.Style == PinStyle.Cavity;
}
