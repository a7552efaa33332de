using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>Every single fault of a plan in one build: of wires, their joints, grounds, fuses, contacts, loads, sources, kept wiring, and of how it was built.</summary>
internal sealed class FaultLister(PlanNetwork network, ImmutableSortedDictionary<string, string> build, FaultWeights weights)
{
    /// <summary>Ohms of a bad joint that are tried: a loss of a tenth of a volt an ampere, and more. Common practice, no source.</summary>
    public static readonly ImmutableArray<double> BadOhms = [0.1, 0.5, 2];

    /// <summary>Ohms where a chafed wire touches a live one. Common practice, no source.</summary>
    private const double TouchOhm = 0.005;

    /// <summary>Rest volts of a battery at 25 % charge or less over those of a full one (12.06 and 11.89 of 12.65 V; BCI service manual figures as quoted).</summary>
    private const double RunDownShare = 0.945;

    private readonly WireFaultWeights wireWeights = new(network, weights);

    public ImmutableArray<Fault> List() =>
        [.. Weighed([.. Joints(), .. Coppers(), .. Branches(), .. Swaps(), .. Options()])];

    private IEnumerable<Fault> Weighed(ImmutableArray<Fault> faults)
    {
        var worked = weights.WorkedOn;
        bool Touched(Fault f) => worked is not null && (f.At.Contains(worked) || f.Wires.Contains(worked) || f.Where.EndsWith(worked, StringComparison.Ordinal)
            || f.Wires.Any(w => network.Plan.Wires.Any(p => p.Id == w && p.Circuit == worked)));
        return faults.Where(f => f.Weight > 0).Select(f => Touched(f) ? f with { Weight = f.Weight * weights.WorkedOnFactor } : f);
    }

    private IEnumerable<(int Number, Wire Wire)> Built()
    {
        for (var w = 0; w < network.Plan.Wires.Length; w++)
        {
            if (network.Plan.Wires[w].Builds.Holds(build))
            {
                yield return (w, network.Plan.Wires[w]);
            }
        }
    }

    private IEnumerable<Fault> Joints()
    {
        foreach (var (number, wire) in Built())
        {
            foreach (var (end, spot) in new[] { (wire.From, WireSpot.From), (wire.To, WireSpot.To) })
            {
                var (part, weight) = wireWeights.Joint(wire, end);
                foreach (var fault in OpenOrBad(network.BranchOf(number), part, ProbePoints.Where(network.Plan, network.Index, end.At), weight, ofWire: false, number, spot))
                {
                    yield return fault with { Wires = [wire.Id], At = [end.At] };
                }
            }
        }
    }

    private IEnumerable<Fault> Coppers()
    {
        foreach (var (number, wire) in Built())
        {
            var weight = wireWeights.Copper(wire);
            var part = $"wire {wire.Id} ({wire.Colour}, {wire.Circuit})";
            var where = wire.Segments.IsEmpty ? "beside its ends" : $"in the bundle from {PointWords.Of(wire.From)} to {PointWords.Of(wire.To)}";
            foreach (var fault in OpenOrBad(network.BranchOf(number), part, where, weight, ofWire: true, number, WireSpot.Copper))
            {
                yield return fault with { Wires = [wire.Id], InBundle = true };
            }

            if (network.Index.Circuit(wire.Circuit).IsReturn)
            {
                continue;
            }

            var node = network.NodeAt(wire.To, wire.Net);
            node = network.Solver.RowOf(node) == network.Solver.RowOf(network.Body) ? network.NodeAt(wire.From, wire.Net) : node;
            var row = network.Solver.RowOf(node);
            yield return new(FaultKind.ShortToGround, part, $"short to ground in {part}")
            {
                Where = where,
                Weight = weight * FaultWeights.ShareOf(FaultKind.ShortToGround, true),
                Wires = [wire.Id],
                InBundle = true,
                Variants = [new($"ground {row}", new() { TiedNode = node })],
            };
            yield return new(FaultKind.ShortToSupply, part, $"{part} touches a live wire")
            {
                Where = where,
                Weight = weight * FaultWeights.ShareOf(FaultKind.ShortToSupply, true),
                Wires = [wire.Id],
                InBundle = true,
                Variants = [new($"live {row}", new() { TiedNode = node, TiedOhm = TouchOhm }) { TiedToLive = true }],
            };
        }
    }

