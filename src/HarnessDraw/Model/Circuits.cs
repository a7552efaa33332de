using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>How long a circuit works at a time.</summary>
public enum Duty
{
    Continuous,
    Intermittent,
    Momentary,
    Signal,
}

/// <summary>How much a circuit matters: critical ones are held to the tighter voltage drop.</summary>
public enum Importance
{
    Ordinary,
    Critical,
}

/// <summary>A pin of a thing. A null pin of a mate means: the planner chooses the cavity.</summary>
public sealed record PinRef(string Thing, string? Pin)
{
    /// <summary>
    /// Root of a return net whose ground point the description leaves open: the planner puts the ground point in that is nearest along the
    /// harness. No thing has the empty name.
    /// </summary>
    public static readonly PinRef NearestGround = new("", null);

    public bool IsNearestGround => Thing.Length == 0;

    public override string ToString() => Pin is null ? Thing : $"{Thing}.{Pin}";
}

/// <summary>A named job and all its wires. What the description leaves out is null.</summary>
public sealed record Circuit
{
    public required string Id { get; init; }
    public PinRef? From { get; init; }
    public ImmutableArray<PinRef> Feeds { get; init; } = [];

    /// <summary>The mate it crosses the firewall by, if any.</summary>
    public string? EntersBy { get; init; }

    /// <summary>Half of the mate ('A', 'B'); null lets the planner choose.</summary>
    public string? Half { get; init; }
    public Duty Duty { get; init; }
    public Importance Importance { get; init; }
    public string? Colour { get; init; }

    /// <summary>Size fixed by hand in mm2 (true copper area; AWG sizes converted by the named catalogue).</summary>
    public double? AreaMm2 { get; init; }
    public string? Awg { get; init; }

    /// <summary>Wire type of the catalogue, or null for the default one.</summary>
    public string? WireType { get; init; }

    /// <summary>Wire type of the wiring that it replaces, or null when not said.</summary>
    public string? ReplacesWireType { get; init; }

    /// <summary>Key position from which its feed is live. Off: always live.</summary>
    public KeyPosition LiveWith { get; init; } = KeyPosition.Run;
    public bool TriggersOnly { get; init; }

    /// <summary>Why it has no fuse, or null when it must have one.</summary>
    public string? UnfusedBecause { get; init; }

    /// <summary>Protections upstream, nearest first.</summary>
    public ImmutableArray<string> ProtectedBy { get; init; } = [];
    public double NominalV { get; init; } = 12;

    /// <summary>True for the wires from a load's return pin to ground (made by the program, or a circuit 'to' ground).</summary>
    public bool IsReturn { get; init; }
    public BuildCondition OnlyWith { get; init; } = BuildCondition.Always;

    /// <summary>What happens to the kept cavity when the option is not fitted: 'remove', 'cap' or null.</summary>
    public string? WhenNotFitted { get; init; }
    public Cable? Cable { get; init; }

    /// <summary>Current drawn when given for the circuit as a whole; null: from its loads.</summary>
    public double? CurrentA { get; init; }

    /// <summary>Minutes on and off for intermittent duty, if given.</summary>
    public string? DutyText { get; init; }
    public SourceSpan? At { get; init; }
}

/// <summary>Conductors laid together: twist pitch and screen.</summary>
public sealed record Cable(string Id, double? TwistPitchMm, bool Screened, PinRef? ScreenGroundedAt);

/// <summary>
/// Pins of one circuit joined without a switch, fuse or load between, on one side of the firewall. The harness builds the bay-side
/// nets; a net has one <see cref="Root"/> (where current comes from, or for returns the ground) and at least one other end.
/// </summary>
public sealed record Net
{
    /// <summary>The circuit's id, with ':2', ':3' for further nets of the same circuit.</summary>
    public required string Id { get; init; }
    public required string Circuit { get; init; }
    public required PinRef Root { get; init; }
    public required ImmutableArray<PinRef> Ends { get; init; }

    /// <summary>Cavity fixed by hand for the pin of this net that is a mate; null: the planner chooses.</summary>
    public string? FixedCavity { get; init; }
    public BuildCondition OnlyWith { get; init; } = BuildCondition.Always;

    /// <summary>Colour of this conductor of a cable; null: the circuit's.</summary>
    public string? Colour { get; init; }

    /// <summary>Wires given one by one; when not empty the planner adds none of its own to this net.</summary>
    public ImmutableArray<HandWire> ByHand { get; init; } = [];

    /// <summary>The side it is built on: bay, or cabin for harnesses that make both sides of a mate.</summary>
    public Side Side { get; init; }

    /// <summary>Wire id fixed by hand for a two-ended net.</summary>
    public string? FixedWireId { get; init; }
}

/// <summary>A wire given wholly by hand: all of it is checked and none of it changed.</summary>
public sealed record HandWire
{
    public required string Id { get; init; }
    public required PinRef From { get; init; }
    public required PinRef To { get; init; }
    public double? AreaMm2 { get; init; }
    public string? Awg { get; init; }
    public string? Colour { get; init; }

    /// <summary>Places the wire passes, in order; empty: the planner routes it.</summary>
    public ImmutableArray<string> Route { get; init; } = [];
    public double? CutLengthMm { get; init; }
    public SourceSpan? At { get; init; }
}
