using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>
/// The things of a harness as nodes and branches; nets or wires are added by the caller. The reference node is the grounded pole of the
/// first source (of batteries in series: of the lowest). Studs of one bar, and the pins of one ground point, are one node; the metal body is one node.
/// </summary>
internal sealed partial class ElectricalNetwork
{
    private readonly Dictionary<string, int> nodeOf = new(StringComparer.Ordinal);
    private readonly List<string> names = [];
    private readonly List<Branch> branches = [];
    private readonly CircuitSwitching switching;
    private readonly PlanningOptions options;
    private readonly HashSet<string> wiredNodes = new(StringComparer.Ordinal);

    // nets that a thing has pins in, in their order
    private readonly Dictionary<string, List<Net>> netsAt = new(StringComparer.Ordinal);

    private readonly Circuit[] kept;

    // for nominal currents alone
    private readonly Lazy<SparseNetwork> matrix;

    public ElectricalNetwork(HarnessIndex index, CircuitSwitching switching, PlanningOptions options)
    {
        Index = index;
        this.switching = switching;
        this.options = options;
        Joints = new(index);
        kept = [.. index.Harness.KeptCircuits()];
        matrix = new(() => new SparseNetwork(names.Count, [.. branches.Select(b => (b.A, b.B))]));
        foreach (var net in index.Harness.Nets)
        {
            foreach (var pin in Members(net))
            {
                wiredNodes.Add(NodeName(pin, net.Id));
                var nets = netsAt.TryGetValue(pin.Thing, out var known) ? known : netsAt[pin.Thing] = [];
                if (nets.Count == 0 || !ReferenceEquals(nets[^1], net))
                {
                    nets.Add(net);
                }
            }
        }

        AddReference();
        foreach (var thing in index.Harness.Things)
        {
            AddThing(thing);
        }
    }

    public HarnessIndex Index { get; }

    /// <summary>As the list that it is: each state goes through it, and a call through an interface would cost more than what is done with a branch.</summary>
    public List<Branch> Branches => branches;
    public IReadOnlyList<string> Names => names;

    /// <summary>True for the network in which the key is turned off while the engine runs.</summary>
    public bool KeyTies { get; init; }

    public static IEnumerable<PinRef> Members(Net net) => net.Ends.Prepend(net.Root);

    public int Node(string name)
    {
        if (!nodeOf.TryGetValue(name, out var node))
        {
            node = names.Count;
            nodeOf.Add(name, node);
            names.Add(name);
        }

        return node;
    }

    public int? FindNode(string name) => nodeOf.TryGetValue(name, out var node) ? node : null;

    public void Add(Branch branch) => branches.Add(branch);

    /// <summary>Name of the node a pin belongs to. A mate's pin that is still to be chosen has a node for each net.</summary>
    public string NodeName(PinRef pin, string netId)
    {
        var thing = Index.Thing(pin.Thing);
        if (thing is not null && HarnessIndex.IsOneNode(thing))
        {
            return thing.Id;
        }

        if (thing?.Kind is ThingKind.Mate or ThingKind.Inline)
        {
            return $"{pin.Thing}@{netId}";
        }

        return $"{pin.Thing}.{Index.PinOf(pin)?.Name ?? pin.Pin}";
    }

    /// <summary>What joints and contacts resist.</summary>
    public JointOhms Joints { get; }

    /// <summary>Ohms of a joined conductor that stands for no length of wire.</summary>
    public const double Joined = 1e-5;

    private void AddReference()
    {
        var first = Index.Harness.Power.Sources.FirstOrDefault(s => s.Kind == SourceKind.Battery) ?? Index.Harness.Power.Sources.FirstOrDefault();
        var element = first is null ? null : Index.Thing(first.Id)?.Elements.FirstOrDefault(e => e.Kind == ElementKind.Source);
        if (first is null || element is null)
        {
            Node("body");
            return;
        }

        // of batteries in series the lowest is grounded
        first = Index.Harness.Power.Chain(first)[^1];
        element = Index.Thing(first.Id)!.Elements.First(e => e.Kind == ElementKind.Source);
        var positive = Index.Harness.Power.Ground == GroundPolarity.Positive;
        var pole = positive ? $"{first.Id}.{element.PinA}" : element.PinB is null ? "body" : $"{first.Id}.{element.PinB}";
        Node(pole);

        // a battery whose grounded post has no wire of ours is grounded by a kept strap
        if (pole != "body" && !wiredNodes.Contains(pole) && Index.Harness.Power.Returns == ReturnPath.Body)
        {
            Add(new(Node(pole), Node("body"), BranchKind.Conductor, Index.Harness.Assumed.GroundJointOhm));
        }
    }

    private void AddThing(Thing thing)
    {
        if (thing.Kind == ThingKind.GroundPoint && Index.Harness.Power.Returns == ReturnPath.Body && !Index.Harness.Layout.Surfaces.Any(s => s.Id == thing.Surface && !s.Conducts))
        {
            Add(new(Node(thing.Id), Node("body"), BranchKind.Conductor, Joined) { Thing = thing });
        }

        foreach (var pin in Index.SelfGrounded(thing))
        {
            Add(new(Node(NodeName(new(thing.Id, pin), "")), Node("body"), BranchKind.Conductor, Index.Harness.Assumed.GroundJointOhm) { Thing = thing, When = thing.OnlyWith });
        }

        foreach (var element in thing.Elements)
        {
            AddElement(thing, element);
        }

        if (Index.Protection(thing.Id) is { On: { } on } && Index.Thing(on) is { } bar)
        {
            Add(new(Node(NodeName(new(bar.Id, null), "")), Node($"{thing.Id}.in"), BranchKind.Conductor, Joined));
        }
    }

