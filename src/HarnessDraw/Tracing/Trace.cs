using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Tracing;

/// <summary>The ways of current through one circuit or load, and what the description leaves open on them.</summary>
public sealed record Trace(string Name, ImmutableArray<TraceWay> Ways)
{
    /// <summary>In words, each once: what could not be told.</summary>
    public required ImmutableArray<string> NotKnown { get; init; }

    /// <summary>Volts that were read at its stops on the built harness.</summary>
    public ImmutableArray<VoltsRead> Read { get; init; } = [];
}

/// <summary>
/// One way from the source through a load and back. There is one hop fewer than stops; hop i leads from stop i to stop i + 1. The states are those whose volts the stops
/// carry; null where the harness has no such state.
/// </summary>
public sealed record TraceWay(string Title, ImmutableArray<TraceStop> Stops, ImmutableArray<TraceHop> Hops)
{
    public required string Circuit { get; init; }
    public string? OffState { get; init; }

    /// <summary>The state in which the circuit works; losses are counted in it.</summary>
    public string? OnState { get; init; }
    public string? CrankState { get; init; }

    /// <summary>With the engine running; the circuit at work in it where there is such a state.</summary>
    public string? RunState { get; init; }

    /// <summary>The load that the way is for, by its name; the pin where it ends at none.</summary>
    public required string Load { get; init; }
}

/// <summary>A point where a meter can be put: a pin of a thing, or a splice. Volts are against the grounded pole; null: not known.</summary>
public sealed record TraceStop(string Node, string Name, string Where)
{
    public double? OffV { get; init; }
    public double? OnV { get; init; }
    public double? CrankV { get; init; }
    public double? RunV { get; init; }

    /// <summary>In the working state the farthest volts that good joints and wires allow: on the feed the least, on the return the most. Null: not known.</summary>
    public double? LimitV { get; init; }

    /// <summary>True where volts below the limit are bad, false where those above it are.</summary>
    public bool LimitIsLeast { get; init; }

    /// <summary>Minutes to get a meter there.</summary>
    public double? Minutes { get; init; }

    /// <summary>Where the probe goes, in words; empty where none can be put.</summary>
    public string Probe { get; init; } = "";

    /// <summary>Volts lost since the source in the working state, the load itself left out.</summary>
    public double? LostV { get; init; }
}

/// <summary>What lies between two stops.</summary>
public enum HopKind
{
    Wire,
    Fuse,
    Contact,
    Link,
    Diode,

    /// <summary>Wiring that stays in the vehicle.</summary>
    Kept,
    Load,

    /// <summary>Back through the metal of the vehicle.</summary>
    Body,

    /// <summary>The description does not say how.</summary>
    NotDescribed,
}

/// <summary>One step of the way, told in words; the wire's figures when it is one.</summary>
public sealed record TraceHop(HopKind Kind, string Words)
{
    public string? Wire { get; init; }
    public string? Colour { get; init; }
    public string? Size { get; init; }
    public double? CutLengthMm { get; init; }
    public bool Estimated { get; init; }

    /// <summary>Other loads whose current takes this step too.</summary>
    public ImmutableArray<string> Shared { get; init; } = [];

    /// <summary>Volts lost in this step in the working state; for a load the volts across it.</summary>
    public double? DropV { get; init; }
}