    private IEnumerable<Fault> OpenOrBad(int branch, string part, string where, double weight, bool ofWire, int wire = -1, WireSpot spot = WireSpot.None)
    {
        FaultVariant Made(string key, NetworkFault fault) => new(key, fault) { Wire = wire, Spot = spot, Carriers = [branch] };
        var blown = network.Network.Branches[branch].Kind == BranchKind.Fuse ? $"{part} blown, missing or without contact" : $"open at {part}";
        yield return new(FaultKind.Open, part, ofWire ? $"{part} broken" : blown)
        {
            Where = where,
            Weight = weight * FaultWeights.ShareOf(FaultKind.Open, ofWire),
            Variants = [Made($"open {branch}", NetworkFault.Open([branch]))],
        };
        yield return new(FaultKind.HighResistance, part, $"high resistance at {part}")
        {
            Where = where,
            Weight = weight * FaultWeights.ShareOf(FaultKind.HighResistance, ofWire),
            Variants = [.. BadOhms.Select(ohm => Made(FormattableString.Invariant($"bad {branch} {ohm}"), new() { Added = [(branch, ohm)] }))],
        };
    }

    private IEnumerable<Fault> Branches()
    {
        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            var b = network.Network.Branches[i];
            if (!b.When.Holds(build) || b.A == b.B || network.Solver.RowOf(b.A) == network.Solver.RowOf(b.B) || b.Wire >= 0)
            {
                continue;
            }

            var where = b.Thing is { } thing ? ProbePoints.Where(network.Plan, network.Index, thing.Id) : "in the cabin";
            foreach (var fault in OfBranch(i, b, where))
            {
                yield return fault with { At = b.Thing is { } at ? [at.Id] : [] };
            }
        }
    }

    private IEnumerable<Fault> OfBranch(int i, Branch b, string where) => b switch
    {
        { Kind: BranchKind.Fuse } => OpenOrBad(i, $"fuse {b.Thing!.Id}", where, weights.Fuse, ofWire: false),
        { Kind: BranchKind.Contact or BranchKind.Diode } => Contact(i, $"{b.Thing!.Id} {b.Element!.Id}", where, weights.Switch, sticks: b.Kind == BranchKind.Contact),
        { Kind: BranchKind.Load, Element: not null } => Load(i, LoadName.Of(b.Thing!, b.Element), where),
        { Kind: BranchKind.Source } => Source(i, b, where),
        { Kind: BranchKind.Conductor, Thing.Kind: ThingKind.GroundPoint } => OpenOrBad(i, $"ground point {b.Thing!.Id}", where, weights.GroundJoint, ofWire: false),
        { Kind: BranchKind.Conductor, Net: < 0, Thing: null } => Contact(i, $"kept wiring and switches from {PointWords.OfNode(Names(b.A))} to {PointWords.OfNode(Names(b.B))}", where, weights.Switch, sticks: b.Gate is not null),
        _ => [],
    };

    private IEnumerable<Fault> Contact(int branch, string part, string where, double weight, bool sticks)
    {
        foreach (var fault in OpenOrBad(branch, part, where, weight, ofWire: false))
        {
            yield return fault;
        }

        if (sticks)
        {
            yield return new(FaultKind.StuckClosed, part, $"{part} does not open")
            {
                Where = where,
                Weight = weight * FaultWeights.ShareOf(FaultKind.StuckClosed, false),
                Variants = [new($"closed {branch}", new() { Closed = [branch] })],
            };
        }
    }

    private IEnumerable<Fault> Load(int branch, string part, string where)
    {
        yield return new(FaultKind.Open, part, $"{part} burnt out or open inside")
        {
            Where = where,
            Weight = weights.Load * FaultWeights.ShareOf(FaultKind.Open, false),
            Variants = [new($"open {branch}", NetworkFault.Open([branch])) { Carriers = [branch] }],
        };
        yield return new(FaultKind.ShortedInside, part, $"{part} short inside")
        {
            Where = where,
            Weight = weights.Load * FaultWeights.ShareOf(FaultKind.ShortedInside, false),
            Variants = [new($"bridged {branch}", new() { Bridged = [branch] })],
        };
    }

    private IEnumerable<Fault> Source(int branch, Branch b, string where)
    {
        var part = b.Thing!.Id;
        if (b.Source?.Kind == SourceKind.Battery)
        {
            yield return new(FaultKind.RunDown, part, $"{part} run down")
            {
                Where = where,
                Weight = weights.Source,
                Variants = [new($"weak {branch}", new() { Weak = [(branch, RunDownShare)] })],
            };
        }
        else
        {
            yield return new(FaultKind.Open, part, $"{part} gives nothing")
            {
                Where = where,
                Weight = weights.Source,
                Variants = [new($"open {branch}", NetworkFault.Open(Enumerable.Range(0, network.Network.Branches.Count).Where(i => i == branch || (network.Network.Branches[i].Kind == BranchKind.Exciter && network.Network.Branches[i].Thing == b.Thing))))],
            };
        }
    }

    /// <summary>Wires of different nets in cavities of one contact size that follow one another: each in the other's place. A contact of another size does not lock there.</summary>
    private IEnumerable<Fault> Swaps()
    {
        var ends = Built().SelectMany(w => new[] { (w.Number, w.Wire, End: w.Wire.From), (w.Number, w.Wire, End: w.Wire.To) }).Where(e => e.End.Pin is not null)
            .ToLookup(e => e.End.At, StringComparer.Ordinal);
        foreach (var thing in network.Plan.Harness.Things.Where(t => t.Pins.Length > 1))
        {
            var body = network.Index.Connector(thing.ConnectorPart);
            string SizeOf(Pin pin) => body?.Cavities.FirstOrDefault(c => c.Name == (pin.Cavity ?? pin.Name))?.Size ?? pin.Size;
            var cavities = thing.Pins.Select(p => ends[thing.Id].Where(e => e.End.Pin == p.Name).ToArray()).ToArray();
            for (var i = 0; i + 1 < cavities.Length; i++)
            {
                if (thing.Pins[i].Style == PinStyle.Cavity && thing.Pins[i + 1].Style == PinStyle.Cavity && SizeOf(thing.Pins[i]) == SizeOf(thing.Pins[i + 1])
                    && cavities[i].Length == 1 && cavities[i + 1].Length == 1)
                {
                    var (a, b) = (cavities[i][0], cavities[i + 1][0]);
                    var (nodeA, nodeB) = (network.NodeAt(a.End, a.Wire.Net), network.NodeAt(b.End, b.Wire.Net));
                    if (a.Wire.Net != b.Wire.Net && nodeA != nodeB)
                    {
                        yield return new(FaultKind.Swapped, $"{thing.Id} {a.End.Pin} and {b.End.Pin}", $"wires {a.Wire.Id} and {b.Wire.Id} in each other's cavity of {thing.Id}, {a.End.Pin} and {b.End.Pin}")
                        {
                            Where = ProbePoints.Where(network.Plan, network.Index, thing.Id),
                            Weight = weights.Swapped,
                            Wires = [a.Wire.Id, b.Wire.Id],
                            At = [thing.Id],
                            Variants = [new($"swap {a.Number} {b.Number} {thing.Id}", NetworkFault.None) { Swap = (a.Number, b.Number, nodeA, nodeB) }],
                        };
                    }
                }
            }
        }
    }

    private IEnumerable<Fault> Options()
    {
        foreach (var option in network.Plan.Harness.Options)
        {
            foreach (var choice in option.Choices.Where(c => build.GetValueOrDefault(option.Id) != c))
            {
                var other = build.SetItem(option.Id, choice);
                if (network.Plan.Builds.Any(b => b.All(o => other.GetValueOrDefault(o.Key) == o.Value)))
                {
                    yield return new(FaultKind.WrongOption, $"option {option.Id}", $"built with {option.Id}: {choice} instead of {build.GetValueOrDefault(option.Id)}")
                    {
                        Where = "whole harness",
                        Weight = weights.WrongOption,
                        Variants = [new($"option {option.Id}={choice}", NetworkFault.None) { Build = other }],
                    };
                }
            }
        }
    }

    private string Names(int node) =>
        network.Shown.Where(s => s.Value == node).Select(s => s.Key).Order(StringComparer.Ordinal).FirstOrDefault() ?? network.Network.Names[node];
}
