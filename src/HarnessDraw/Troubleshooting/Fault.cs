using System.Collections.Immutable;
using HarnessDraw.Electrical;

namespace HarnessDraw.Troubleshooting;

/// <summary>What can be wrong with one part.</summary>
public enum FaultKind
{
    Open,
    HighResistance,
    ShortToGround,
    ShortToSupply,

    /// <summary>A contact that does not open any more.</summary>
    StuckClosed,

    /// <summary>A load that is a dead short from pin to pin.</summary>
    ShortedInside,

    /// <summary>Two wires in each other's cavity.</summary>
    Swapped,

    /// <summary>Built with another choice of an option than it should be.</summary>
    WrongOption,

    /// <summary>A battery that is run down.</summary>
    RunDown,
}

/// <summary>
/// One thing that may be wrong: the part and in words what is wrong with it. <paramref name="Part"/> is what is mended or looked at.
/// </summary>
public sealed record Fault(FaultKind Kind, string Part, string Words)
{
    /// <summary>Where the part is, in words.</summary>
    public required string Where { get; init; }

    /// <summary>How often it happens beside the others; only the ratio counts. See <see cref="FaultWeights"/>.</summary>
    public required double Weight { get; init; }

    /// <summary>Wires it sits in or on, for a drawing.</summary>
    public ImmutableArray<string> Wires { get; init; } = [];

    /// <summary>Things and splices it sits at.</summary>
    public ImmutableArray<string> At { get; init; } = [];

    /// <summary>The wire when it is in its copper (and not in a joint at its end): what chafes and breaks along the way.</summary>
    public bool InBundle { get; init; }

    internal ImmutableArray<FaultVariant> Variants { get; init; } = [];
}

/// <summary>Which part of a wire: the joint where it begins, its copper, the joint where it ends.</summary>
public enum WireSpot
{
    None,
    From,
    Copper,
    To,
}

/// <summary>
/// A fault as it is solved. Variants of one fault differ in their ohms; faults with one <paramref name="Key"/> are the same to the network and are solved once.
/// </summary>
internal sealed record FaultVariant(string Key, NetworkFault Network)
{
    /// <summary>Wire and the part of it, where a meter at the wire's ends can tell.</summary>
    public int Wire { get; init; } = -1;
    public WireSpot Spot { get; init; }

    /// <summary>The tied node touches a live wire.</summary>
    public bool TiedToLive { get; init; }

    /// <summary>What was built instead; null: the build it should be.</summary>
    public ImmutableSortedDictionary<string, string>? Build { get; init; }

    /// <summary>Two wires whose ends at a connector have changed places, with the nodes there.</summary>
    public (int WireA, int WireB, int NodeA, int NodeB)? Swap { get; init; }

    /// <summary>Branches whose current alone says whether the fault does anything in a state; empty: cannot be told beforehand.</summary>
    public ImmutableArray<int> Carriers { get; init; } = [];
}
