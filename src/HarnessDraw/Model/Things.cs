using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>What a thing is, for its rules and its picture.</summary>
public enum ThingKind
{
    Load,
    Lamp,
    Motor,
    Sender,
    Battery,
    Alternator,
    Converter,
    Starter,
    Relay,
    Switch,
    ControlUnit,
    Stud,
    BusBar,
    FusePanel,
    Fuse,
    GroundPoint,

    /// <summary>The mated pair in an opening of the firewall.</summary>
    Mate,

    /// <summary>A connector within the harness.</summary>
    Inline,
}

/// <summary>On which side of the firewall.</summary>
public enum Side
{
    Bay,
    Cabin,
}

/// <summary>How a wire is fastened to a pin.</summary>
public enum PinStyle
{
    /// <summary>A cavity of the thing's connector.</summary>
    Cavity,

    /// <summary>A push-on blade of the thing itself.</summary>
    Blade,

    /// <summary>A threaded stud or screw: ring terminal.</summary>
    Stud,

    /// <summary>The thing's own lead, joined by a splice.</summary>
    Lead,
}

/// <summary>
/// A place on a thing where a wire ends. <paramref name="Size"/> is the contact size ('2.8', '6.3') or the thread ('M8').
/// </summary>
public sealed record Pin(string Name, PinStyle Style, string Size)
{
    /// <summary>The catalogue cavity of the thing's plug that this pin is, where its name differs; null: the cavity of the same name.</summary>
    public string? Cavity { get; init; }

    /// <summary>Half ('A', 'B') of a mate that this cavity belongs to.</summary>
    public string? Half { get; init; }
}

/// <summary>What a connector body holds.</summary>
public enum ContactGender
{
    Sockets,
    Pins,
}

/// <summary>Electrical behaviour between two pins of a thing.</summary>
public enum ElementKind
{
    Source,

    /// <summary>Joined without resistance: studs of a bus bar.</summary>
    Link,
    Lamp,
    Motor,
    Heater,

    /// <summary>Coil of a relay, valve or clutch.</summary>
    Coil,

    /// <summary>Contact of a relay or switch.</summary>
    Contact,
    Fuse,
    Diode,
    Sender,

    /// <summary>Constant-power electronics.</summary>
    Electronic,
}

/// <summary>
/// One electrical element of a thing between <paramref name="PinA"/> and <paramref name="PinB"/>; a null PinB is the thing's own
/// body (it grounds itself). Unknown values are null.
/// </summary>
public sealed record Element(string Id, ElementKind Kind, string PinA, string? PinB)
{
    /// <summary>Current in amperes at nominal volts.</summary>
    public double? CurrentA { get; init; }
    public double? PowerW { get; init; }
    public double? ResistanceOhm { get; init; }

    /// <summary>Volts the element is made for; null: those of its net.</summary>
    public double? NominalV { get; init; }

    /// <summary>Highest short-time current (motor stall, solenoid pull-in) in amperes, if known.</summary>
    public double? PeakA { get; init; }

    /// <summary>For a relay contact: the coil element that works it. Null: a switch, closed by the circuit being on.</summary>
    public string? WorkedBy { get; init; }

    /// <summary>For a contact: rated current in amperes, if known.</summary>
    public double? RatedA { get; init; }
}

/// <summary>Whatever wires end in: a load, source, stud, ground point, relay, connector.</summary>
public sealed record Thing
{
    /// <summary>Name in the description ('headlamp left').</summary>
    public required string Id { get; init; }

    /// <summary>Name on the sheets ('HEADLAMP'); side marks are separate.</summary>
    public required string Label { get; init; }
    public required ThingKind Kind { get; init; }

    /// <summary>Place of the layout it sits at.</summary>
    public required string Place { get; init; }
    public Side Side { get; init; }

    /// <summary>'L', 'R' or null: printed as a mark on its card.</summary>
    public string? SideMark { get; init; }

    /// <summary>Catalogue connector that the harness carries for it, or null (blades, studs).</summary>
    public string? ConnectorPart { get; init; }
    public ImmutableArray<Pin> Pins { get; init; } = [];
    public ImmutableArray<Element> Elements { get; init; } = [];

    /// <summary>For a mate: half name to letter ('engine' to 'A').</summary>
    public ImmutableArray<HalfName> Halves { get; init; } = [];

    /// <summary>Pins whose return the program wires to a ground point (or to the named one).</summary>
    public ImmutableArray<ReturnPin> Returns { get; init; } = [];

    /// <summary>True when it is described as grounding itself.</summary>
    public bool GroundsItself { get; init; }
    public BuildCondition OnlyWith { get; init; } = BuildCondition.Always;

    /// <summary>Tightening torque in newton metres, if given.</summary>
    public double? TorqueNm { get; init; }

    /// <summary>What the harness side of its plug holds.</summary>
    public ContactGender Contacts { get; init; }

    /// <summary>Surface of the layout that a ground point sits on ('body').</summary>
    public string? Surface { get; init; }

    /// <summary>For a relay: what is fitted across its coil, 'none', 'resistor' or 'diode'; null when not said.</summary>
    public string? Suppression { get; init; }

    /// <summary>For a flasher: least current of its lamps, amperes; null when it needs none.</summary>
    public double? LeastLoadA { get; init; }

    /// <summary>For a mate: true when the harness makes the wires on its cabin side too.</summary>
    public bool BothSidesBuilt { get; init; }

    /// <summary>Allowances of the wire ends at it.</summary>
    public AllowanceRules Allowances { get; init; } = AllowanceRules.AsUsual;

    /// <summary>Surface or finish note of a ground point.</summary>
    public string? Note { get; init; }

    /// <summary>Smallest electronics or flasher note, access minutes and the like stay with later stages.</summary>
    public SourceSpan? At { get; init; }
}

/// <summary>A half of the harness that shares a mate: its name and letter.</summary>
public sealed record HalfName(string Name, string Letter);

/// <summary>A pin that must be wired to ground; a null target takes the nearest ground point along the harness.</summary>
public sealed record ReturnPin(string Pin, string? To);
