using System.Collections.Immutable;

namespace HarnessDraw.Electrical;

/// <summary>What faults do to a plan in one build: dead shorts, opened fuses and grounds.</summary>
public sealed record FaultStudy(ImmutableArray<ShortFault> Shorts, ImmutableArray<OpenFault> Opens)
{
    /// <summary>What hangs behind the key and stays on when it is turned off while the engine runs.</summary>
    public ImmutableArray<RunOnLoad> RunOn { get; init; } = [];

    /// <summary>What the starter leaves of the volts, turning and standing still.</summary>
    public ImmutableArray<CrankingPoint> Cranking { get; init; } = [];

    /// <summary>What single switches and pairs of them do to loads that are not theirs.</summary>
    public required SwitchStudy Switches { get; init; }

    /// <summary>Wires that no short was tried at, by the reason; with those of <see cref="Shorts"/> they are all wires of the plan.</summary>
    public ImmutableArray<(string Why, ImmutableArray<string> Wires)> NotShorted { get; init; } = [];

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

/// <summary>A load that stays on with the key off, in the state that ran before: share of its nominal current, and volts across it.</summary>
/// <param name="State">The state in which the key is turned off.</param>
/// <param name="Load">The load.</param>
/// <param name="Circuit">Its circuit.</param>
/// <param name="Share">Share of its nominal current.</param>
/// <param name="VoltageV">Volts across it.</param>
/// <param name="ByExciter">True when the alternator's exciter terminal keeps it on; false: another feed does, such as a relay that holds itself.</param>
/// <param name="Holding">Relays that stay pulled in with it, with volts over their coils and those at which they would drop out.</param>
public sealed record RunOnLoad(string State, string Load, string? Circuit, double Share, double VoltageV, bool ByExciter, ImmutableArray<HeldRelay> Holding);

/// <summary>A relay that stays pulled in after the key is turned off: volts over its coil, and the volts below which it lets go.</summary>
public sealed record HeldRelay(string Relay, double CoilV, double DropsOutV);

/// <summary>
/// Switches tried with the key at run and the engine standing: each by itself, then pairs that share a fuse, thing or ground point, up to a bound.
/// <paramref name="Possible"/>: how many combinations of two there are.
/// </summary>
public sealed record SwitchStudy(int Tried, long Possible, ImmutableArray<SwitchEffect> Sneaks, ImmutableArray<SwitchEffect> Kills);

/// <summary>A load that is fed through another one (below half the volts), or one that a second switch puts out, with the switches that do it.</summary>
public sealed record SwitchEffect(ImmutableArray<string> Switches, string Load, double Share);