    private void AddElement(Thing thing, Element element)
    {
        var a = NodeName(new(thing.Id, element.PinA), "");
        var b = element.PinB is null ? Grounded(thing, "") : NodeName(new(thing.Id, element.PinB), "");
        if (!Index.Harness.IsBuilt(thing.Side) && element.PinB is not null && !wiredNodes.Contains(b) && IsLoad(element.Kind) && !IsInSeries(thing, element))
        {
            b = Grounded(thing, b);
        }

        if (b.Length == 0 || a == b)
        {
            return;
        }

        var (from, to) = (Node(a), Node(b));
        switch (element.Kind)
        {
            case ElementKind.Source:
                // a source that grounds itself has the pole at its case that the vehicle grounds
                var turned = element.PinB is null && Index.Harness.Power.Ground == GroundPolarity.Positive;
                Add(new(turned ? to : from, turned ? from : to, BranchKind.Source, 0) { Source = Index.Harness.Power.Sources.FirstOrDefault(s => s.Id == thing.Id), Thing = thing, Element = element, When = thing.OnlyWith });
                AddConverterInput(thing, to);
                break;
            case ElementKind.Link:
                Add(new(from, to, BranchKind.Conductor, Joined));
                break;
            case ElementKind.Fuse:
                Add(new(from, to, BranchKind.Fuse, 0) { Thing = thing, Element = element });
                break;
            case ElementKind.Diode:
                Add(new(from, to, BranchKind.Diode, Index.Harness.Assumed.SwitchOhm) { Thing = thing, Element = element, When = thing.OnlyWith });
                break;
            case ElementKind.Contact when thing.Side == Side.Bay || element.WorkedBy is not null || Index.SelfGrounded(thing).Contains(element.PinB) || GateOf(thing, element) is not null:
                var ohm = Joints.Closed(thing, element);
                Add(new(from, to, BranchKind.Contact, ohm) { Thing = thing, Element = element, When = thing.OnlyWith, Gate = GateOf(thing, element) });
                break;
            case ElementKind.Contact:
                break;
            default:
                AddLoad(thing, element, from, to);
                break;
        }
    }

    /// <summary>A converter gives nothing that it does not draw; only the working network knows what it gives.</summary>
    private void AddConverterInput(Thing thing, int minus)
    {
        if (Index.Harness.Power.Sources.FirstOrDefault(s => s.Id == thing.Id) is { Kind: SourceKind.Converter } source)
        {
            var fed = Index.Harness.Power.Sources.FirstOrDefault(s => s.Id == source.FedFrom) is { } feeder ? Index.Harness.Power.LiveV(feeder) : Index.NominalV;
            Add(new(Node(NodeName(new(thing.Id, "in"), "")), minus, BranchKind.ConverterInput, 0) { Source = source, Thing = thing, NominalV = fed, When = thing.OnlyWith });
        }
    }

    private void AddLoad(Thing thing, Element element, int from, int to)
    {
        var circuit = CircuitAt(thing.Id, element.PinA);
        var volts = element.NominalV ?? ((circuit is null ? KeptAt(thing.Id, element.PinA) : Index.Circuit(circuit))?.NominalV ?? Index.NominalV);
        var amperes = ElementCurrent.NominalA(element, volts);
        if (amperes is > 0)
        {
            Add(new(from, to, BranchKind.Load, volts / amperes.Value)
            {
                Thing = thing,
                Element = element,
                When = thing.OnlyWith,
                NominalV = volts,
                NominalA = amperes.Value,
                Circuit = circuit,
            });
        }
    }

    private string Grounded(Thing thing, string otherwise) =>
        Index.Harness.Power.Returns == ReturnPath.Body && thing.Kind != ThingKind.Mate ? "body" : otherwise;

    private string? GateOf(Thing thing, Element element) =>
        element.WorkedBy is not null || thing.Kind == ThingKind.Relay ? null
            : CircuitAt(thing.Id, element.PinB ?? element.PinA) ?? KeptAt(thing.Id, element.PinB ?? element.PinA)?.Id ?? CircuitAt(thing.Id, element.PinA) ?? KeptAt(thing.Id, element.PinA)?.Id;

    private string? CircuitAt(string thing, string pin) =>
        netsAt.TryGetValue(thing, out var nets) ? nets.Find(n => Members(n).Any(m => m.Thing == thing && (m.Pin == pin || m.Pin is null)) && !Index.Circuit(n.Circuit).IsReturn)?.Circuit : null;

    /// <summary>True for a cabin lamp or gauge that a circuit comes from: its current goes on to the bay.</summary>
    private bool IsInSeries(Thing thing, Element element) =>
        Index.Harness.Circuits.Any(c => c.From is { } from && from.Thing == thing.Id && (from.Pin == element.PinA || from.Pin == element.PinB));

    private static bool IsLoad(ElementKind kind) =>
        kind is ElementKind.Lamp or ElementKind.Motor or ElementKind.Heater or ElementKind.Coil or ElementKind.Sender or ElementKind.Electronic;
}
