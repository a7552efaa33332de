using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Routing;

namespace HarnessDraw.Planning.Splicing;

/// <summary>An end of a wire before names are given: a member of the net (with its pin), or a splice by number.</summary>
internal sealed record DraftEnd(TreePoint Point, int Member, int Splice, PinRef? Pin)
{
    public static DraftEnd AtPin(TreePoint point, int member, PinRef pin) => new(point, member, -1, pin);

    public static DraftEnd AtSplice(TreePoint point, int splice) => new(point, -1, splice, null);
}

/// <summary>A wire before it has a size: its net, its ends and the members of the net on the side of <see cref="From"/>.</summary>
internal sealed record DraftWire(int Net, DraftEnd From, DraftEnd To, ImmutableArray<int> FromSide, BuildCondition Builds)
{
    public HandWire? Hand { get; init; }
}

/// <summary>A splice before it has a part: its net and place, and the id of one that is built.</summary>
internal sealed record DraftSplice(int Net, TreePoint Point, string? Id);

/// <summary>All wires and splices of a harness, in circuit order, feeds before legs.</summary>
internal sealed record Wiring(ImmutableArray<DraftWire> Wires, ImmutableArray<DraftSplice> Splices)
{
    /// <summary>True where wire by wire the same pins and splices are joined, wherever the splices sit.</summary>
    public bool JoinsTheSame(Wiring other) =>
        Wires.Length == other.Wires.Length && !Wires.IsEmpty
        && Wires.Zip(other.Wires).All(p => p.First.Net == p.Second.Net && AreSame(p.First.From, p.Second.From) && AreSame(p.First.To, p.Second.To)
            && p.First.FromSide.SequenceEqual(p.Second.FromSide));

    private static bool AreSame(DraftEnd a, DraftEnd b) => (a.Member, a.Splice, a.Pin) == (b.Member, b.Splice, b.Pin);
}
