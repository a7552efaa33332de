using System.Collections.Immutable;

namespace HarnessDraw.Electrical;

/// <summary>
/// Everything that flows in one state of one build: volts against the grounded pole of the first source, amperes, watts, temperatures.
/// Lists are in the order of the plan.
/// </summary>
public sealed record OperatingPoint
{
    public required string State { get; init; }
    public required ImmutableSortedDictionary<string, string> Build { get; init; }

    /// <summary>Volts of every pin, cavity and splice by name; null: it hangs on nothing.</summary>
    public required ImmutableSortedDictionary<string, double?> Volts { get; init; }
    public required ImmutableArray<WirePoint> Wires { get; init; }
    public required ImmutableArray<FusePoint> Fuses { get; init; }
    public required ImmutableArray<LoadPoint> Loads { get; init; }
    public required ImmutableArray<ContactPoint> Contacts { get; init; }
    public required ImmutableArray<SourcePoint> Sources { get; init; }

    /// <summary>Every branch of the network as it was solved: what another program needs to solve it again.</summary>
    public required ImmutableArray<NetworkPart> Parts { get; init; }

    /// <summary>Watts that sources give; a battery that takes charge counts as a sink.</summary>
    public required double GivenW { get; init; }

    /// <summary>Watts that everything else takes.</summary>
    public required double TakenW { get; init; }

    /// <summary>False when the figures did not come to rest; <see cref="Restless"/> names relays that chatter.</summary>
    public required bool Settled { get; init; }
    public ImmutableArray<string> Restless { get; init; } = [];

    /// <summary>What is given and not taken, as a share of what is given: zero but for rounding.</summary>
    public double ImbalanceShare => Math.Abs(GivenW - TakenW) / Math.Max(Math.Max(GivenW, TakenW), 1e-3);
}

/// <summary>A wire: amperes from its 'from' end to its 'to' end, volts lost in the copper alone, steady temperature of the conductor in degC.</summary>
public sealed record WirePoint(string Wire, double CurrentA, double DropV, double TemperatureC, bool Built);

/// <summary>A fuse: amperes from 'in' to 'out', volts lost and watts made in it.</summary>
public sealed record FusePoint(string Fuse, double CurrentA, double DropV, double PowerW);

/// <summary>A load: volts across it, amperes through it and its nominal amperes. <paramref name="Element"/> null: a current given for the circuit as a whole.</summary>
public sealed record LoadPoint(string Thing, string? Element, string? Circuit, double VoltageV, double CurrentA, double NominalA)
{
    /// <summary>Current over nominal current: under a half it hardly works.</summary>
    public double Share => NominalA > 0 ? Math.Abs(CurrentA) / NominalA : 0;
}

/// <summary>A contact (of a switch, a relay, or a terminal in its cavity or on its stud): amperes and the watts it makes.</summary>
public sealed record ContactPoint(string At, string? Wire, double CurrentA, double PowerW);

/// <summary>A source: volts at its posts, amperes it gives (negative: it takes charge), and what it can give.</summary>
public sealed record SourcePoint(string Source, double VoltageV, double CurrentA, double? OutputA);

/// <summary>A two-ended part between two numbered nodes. Node 0 is the metal body, or without one the grounded pole.</summary>
public sealed record NetworkPart(string Name, int A, int B, PartLaw Law);

/// <summary>The operating point of a network given part by part: volts against node 0, amperes from A to B.</summary>
public sealed record NetworkPoint(ImmutableArray<double?> Volts, ImmutableArray<double> Amperes, bool Settled);
