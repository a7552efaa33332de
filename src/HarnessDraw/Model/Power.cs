using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>Which pole of the source is joined to the body.</summary>
public enum GroundPolarity
{
    Negative,
    Positive,
}

/// <summary>How current comes back to the source: through the metal body, or only by wires.</summary>
public enum ReturnPath
{
    Body,
    Wire,
}

/// <summary>The sources and how current returns to them.</summary>
public sealed record PowerSystem(GroundPolarity Ground, ReturnPath Returns, ImmutableArray<Source> Sources)
{
    /// <summary>Nominal volts of the vehicle: of its first battery with those in series with it, without a battery of its first source, without any 12.</summary>
    public double NominalV => Sources.FirstOrDefault(s => s.Kind == SourceKind.Battery) is { } battery ? WholeV(battery) : Sources.FirstOrDefault()?.NominalV ?? 12;

    /// <summary>The source and the batteries in series below it, down to the one whose pole is grounded.</summary>
    public ImmutableArray<Source> Chain(Source source)
    {
        var chain = ImmutableArray.CreateBuilder<Source>();
        for (var at = source; at is not null && !chain.Contains(at); at = Sources.FirstOrDefault(s => s.Id == at.StandsOn))
        {
            chain.Add(at);
        }

        return chain.ToImmutable();
    }

    /// <summary>Nominal volts of the live pole against the grounded one: its own, and those of the batteries it stands on.</summary>
    public double LiveV(Source source) => Chain(source).Sum(s => s.NominalV);

    /// <summary>Internal ohms up to the live pole.</summary>
    public double LiveOhm(Source source) => Chain(source).Sum(s => s.Ohm);

    /// <summary>True for a battery that another one stands on: its live pole is a tap between two.</summary>
    public bool IsTap(Source source) => Sources.Any(s => s.StandsOn == source.Id);

    // of the chain that the source is in, to its top
    private double WholeV(Source source) => Sources.Where(s => Chain(s).Contains(source)).Max(LiveV);
}

/// <summary>What kind of source.</summary>
public enum SourceKind
{
    Battery,
    Alternator,
    Converter,
}

/// <summary>A battery, alternator (or dynamo) or converter; it is also a <see cref="Thing"/> of the same id with its studs.</summary>
public sealed record Source
{
    public required string Id { get; init; }
    public required SourceKind Kind { get; init; }

    /// <summary>True for a dynamo, which is reckoned with as an alternator is but has no diodes.</summary>
    public bool IsDynamo { get; init; }

    /// <summary>Nominal volts: 6, 12, 24.</summary>
    public required double NominalV { get; init; }

    /// <summary>Rated output in amperes (alternator, converter); null when unknown or a battery.</summary>
    public double? OutputA { get; init; }

    /// <summary>Internal resistance in ohms; null takes the default of the electrical rules.</summary>
    public double? InternalOhm { get; init; }

    /// <summary>Internal resistance as reckoned with everywhere, ohms: as given, else 8 milliohm a 12 V (common practice, no source: 5 to 10).</summary>
    public double Ohm => InternalOhm ?? UsualInternalOhm * NominalV / 12;

    /// <summary>Internal ohms of a source of 12 V that does not say.</summary>
    public const double UsualInternalOhm = 0.008;

    /// <summary>For a battery in series with another: the one whose live pole its own other pole is joined to.</summary>
    public string? StandsOn { get; init; }

    /// <summary>For a converter: the source it draws from.</summary>
    public string? FedFrom { get; init; }
    public SourceSpan? At { get; init; }
}

/// <summary>How a protection device is built.</summary>
public enum ProtectionKind
{
    BoltIn,
    Blade,
    FusibleLink,
    Breaker,
}

/// <summary>A fuse or link. It is also a <see cref="Thing"/> of the same id with pins 'in' and 'out'.</summary>
public sealed record Protection
{
    public required string Id { get; init; }
    public required ProtectionKind Kind { get; init; }

    /// <summary>Given rating in amperes: checked, never changed. Null: worked out.</summary>
    public double? RatingA { get; init; }

    /// <summary>The bus bar, stud or panel (a thing) it sits on and is fed from; null when a circuit feeds its 'in' pin.</summary>
    public string? On { get; init; }

    /// <summary>For a fusible link: true copper area of its wire in mm2; null when not given.</summary>
    public double? LinkAreaMm2 { get; init; }

    /// <summary>For a fusible link: its length, mm; null when not given.</summary>
    public double? LinkLengthMm { get; init; }

    /// <summary>Circuits named as protected by it (beside those whose 'from' it is).</summary>
    public ImmutableArray<string> Protects { get; init; } = [];
    public SourceSpan? At { get; init; }
}

/// <summary>What the kept cabin side offers at one cavity of a firewall connector.</summary>
public sealed record KeptPin
{
    /// <summary>The mate's thing id.</summary>
    public required string Connector { get; init; }
    public required string Cavity { get; init; }

    /// <summary>Source pin on the cabin side: a protection or a thing's pin ('F7', 'ignition switch.15').</summary>
    public string? ComesFrom { get; init; }
    public ImmutableArray<string> Through { get; init; } = [];
    public string? Colour { get; init; }

    /// <summary>Resistance of the kept wiring up to the cavity, in ohms; null when not given.</summary>
    public double? AddsOhm { get; init; }
    public SourceSpan? At { get; init; }
}

/// <summary>Values assumed where nothing is given; printed as 'assumed'. Ohms. Common practice, no source.</summary>
public sealed record Assumptions
{
    public double ContactOhm { get; init; } = 0.005;
    public double SwitchOhm { get; init; } = 0.020;
    public double RelayContactOhm { get; init; } = 0.010;
    public double GroundJointOhm { get; init; } = 0.002;
}
