using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Model;

/// <summary>
/// The vehicle seen from above: x in mm from the firewall towards the nose, y to the vehicle's right, z up; origin at the pass-through
/// or wherever the layout says.
/// </summary>
public sealed record VehicleLayout
{
    public required string Title { get; init; }

    /// <summary>Place where stations and the trunk start.</summary>
    public required string Root { get; init; }
    public required ImmutableArray<Place> Places { get; init; }
    public required ImmutableArray<Path> Paths { get; init; }
    public ImmutableArray<Zone> Zones { get; init; } = [];
    public ImmutableArray<Opening> Openings { get; init; } = [];
    public ImmutableArray<Surface> Surfaces { get; init; } = [];
    public ImmutableArray<KeepClear> KeepClear { get; init; } = [];

    /// <summary>Body lines for the drawing, in vehicle millimetres.</summary>
    public ImmutableArray<BodyLine> Outline { get; init; } = [];

    /// <summary>An SVG file with further body lines as the chart shows them (nose to the left, the vehicle's right at the top); its user units are vehicle millimetres.</summary>
    public BroughtFile? OutlineDrawing { get; init; }

    public Place PlaceOf(string id) => Places.First(p => p.Id == id);
}

/// <summary>A named point. <see cref="Branch"/> names the branch that ends or hangs there ('LEFT LAMPS').</summary>
public sealed record Place(string Id, double Xmm, double Ymm, double Zmm)
{
    public string? Zone { get; init; }
    public string? Branch { get; init; }

    /// <summary>What covers the place once the vehicle is assembled ('inner wing panel'); null: it can be reached.</summary>
    public string? Behind { get; init; }
    public SourceSpan? At { get; init; }
}

/// <summary>How the length of a path is known.</summary>
public enum LengthKnown
{
    Measured,
    Estimated,
    Unknown,
}

/// <summary>A permitted run between two places. <see cref="LengthMm"/> is null when unknown.</summary>
public sealed record Path(string Id, string From, string To)
{
    public double? LengthMm { get; init; }
    public LengthKnown Known { get; init; } = LengthKnown.Measured;

    /// <summary>A second measurement of the same run, if taken.</summary>
    public double? AgainMm { get; init; }
    public double? ClipsEveryMm { get; init; }
    public string? Zone { get; init; }

    /// <summary>Travel between the ends in millimetres (engine rock, hinge).</summary>
    public double? MovesMm { get; init; }
    public SourceSpan? At { get; init; }
}

/// <summary>What may reach a wire.</summary>
public enum Exposure
{
    Dry,
    Spray,
    Splash,
    Fuel,
    Acid,
}

/// <summary>Ambient temperature in degrees Celsius and exposure of paths and places.</summary>
public sealed record Zone(string Id, double? AmbientC, Exposure Exposure, SourceSpan? At);

/// <summary>A hole in a panel: round (diameter) or rectangular, in millimetres, and what sits in it.</summary>
public sealed record Opening(string Place, double WidthMm, double HeightMm, bool Round)
{
    public string? Panel { get; init; }

    /// <summary>Flat metal of the panel with the opening in its middle; null: not said.</summary>
    public double? RoomWidthMm { get; init; }
    public double? RoomHeightMm { get; init; }
    public string? Holds { get; init; }
    public string? OldOpening { get; init; }

    /// <summary>Where its middle lies on the panel; null: not said.</summary>
    public OpeningDatum? Datum { get; init; }
    public SourceSpan? At { get; init; }
}

/// <summary>A point that can be found on the panel, and the middle of an opening from there in millimetres, seen from the bay: to the right and up; null: yet to be measured.</summary>
public sealed record OpeningDatum(string From, double? AcrossMm, double? UpMm)
{
    public bool Measured => AcrossMm is not null && UpMm is not null;
}

/// <summary>What a part of the vehicle is made of; only metal returns current.</summary>
public sealed record Surface(string Id, string Material, bool Conducts);

/// <summary>Something the harness stays away from.</summary>
public sealed record KeepClear(string What, double Xmm, double Ymm, double Zmm, double ByMm, SourceSpan? At)
{
    /// <summary>The other end of something long, such as an exhaust pipe or a steering shaft; null: it lies at one point.</summary>
    public (double Xmm, double Ymm, double Zmm)? To { get; init; }

    /// <summary>True where no wire may pass, sleeved or not.</summary>
    public bool Forbidden { get; init; }

    /// <summary>The least distance of a straight run between two places, mm.</summary>
    public double DistanceMm(Place from, Place to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var end = To ?? (Xmm, Ymm, Zmm);
        return Lines3.DistanceMm((from.Xmm, from.Ymm, from.Zmm), (to.Xmm, to.Ymm, to.Zmm), (Xmm, Ymm, Zmm), end);
    }
}

/// <summary>A named line of the body in vehicle millimetres ('body', 'wheel arch', 'engine').</summary>
public sealed record BodyLine(string What, ImmutableArray<PlanPoint> Points, bool Closed);

/// <summary>A point seen from above, vehicle millimetres.</summary>
public readonly record struct PlanPoint(double Xmm, double Ymm);
