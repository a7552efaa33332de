using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>
/// The network of a finished plan: its wires between the pins and splices they end in, beside everything that is not wire. Holds what all
/// states share; a state of a build is a <see cref="StateCircuit"/>.
/// </summary>
internal sealed class PlanNetwork
{
    private readonly PlanningOptions options;
    private readonly int[] branchOfWire;

    // by branch; 0 for what is no fuse
    private readonly double[] fuseOhm;
    private SortedDictionary<string, int>? shown;

    /// <param name="plan">The plan whose network it is.</param>
    /// <param name="options">Ambient, joints and what is assumed.</param>
    /// <param name="keyTies">True: switched positions of the key are nodes of their own.</param>
    public PlanNetwork(Plan plan, PlanningOptions options, bool keyTies = false)
    {
        Plan = plan;
        this.options = options;
        Index = new HarnessIndex(plan.Harness);
        Network = new ElectricalNetwork(Index, new CircuitSwitching(Index), options) { KeyTies = keyTies };
        Heat = new(plan, Index, options);
        branchOfWire = new int[plan.Wires.Length];
        JointOhm = [.. plan.Wires.Select(Network.Joints.Of)];
        for (var w = 0; w < plan.Wires.Length; w++)
        {
            AddWire(plan.Wires[w], w);
        }

        Network.AddCabinLinks();
        var converters = plan.Harness.Power.Sources.Where(s => s.Kind == SourceKind.Converter).Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        // what a converter draws follows from what it gives: a current given for its feed is not drawn a second time
        GivenCurrents.AddTo(Network, plan.GivenBeyondLoadsA.Where(p => Index.Circuit(p.Key).Feeds.All(f => !converters.Contains(f.Thing))).ToDictionary(StringComparer.Ordinal));
        Network.Prepare();
        fuseOhm = FuseOhms();
        Body = Network.FindNode("body") ?? 0;
        Solver = Rewired(ImmutableDictionary<int, (int, int)>.Empty);
    }

    /// <summary>The same network with the wires of another plan, which differ in size, length and terminals alone, and its fuses, which differ in ratings.</summary>
    private PlanNetwork(PlanNetwork like, Plan plan)
    {
        Plan = plan;
        options = like.options;
        Index = like.Index;
        Network = like.Network;
        Heat = new ConductorHeat(plan, like.Plan, like.Heat);
        Solver = like.Solver;
        Body = like.Body;
        branchOfWire = like.branchOfWire;
        fuseOhm = plan.Fuses == like.Plan.Fuses ? like.fuseOhm : FuseOhms();
        JointOhm = [.. like.JointOhm];
        for (var w = 0; w < JointOhm.Length; w++)
        {
            JointOhm[w] = plan.Wires[w] == (object)like.Plan.Wires[w] ? JointOhm[w] : Network.Joints.Of(plan.Wires[w]);
        }
    }

    public Plan Plan { get; }
    public HarnessIndex Index { get; }
    public ElectricalNetwork Network { get; }
    public ConductorHeat Heat { get; }
    public NodalSolver Solver { get; }

    /// <summary>Node that a dead short joins a wire to: the metal body, or without one the grounded pole.</summary>
    public int Body { get; }

    /// <summary>Ohms of the joints at both ends of each wire.</summary>
    public double[] JointOhm { get; }

    /// <summary>What a reader knows by name (pins, cavities, splices), with their nodes.</summary>
    public IReadOnlyDictionary<string, int> Shown => LazyInitializer.EnsureInitialized(ref shown, FindShown);

    /// <summary>The same wires between the same ends, in other sizes and lengths, with other terminals and behind fuses of other ratings.</summary>
    public PlanNetwork Resized(Plan plan) => new(this, plan);

    /// <summary>True when a wire is as long and as thick as in the network that this one was resized from or to, with the same joints.</summary>
    public bool IsSame(int wire, PlanNetwork other) => JointOhm[wire] == other.JointOhm[wire] && Heat.IsSame(wire, other.Heat);

    /// <summary>True for a fuse that had another rating, and so other ohms, in the network that this one was resized from or to.</summary>
    public bool IsRerated(int branch, PlanNetwork other) => fuseOhm[branch] != other.fuseOhm[branch];

    /// <summary>Ohms of a branch that is no wire and not bent: a fuse's by its rating.</summary>
    public double OhmOf(int branch) => fuseOhm[branch] > 0 ? fuseOhm[branch] : Network.BranchOhm(Network.Branches[branch]);

    public int BranchOf(int wire) => branchOfWire[wire];

    /// <summary>A solver for the same parts with some branches between other nodes: wires in each other's cavity.</summary>
    public NodalSolver Rewired(IReadOnlyDictionary<int, (int A, int B)> moved) => new(
        Network.Names.Count, [.. Network.Branches.Select((b, i) => moved.TryGetValue(i, out var ends) ? ends : (b.A, b.B))], Network.Branches.Where(IsJoint).Select(b => (b.A, b.B)), Body,
        [.. Network.Branches.Select(StateCircuit.MayBend)]);

    /// <summary>Node of a wire's end.</summary>
    public int NodeAt(WireEnd end, string net) => Network.Node(NameAt(end, net));

    /// <summary>A ground point may come loose: it stays a part of its own.</summary>
    private static bool IsJoint(Branch b) => b is { Kind: BranchKind.Conductor, Ohm: ElectricalNetwork.Joined, Gate: null, Wire: < 0, Thing: null } && b.When.IsAlways;

    private string NameAt(WireEnd end, string net) => end.Pin is null ? $"splice:{end.At}" : Network.NodeName(new(end.At, end.Pin), net);

    private void AddWire(Wire wire, int number)
    {
        branchOfWire[number] = Network.Branches.Count;
        Network.Add(new(NodeAt(wire.From, wire.Net), NodeAt(wire.To, wire.Net), BranchKind.Conductor, 0) { When = wire.Builds, Wire = number });
    }

    private double[] FuseOhms()
    {
        var ratings = Plan.Fuses.GroupBy(f => f.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().RatingA, StringComparer.Ordinal);
        return [.. Network.Branches.Select(b => b.Kind == BranchKind.Fuse ? options.FuseOhm(ratings.GetValueOrDefault(b.Thing!.Id)) : 0)];
    }

    private SortedDictionary<string, int> FindShown()
    {
        var found = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (var w = 0; w < branchOfWire.Length; w++)
        {
            var branch = Network.Branches[branchOfWire[w]];
            foreach (var (end, node) in ((WireEnd, int)[])[(Plan.Wires[w].From, branch.A), (Plan.Wires[w].To, branch.B)])
            {
                if (end.Pin is null || Index.IsMate(new(end.At, end.Pin)))
                {
                    found.TryAdd(end.ToString(), node);
                }
            }
        }

        foreach (var thing in Plan.Harness.Things.Where(t => t.Kind is not (ThingKind.Mate or ThingKind.Inline)))
        {
            foreach (var pin in thing.Pins)
            {
                if (Network.FindNode(Network.NodeName(new(thing.Id, pin.Name), "")) is { } node)
                {
                    found.TryAdd($"{thing.Id}.{pin.Name}", node);
                }
            }
        }

        return found;
    }
}
