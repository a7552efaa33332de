using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>What a step through the harness goes by.</summary>
public enum HopKind
{
    Wire,

    /// <summary>Studs of one bus bar, or a fuse clipped to its bar.</summary>
    Joint,
    Contact,
    Fuse,

    /// <summary>Kept wiring in the cabin, switches closed.</summary>
    Kept,
}

/// <summary>A step between two nodes (a thing's pin 'starter.B', or a splice), with its resistance in ohms.</summary>
public sealed record Hop(string A, string B, HopKind Kind, double Ohm)
{
    public Wire? Wire { get; init; }
    public string? Fuse { get; init; }

    /// <summary>A contact, or kept wiring that passes a switch.</summary>
    public bool Switched { get; init; }
}

/// <summary>Where a search came to: resistance from the source in ohms, length of wire in mm, and the step that led there.</summary>
public sealed record Reached(string Node, double Ohm, Hop? By, string? Before);

/// <summary>
/// The conducting paths from the sources outward: wires, bars, fuses, closed contacts and the kept cabin side. Loads are not paths.
/// </summary>
public sealed class PowerGraph
{
    private readonly ILookup<string, Hop> hops;

    private PowerGraph(IEnumerable<Hop> hops, ImmutableArray<LivePost> posts)
    {
        var all = hops.ToList();
        this.hops = all.Concat(all.Select(h => h with { A = h.B, B = h.A })).ToLookup(h => h.A, StringComparer.Ordinal);
        Posts = posts;
    }

    /// <summary>The posts of the sources that are not grounded.</summary>
    public ImmutableArray<LivePost> Posts { get; }

    public static PowerGraph Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var joints = new JointOhms(new HarnessIndex(plan.Harness));
        return new(Wires(plan, joints).Concat(PowerHops.Of(plan, joints)).Concat(MateHops.Of(plan, joints)), LivePost.Of(plan.Harness));
    }

    public IEnumerable<Hop> From(string node) => hops[node];

    /// <summary>Least-resistance search from a node; <paramref name="pass"/> says which steps may be taken. Ties go by name.</summary>
    public Dictionary<string, Reached> Search(string start, Func<Hop, bool> pass)
    {
        var found = new Dictionary<string, Reached>(StringComparer.Ordinal);
        var open = new PriorityQueue<Reached, (double, string)>();
        open.Enqueue(new(start, 0, null, null), (0, start));
        while (open.TryDequeue(out var here, out _))
        {
            if (!found.TryAdd(here.Node, here))
            {
                continue;
            }

            foreach (var hop in hops[here.Node].Where(pass))
            {
                var next = new Reached(hop.B, here.Ohm + hop.Ohm, hop, here.Node);
                open.Enqueue(next, (next.Ohm, next.Node));
            }
        }

        return found;
    }

    /// <summary>The steps from the start to a node, in order.</summary>
    public static ImmutableArray<Hop> Way(Dictionary<string, Reached> found, string node)
    {
        var way = new List<Hop>();
        for (var at = found.GetValueOrDefault(node); at?.By is { } hop; at = found.GetValueOrDefault(at.Before!))
        {
            way.Add(hop);
        }

        way.Reverse();
        return [.. way];
    }

    /// <summary>Ohms of the copper of a wire at a temperature, joints not included.</summary>
    public static double OhmOf(Plan plan, Wire wire, double celsius)
    {
        var perM = plan.Harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == wire.WireType)?.Sizes.FirstOrDefault(s => s.Label == wire.SizeLabel)?.MilliohmPerM ?? Copper.MilliohmPerM(wire.AreaMm2);
        return perM / 1000 * (wire.CutLengthMm ?? wire.PathLengthMm ?? 0) / 1000 * Copper.Heat(celsius);
    }

    private static IEnumerable<Hop> Wires(Plan plan, JointOhms joints) =>
        plan.Wires.Select(w => new Hop(w.From.ToString(), w.To.ToString(), HopKind.Wire, OhmOf(plan, w, w.Worst?.TemperatureC ?? 20) + joints.Of(w)) { Wire = w });
}
