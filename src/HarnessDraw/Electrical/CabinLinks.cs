using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>
/// The kept cabin side: from each cavity of the mate to the fuse, switch or load behind it, by the resistance given for the kept pin or
/// the assumed contact and switches. Cabin switches conduct while their circuit is live.
/// </summary>
internal sealed partial class ElectricalNetwork
{
    public void AddCabinLinks()
    {
        foreach (var alternator in Index.Harness.Things.Where(t => t.Kind == ThingKind.Alternator))
        {
            // DIN 72552: 61 and D+ are the generator's lamp terminal; L and IND are common names of it
            foreach (var pin in alternator.Pins.Where(p => p.Name is "L" or "D+" or "61" or "IND"))
            {
                // fed by the same windings as the output, through diodes of its own: never above its own B+
                var terminal = Node($"{alternator.Id}.{pin.Name}");
                if (branches.Find(b => b.Kind == BranchKind.Source && b.Thing == alternator) is { } output)
                {
                    var turned = Index.Harness.Power.Ground == GroundPolarity.Positive;
                    Add(new(turned ? output.B : terminal, turned ? terminal : output.A, BranchKind.Exciter, 0) { Thing = alternator, When = alternator.OnlyWith });
                }
            }
        }

        foreach (var group in Index.Harness.Nets.GroupBy(n => n.Circuit, StringComparer.Ordinal))
        {
            AddCabinLinks(Index.Circuit(group.Key), [.. group]);
        }

        foreach (var circuit in kept)
        {
            AddKept(circuit);
        }
    }

    /// <summary>A circuit of the kept cabin joins its ends by their joints alone: of its wires nothing is known.</summary>
    private void AddKept(Circuit circuit)
    {
        var from = circuit.From!;
        foreach (var feed in circuit.Feeds)
        {
            Add(new(Node(NodeName(from, "")), Node(NodeName(feed, "")), BranchKind.Conductor, Joints.At(from) + Joints.At(feed)) { When = circuit.OnlyWith, Gate = circuit.Id });
        }
    }

    private Circuit? KeptAt(string thing, string pin) => kept.FirstOrDefault(c => c.Feeds.Append(c.From!).Any(p => p.Thing == thing && (p.Pin ?? Index.PinOf(p)?.Name) == pin));

    private void AddCabinLinks(Circuit circuit, Net[] nets)
    {
        if (nets.Any(n => n.Side == Side.Cabin))
        {
            LinkBuiltSides(nets);
            return;
        }

        string? inward = null;
        foreach (var net in nets)
        {
            foreach (var pin in Members(net).Where(p => Index.IsMate(p)))
            {
                var node = NodeName(pin, net.Id);
                if (pin != net.Root)
                {
                    inward = node;
                    LinkInward(circuit, net, node);
                    continue;
                }

                LinkOutward(circuit, net, node, Index.Thing(pin.Thing)!.Kind == ThingKind.Inline, inward);
            }
        }
    }

    /// <summary>Where the harness makes both sides of a mate, its contact joins the nets of the two sides in their order.</summary>
    private void LinkBuiltSides(Net[] nets)
    {
        string[] Mates(Side side) => [.. nets.Where(n => n.Side == side).SelectMany(n => Members(n).Where(p => Index.IsMate(p)).Select(p => NodeName(p, n.Id)))];
        foreach (var (bay, cabin) in Mates(Side.Bay).Zip(Mates(Side.Cabin)))
        {
            Add(new(Node(bay), Node(cabin), BranchKind.Conductor, Joined) { When = nets[0].OnlyWith });
        }
    }

    private void LinkInward(Circuit circuit, Net net, string node)
    {
        var kept = switching.KeptPinOf(circuit)?.AddsOhm;
        foreach (var feed in circuit.Feeds.Where(f => Index.Thing(f.Thing)?.Side == Side.Cabin))
        {
            // the mated contact counts at the wire's end; here only the joint at the cabin's stud or plug
            var ohm = kept ?? Joints.At(feed);
            Add(new(Node(node), Node(NodeName(feed, net.Id)), BranchKind.Conductor, ohm) { When = net.OnlyWith });
        }
    }

    private void LinkOutward(Circuit circuit, Net net, string node, bool inline, string? inward)
    {
        if (inline)
        {
            if (inward is not null)
            {
                Add(new(Node(inward), Node(node), BranchKind.Conductor, Joined) { When = net.OnlyWith });
            }

            return;
        }

        var kept = switching.KeptPinOf(circuit);
        var from = circuit.From is null ? null : Index.Thing(circuit.From.Thing);
        var switches = from?.Kind == ThingKind.Switch || inward is not null ? 1 : 0;
        var ohm = Joints.Kept(kept, switches);
        var supply = inward ?? SupplyOf(circuit, net);
        if (supply is null)
        {
            return;
        }

        // a cabin lamp or gauge stands in series with its wire to the bay
        var series = from?.Elements.FirstOrDefault(e => IsLoad(e.Kind) && e.PinB is not null && (e.PinA == circuit.From!.Pin || e.PinB == circuit.From.Pin));
        if (series is not null && from is not null && from.Side == Side.Cabin)
        {
            var near = $"{from.Id}.{circuit.From!.Pin}";
            Add(new(Node(near), Node(node), BranchKind.Conductor, Joined) { When = net.OnlyWith });
            node = $"{from.Id}.{(series.PinA == circuit.From.Pin ? series.PinB : series.PinA)}";
        }

        Add(new(Node(supply), Node(node), BranchKind.Conductor, ohm) { When = net.OnlyWith, Gate = circuit.Id });
        if (KeyTies && circuit.LiveWith != KeyPosition.Off)
        {
            Add(new(Node("behind the key"), Node(node), BranchKind.KeyTie, ohm) { When = net.OnlyWith, Gate = circuit.Id });
        }
    }

    private string? SupplyOf(Circuit circuit, Net net)
    {
        if (circuit.From is { } from)
        {
            if (Index.Protection(from.Thing) is not null)
            {
                return $"{from.Thing}.out";
            }

            if (Index.Thing(from.Thing) is { Side: Side.Bay } bay && bay.Kind is not (ThingKind.Mate or ThingKind.Inline))
            {
                return NodeName(from, net.Id);
            }
        }

        var cabin = circuit.ProtectedBy.FirstOrDefault(p => Index.Thing(p)?.Side == Side.Cabin);
        if (cabin is not null)
        {
            return $"{cabin}.out";
        }

        var feeder = circuit.From is null ? null : Index.Harness.Circuits.FirstOrDefault(c => c.Id != circuit.Id && c.Feeds.Any(f => f.Thing == circuit.From.Thing));
        var fed = feeder?.Feeds.First(f => f.Thing == circuit.From!.Thing);
        if (fed is not null && FindNode(NodeName(fed, "")) is not null)
        {
            return NodeName(fed, "");
        }

        var panel = Index.Harness.Things.FirstOrDefault(t => t.Side == Side.Cabin && t.Kind == ThingKind.FusePanel && FindNode(t.Id) is not null);
        return panel?.Id ?? BatteryLive();
    }

    /// <summary>The live pole of the first battery: where a cabin without a described feed is taken to get its current.</summary>
    private string? BatteryLive()
    {
        var battery = Index.Harness.Things.FirstOrDefault(t => t.Elements.Any(e => e.Kind == ElementKind.Source));
        var element = battery?.Elements.First(e => e.Kind == ElementKind.Source);
        var pin = Index.Harness.Power.Ground == GroundPolarity.Positive ? element?.PinB : element?.PinA;
        return pin is null ? null : $"{battery!.Id}.{pin}";
    }
}
