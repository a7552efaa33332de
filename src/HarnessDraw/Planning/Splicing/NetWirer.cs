using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Routing;

namespace HarnessDraw.Planning.Splicing;

/// <summary>
/// Turns nets into wires: two members are one wire; more meet at a stud of the net if there is one, else in splices; wires given by hand
/// are taken as they are.
/// </summary>
internal sealed class NetWirer(HarnessIndex index, PlanningOptions options, RoutedTree tree, PlaceGraph places)
{
    private readonly List<DraftWire> wires = [];
    private readonly List<DraftSplice> splices = [];
    private readonly SplicePlaces free = new(index, options, tree);
    private readonly BuiltWiring built = new(index.Harness.Built);

    /// <summary>Nets whose splice found no allowed place.</summary>
    public List<int> Unplaced { get; } = [];

    /// <param name="areaOf">Copper of the wire to a member of a net, mm2.</param>
    /// <param name="linkArea">Copper of a wire that carries several members of a net, mm2.</param>
    public Wiring Wire(Func<int, int, double> areaOf, Func<int, IEnumerable<int>, double> linkArea)
    {
        foreach (var point in built.Points(tree))
        {
            free.Take(point);
        }

        for (var n = 0; n < index.Harness.Nets.Length; n++)
        {
            WireNet(n, areaOf, linkArea);
        }

        return new([.. wires], [.. splices]);
    }

    private void WireNet(int n, Func<int, int, double> areaOf, Func<int, IEnumerable<int>, double> linkArea)
    {
        var net = index.Harness.Nets[n];
        ImmutableArray<PinRef> members = [net.Root, .. net.Ends];
        if (!net.ByHand.IsEmpty)
        {
            WireByHand(n, net, members);
            return;
        }

        if (members.Length <= 2 || Hub(members) is not null)
        {
            var hub = members.Length <= 2 ? 0 : Hub(members)!.Value;
            foreach (var m in Enumerable.Range(0, members.Length).Where(m => m != hub))
            {
                Add(n, End(members, hub), End(members, m), [.. Enumerable.Range(0, members.Length).Where(o => o != m)], ConditionOf(net, members, [hub, m]));
            }

            return;
        }

        if (built.JunctionOf(net, members, tree, PlaceNumber) is { } asBuilt)
        {
            Emit(n, net, members, asBuilt);
            return;
        }

        ImmutableArray<Joint> joints = [.. members.Select((p, m) => new Joint(m, PlaceNumber(p), areaOf(n, m)))];
        var junction = new JunctionFinder(tree, free, options).Join(joints, far => linkArea(n, far.Select(j => j.Member).Where(m => m >= 0)));
        Emit(n, net, members, junction);
    }

    /// <summary>The member at a stud, where all wires of the net can meet as rings: the root if it is one.</summary>
    private int? Hub(ImmutableArray<PinRef> members)
    {
        for (var m = 0; m < members.Length; m++)
        {
            if (index.IsStud(members[m]))
            {
                return m;
            }
        }

        return null;
    }

    private void Emit(int n, Net net, ImmutableArray<PinRef> members, Junction top)
    {
        var all = new List<Junction>();
        var numberOf = new Dictionary<Junction, int>(ReferenceEqualityComparer.Instance);
        var near = new Dictionary<Junction, List<Junction>>(ReferenceEqualityComparer.Instance);
        void Collect(Junction j)
        {
            all.Add(j);
            near.TryAdd(j, []);
            foreach (var link in j.Links)
            {
                Collect(link);
                near[j].Add(link);
                near[link].Add(j);
            }
        }

        Collect(top);
        void Visit(Junction j, Junction? from)
        {
            numberOf[j] = splices.Count;
            splices.Add(new(n, j.Point, j.Id));
            free.Take(j.Point);
            if (!j.Allowed)
            {
                Unplaced.Add(n);
            }

            var here = DraftEnd.AtSplice(j.Point, numberOf[j]);
            if (j.Members.Contains(0))
            {
                Add(n, End(members, 0), here, [0], ConditionOf(net, members, [0]));
            }

            foreach (var m in j.Members.Where(m => m != 0))
            {
                Add(n, here, End(members, m), [.. Enumerable.Range(0, members.Length).Where(o => o != m)], ConditionOf(net, members, [m]));
            }

            foreach (var next in near[j].Where(o => o != from))
            {
                var behind = Behind(next, j);
                var at = wires.Count;
                Visit(next, j);
                wires.Insert(at, Oriented(n, here, DraftEnd.AtSplice(next.Point, numberOf[next]), [.. Enumerable.Range(0, members.Length).Where(m => !behind.Contains(m))], net.OnlyWith));
            }
        }

        HashSet<int> Behind(Junction j, Junction from) => [.. j.Members, .. near[j].Where(o => o != from).SelectMany(o => Behind(o, j))];
        Visit(all.First(j => j.Members.Contains(0)), null);
    }

    private void WireByHand(int n, Net net, ImmutableArray<PinRef> members)
    {
        foreach (var hand in net.ByHand)
        {
            var reached = new HashSet<PinRef> { hand.From };
            bool grown;
            do
            {
                grown = false;
                foreach (var other in net.ByHand.Where(o => o != hand))
                {
                    if (reached.Contains(other.From) != reached.Contains(other.To))
                    {
                        reached.Add(other.From);
                        reached.Add(other.To);
                        grown = true;
                    }
                }
            }
            while (grown);
            ImmutableArray<int> side = [.. Enumerable.Range(0, members.Length).Where(m => reached.Contains(members[m]))];
            wires.Add(new(n, HandEnd(members, hand.From), HandEnd(members, hand.To), side, net.OnlyWith) { Hand = hand });
        }
    }

    private DraftEnd HandEnd(ImmutableArray<PinRef> members, PinRef pin) => DraftEnd.AtPin(tree.PointOf(PlaceNumber(pin)), members.IndexOf(pin), pin);

    private DraftEnd End(ImmutableArray<PinRef> members, int m) => DraftEnd.AtPin(tree.PointOf(PlaceNumber(members[m])), m, members[m]);

    private int PlaceNumber(PinRef pin) => places.Find(index.PlaceOf(pin)) ?? tree.Root;

    private void Add(int n, DraftEnd from, DraftEnd to, ImmutableArray<int> fromSide, BuildCondition builds) => wires.Add(Oriented(n, from, to, fromSide, builds));

    /// <summary>Returns read from the load to the ground, feeds from the root outwards.</summary>
    private DraftWire Oriented(int n, DraftEnd from, DraftEnd to, ImmutableArray<int> fromSide, BuildCondition builds)
    {
        var net = index.Harness.Nets[n];
        return index.Circuit(net.Circuit).IsReturn
            ? new(n, to, from, [.. Enumerable.Range(0, net.Ends.Length + 1).Where(m => !fromSide.Contains(m))], builds)
            : new(n, from, to, fromSide, builds);
    }

    private BuildCondition ConditionOf(Net net, ImmutableArray<PinRef> members, IEnumerable<int> ends) =>
        ends.Aggregate(net.OnlyWith, (c, m) => Conditions.Both(c, index.Thing(members[m].Thing)?.OnlyWith ?? BuildCondition.Always));
}
