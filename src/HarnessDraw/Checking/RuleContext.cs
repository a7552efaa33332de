using System.Collections.Concurrent;
using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>A plan with the look-ups that rules share, each made when first asked for; rules that run side by side may ask at once.</summary>
public sealed class RuleContext(Plan plan, RuleSettings settings)
{
    private readonly Lazy<Dictionary<string, Thing>> things = new(() => Index(plan.Harness.Things, t => t.Id));
    private readonly Lazy<Dictionary<string, Circuit>> circuits = new(() => Index(plan.Harness.Circuits, c => c.Id));
    private readonly Lazy<Dictionary<string, Wire>> wires = new(() => Index(plan.Wires, w => w.Id));
    private readonly Lazy<Dictionary<string, Segment>> segments = new(() => Index(plan.Tree.Segments, s => s.Id));
    private readonly Lazy<Dictionary<string, ConnectorPart>> connectorParts = new(() => Index(plan.Harness.Catalogue.Connectors, c => c.Id));
    private readonly Lazy<Dictionary<string, TerminalPart>> terminals = new(() => Index(plan.Harness.Catalogue.Terminals, t => t.Id));
    private readonly Lazy<Dictionary<string, SealPart>> seals = new(() => Index(plan.Harness.Catalogue.Seals, s => s.Id));
    private readonly Lazy<Dictionary<string, FuseChoice>> fuses = new(() => Index(plan.Fuses, f => f.Id));
    private readonly Lazy<Dictionary<string, Splice>> splices = new(() => Index(plan.Splices, s => s.Id));
    private readonly Lazy<Dictionary<string, Zone>> zones = new(() => Index(plan.Harness.Layout.Zones, z => z.Id));
    private readonly Lazy<Dictionary<string, Place>> places = new(() => Index(plan.Harness.Layout.Places, p => p.Id));
    private readonly Lazy<ILookup<string, Wire>> byCircuit = new(() => plan.Wires.ToLookup(w => w.Circuit, StringComparer.Ordinal));
    private readonly Lazy<ILookup<string, PlannedEnd>> byThing = new(() => PlannedEnd.Of(plan).ToLookup(e => e.End.At, StringComparer.Ordinal));
    private readonly Lazy<ImmutableArray<ConnectorUse>> connectors = new(() => ConnectorUse.Of(plan));
    private ILookup<string, FusedLoad>? fusedLoads;
    private readonly Lazy<Dictionary<string, NodeVolts>>[] nodes = [.. plan.FurtherBuilds.Select(b => b.Nodes).Prepend(plan.Nodes).Select(of => new Lazy<Dictionary<string, NodeVolts>>(() => Index(of, n => n.Node)))];
    private readonly ConcurrentDictionary<string, Dictionary<string, Reached>> reach = new(StringComparer.Ordinal);
    private HashSet<string>? permanent;
    private readonly ConcurrentDictionary<MeasuredRule, ImmutableArray<Measure>> measures = new();
    private readonly Lazy<HashSet<string>> grounds = new(() => plan.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint).SelectMany(t => t.Pins.Select(p => $"{t.Id}.{p.Name}")).ToHashSet(StringComparer.Ordinal));
    private readonly Lazy<OptionSpace> builds = new(() => new(plan.Harness.Options, plan.Harness.OptionRules));
    private readonly Lazy<Dictionary<OperatingState, HashSet<string>>> on = new(() => NamedIn(plan.Harness.States));
    private readonly Lazy<PowerGraph> graph = new(() => PowerGraph.Of(plan));

    public Plan Plan => plan;

    public Harness Harness => plan.Harness;

    public RuleSettings Settings => settings;

    /// <summary>The builds that the option rules allow, also where they are too many to list.</summary>
    public OptionSpace Builds => builds.Value;

    /// <summary>Everything a wire ends in, as places where current may pass.</summary>
    public PowerGraph Graph => graph.Value;

    /// <summary>Connectors with what is in their cavities.</summary>
    public ImmutableArray<ConnectorUse> Connectors => connectors.Value;

    /// <summary>Builds whose volts are known, the usual one first; without builds none has options.</summary>
    public ImmutableArray<ImmutableSortedDictionary<string, string>> SolvedBuilds { get; } =
        [plan.Builds.FirstOrDefault() ?? ImmutableSortedDictionary<string, string>.Empty, .. plan.FurtherBuilds.Select(b => b.Build)];

    /// <summary>Volts of a node in a state of one of the solved builds; null when unknown.</summary>
    public double? Volts(string node, string state, int build = 0) => Volts(node, build)?.GetValueOrDefault(state);

    /// <summary>Volts of a node by state in one of the solved builds; null when unknown.</summary>
    public IReadOnlyDictionary<string, double?>? Volts(string node, int build) => nodes[build].Value.GetValueOrDefault(node)?.Volts;

    /// <summary>What a rule measures, worked out once for its findings and for the margins.</summary>
    public ImmutableArray<Measure> MeasuresOf(MeasuredRule rule) => measures.GetOrAdd(rule, r => [.. r.Measures(this)]);

    public bool IsGround(string node) => grounds.Value.Contains(node);

    /// <summary>Everything that a post feeds, over wires that are not returns; searched once.</summary>
    public Dictionary<string, Reached> Reach(string post) => reach.GetOrAdd(post, p => Graph.Search(p, h => !IsGround(h.B) && (h.Wire is null || !IsReturn(h.Wire))));

    /// <summary>Live whatever is switched: from the battery on, no contact lies before the wire, and no state switches its circuit on or off.</summary>
    public bool IsPermanentlyLive(Wire wire) =>
        Circuit(wire.Circuit) is { LiveWith: KeyPosition.Off, IsReturn: false, Duty: not Duty.Signal } circuit && !IsReturn(wire)
        && (IsPermanentlyLive(wire.From.ToString()) || IsPermanentlyLive(wire.To.ToString()))
        && Harness.States.Select(s => Names(s, circuit.Id)).Distinct().Count() < 2;

    /// <summary>True when a state of the harness names a circuit as switched on.</summary>
    public bool Names(OperatingState state, string circuit) => on.Value[state].Contains(circuit);

    /// <summary>Live with every switch open: no contact lies between a battery and the node.</summary>
    public bool IsPermanentlyLive(string node) =>
        LazyInitializer.EnsureInitialized(ref permanent, () => Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery).SelectMany(p => Graph.Search(p.Node, h => !h.Switched).Keys).ToHashSet(StringComparer.Ordinal)).Contains(node);

    private static Dictionary<OperatingState, HashSet<string>> NamedIn(ImmutableArray<OperatingState> states)
    {
        var named = new Dictionary<OperatingState, HashSet<string>>(ReferenceEqualityComparer.Instance);
        foreach (var state in states)
        {
            named.TryAdd(state, state.On.ToHashSet(StringComparer.Ordinal));
        }

        return named;
    }

    public double Limit(RuleInfo rule, string name) => settings.LimitOf(rule, name);

    public Thing? Thing(string id) => things.Value.GetValueOrDefault(id);

    public Circuit? Circuit(string id) => circuits.Value.GetValueOrDefault(id);

    public Wire? Wire(string id) => wires.Value.GetValueOrDefault(id);

    /// <summary>Where the wire is written: its own line when it is given by hand, else its circuit's.</summary>
    public Diagnostics.SourceSpan? AtOf(Wire wire)
    {
        ArgumentNullException.ThrowIfNull(wire);
        return (wire.ByHand ? Harness.Nets.SelectMany(n => n.ByHand).FirstOrDefault(h => h.Id == wire.Id)?.At : null) ?? Circuit(wire.Circuit)?.At;
    }

    public Segment? Segment(string id) => segments.Value.GetValueOrDefault(id);

    public FuseChoice? Fuse(string id) => fuses.Value.GetValueOrDefault(id);

    public Splice? Splice(string id) => splices.Value.GetValueOrDefault(id);

    public Place? Place(string id) => places.Value.GetValueOrDefault(id);

    public Zone? Zone(string? id) => id is null ? null : zones.Value.GetValueOrDefault(id);

    public TerminalPart? Terminal(string? id) => id is null ? null : terminals.Value.GetValueOrDefault(id);

    public SealPart? Seal(string? id) => id is null ? null : seals.Value.GetValueOrDefault(id);

    public ConnectorPart? PartOf(Thing? thing) => thing?.ConnectorPart is { } id ? connectorParts.Value.GetValueOrDefault(id) : null;

    public IEnumerable<Wire> WiresOf(string circuit) => byCircuit.Value[circuit];

    /// <summary>Wire ends at a thing or splice, in wire order.</summary>
    public IEnumerable<PlannedEnd> EndsAt(string thing) => byThing.Value[thing];

    public IEnumerable<PlannedEnd> EndsAt(string thing, string pin) => byThing.Value[thing].Where(e => e.End.Pin == pin);

    /// <summary>Loads whose current passes the fuse.</summary>
    public IEnumerable<FusedLoad> LoadsOn(string fuse) => LazyInitializer.EnsureInitialized(ref fusedLoads, () => FusedLoad.Of(this).ToLookup(l => l.Fuse, StringComparer.Ordinal))[fuse];

    /// <summary>Fuses the circuit's current passes, nearest first: as its description says, else as its wires were planned.</summary>
    public ImmutableArray<string> ProtectionOf(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        if (!circuit.ProtectedBy.IsEmpty)
        {
            return circuit.ProtectedBy;
        }

        var planned = WiresOf(circuit.Id).Select(w => w.ProtectedBy).FirstOrDefault(p => !p.IsEmpty);
        return !planned.IsDefaultOrEmpty ? planned : circuit.From is { } from && fuses.Value.ContainsKey(from.Thing) ? [from.Thing] : [];
    }

    public WireType? TypeOf(Wire wire) => Harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == wire.WireType);

    public WireSize? SizeOf(Wire wire) => TypeOf(wire)?.Sizes.FirstOrDefault(s => s.Label == wire.SizeLabel);

    /// <summary>Segments the wire runs in, those that the tree has.</summary>
    public IEnumerable<Segment> SegmentsOf(Wire wire) => wire.Segments.Select(Segment).OfType<Segment>();

    public Zone? ZoneAt(string place) => Zone(Place(place)?.Zone);

    public bool IsReturn(Wire wire) => Circuit(wire.Circuit)?.IsReturn == true || Thing(wire.To.At)?.Kind == ThingKind.GroundPoint || Thing(wire.From.At)?.Kind == ThingKind.GroundPoint;

    /// <summary>Critical, by the circuit's own word.</summary>
    public bool IsCritical(string circuit) => Circuit(circuit)?.Importance == Importance.Critical;

    /// <summary>True when one valid build holds both.</summary>
    public bool CanMeet(BuildCondition a, BuildCondition b) => a.MayMeet(b) && (a.IsAlways || b.IsAlways || Builds.CanHold(a.And(b)));

    private static Dictionary<string, T> Index<T>(ImmutableArray<T> rows, Func<T, string> id)
    {
        var index = new Dictionary<string, T>(rows.Length, StringComparer.Ordinal);
        foreach (var row in rows)
        {
            index.TryAdd(id(row), row);
        }

        return index;
    }
}
