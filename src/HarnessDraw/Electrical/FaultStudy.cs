using System.Collections.Immutable;

namespace HarnessDraw.Electrical;

/// <summary>What faults do to a plan in one build: dead shorts, opened fuses and grounds.</summary>
public sealed record FaultStudy(ImmutableArray<ShortFault> Shorts, ImmutableArray<OpenFault> Opens)
{
    /// <summary>How many faults were solved, over all states.</summary>
    public int Solved { get; init; }
}

/// <summary>What a dead short does in the end.</summary>
public enum ShortOutcome
{
    /// <summary>A fuse opens before the wire is harmed.</summary>
    FuseOpens,

    /// <summary>The fuse opens, but the wire may be past its final temperature by then.</summary>
    WireHarmedFirst,

    /// <summary>No fuse on the way opens for certain and the wire goes past its class.</summary>
    Burns,

    /// <summary>No fuse opens for certain, and the current is one that the wire bears for good.</summary>
    Borne,
}

/// <summary>
/// A dead short to the body at the far end of a wire, in the state where it is worst: amperes through the wire, the fuse that opens, its
/// window in seconds, and the hottest the conductor gets, degC.
/// </summary>
public sealed record ShortFault(string Wire, string At, string State, double CurrentA, string? Fuse, double? FuseA, double TimesRating, double ShortestS, double? LongestS, double HottestC, double FinalC, ShortOutcome Outcome);

/// <summary>A fuse taken out or a ground point lifted, in one state: what goes dead or dim, and what is fed another way.</summary>
public sealed record OpenFault(string What, string State, ImmutableArray<ChangedLoad> Dead, ImmutableArray<ChangedLoad> Dim, ImmutableArray<ChangedLoad> Sneaks);

/// <summary>A load before and after a fault, as shares of its nominal current.</summary>
public sealed record ChangedLoad(string Load, string? Circuit, double BeforeShare, double AfterShare);
