using System.Collections.Immutable;

namespace HarnessDraw.Model;

/// <summary>The parts that harnesses share. Every row names its source.</summary>
public sealed record Catalogue
{
    public ImmutableArray<WireType> WireTypes { get; init; } = [];
    public ImmutableArray<ConnectorPart> Connectors { get; init; } = [];
    public ImmutableArray<TerminalPart> Terminals { get; init; } = [];
    public ImmutableArray<SealPart> Seals { get; init; } = [];
    public ImmutableArray<PlugPart> Plugs { get; init; } = [];
    public ImmutableArray<SplicePart> Splices { get; init; } = [];
    public ImmutableArray<FuseSeries> Fuses { get; init; } = [];
    public ImmutableArray<CoveringPart> Coverings { get; init; } = [];
    public ImmutableArray<GrommetPart> Grommets { get; init; } = [];
}

/// <summary>A wire family: insulation and temperature class, with its sizes in rising area.</summary>
public sealed record WireType(string Id, string Title, double MaxC, bool CrossLinked, ImmutableArray<WireSize> Sizes, string Source)
{
    /// <summary>True for the family used when a circuit names none.</summary>
    public bool IsUsual { get; init; }

    /// <summary>Colours stocked, IEC 60757 codes; empty means any.</summary>
    public ImmutableArray<string> Colours { get; init; } = [];

    /// <summary>How its current falls with the loaded wires of a bundle, as the harness asks.</summary>
    public BundleDerating Bundles { get; init; }
}

/// <summary>
/// One size: true copper area in mm2, resistance in milliohm a metre at 20 degC, outside diameter in mm and the published current of a single wire in air.
/// </summary>
public sealed record WireSize(string Label, double AreaMm2, string? Awg, double MilliohmPerM, double OutsideMm, double? AirAmpacityA, double? MassGramPerM, string Source)
{
    /// <summary>For which ambient and conductor its current is published; null where its source says neither, and <see cref="AmpacityBasis.AssumedAmbientC"/> with the conductor at its class is assumed.</summary>
    public AmpacityBasis? Basis { get; init; }
}

/// <summary>What a published current holds for: ambient, conductor and the class of the family's insulation, degC.</summary>
public sealed record AmpacityBasis(double AmbientC, double ConductorC, double ClassC)
{
    /// <summary>Ambient assumed where a source states none: that of a room. Common practice, no source.</summary>
    public const double AssumedAmbientC = 25;

    /// <summary>Factor from the published current to that at <see cref="AssumedAmbientC"/> with the conductor at its class: the root of the rises (heat goes with the square of the current).</summary>
    public double ToUsual { get; } = Math.Sqrt((ClassC - AssumedAmbientC) / (ConductorC - AmbientC));
}

/// <summary>A cavity of a connector body: place in mm in the wire-entry view (x right, y down), contact size and half.</summary>
public sealed record CavityPart(string Name, double Xmm, double Ymm, string Size)
{
    public string? Half { get; init; }
}

/// <summary>A connector body. Drawn in the wire-entry view with its latch up.</summary>
public sealed record ConnectorPart(string Id, string Title, double WidthMm, double HeightMm, ImmutableArray<CavityPart> Cavities, bool Sealed, string Source)
{
    /// <summary>Terminal families that lock in it (terminal ids by contact size are looked up by family and size).</summary>
    public ImmutableArray<string> TerminalFamilies { get; init; } = [];

    /// <summary>Largest total current in amperes, if known.</summary>
    public double? TotalA { get; init; }

    /// <summary>Side of the key rib in the wire-entry view: 'left', 'right', 'bottom' or null.</summary>
    public string? Key { get; init; }
    public bool CentreBolt { get; init; }
    public double? BoltTorqueNm { get; init; }

    /// <summary>True when it is a mated pair in a firewall; its cavities have halves.</summary>
    public bool IsBulkhead { get; init; }
    public double? LargestPassMm { get; init; }
}

/// <summary>A terminal: family, contact size ('2.8') or ring thread ('M8'), crimp range in mm2, insulation range in mm, strip length, continuous warm current.</summary>
public sealed record TerminalPart(string Id, string Title, string Family, string Size, bool Ring, double MinAreaMm2, double MaxAreaMm2, double MinInsulationMm, double MaxInsulationMm, double StripMm, double CurrentA, string Source)
{
    public bool Sealed { get; init; }
    public double BarrelMm { get; init; } = 8;
}

/// <summary>A single-wire seal: contact size it fits and insulation diameters it grips, mm.</summary>
public sealed record SealPart(string Id, string Title, string Size, double MinInsulationMm, double MaxInsulationMm, string Source);

/// <summary>A cavity plug for an unused cavity of the contact size.</summary>
public sealed record PlugPart(string Id, string Title, string Size, string Source);

/// <summary>A splice: total copper it takes in mm2, strip length, sealed or not.</summary>
public sealed record SplicePart(string Id, string Title, double MinTotalMm2, double MaxTotalMm2, double StripMm, bool Sealed, string Source);

/// <summary>A family of fuses with its standard ratings in amperes.</summary>
public sealed record FuseSeries(string Id, string Title, ProtectionKind Kind, ImmutableArray<FuseRating> Ratings, string Source)
{
    public double? MaxV { get; init; }
}

/// <summary>A standard rating and the colour of its body in words.</summary>
public sealed record FuseRating(double RatingA, string? Colour, double? MilliohmCold);

/// <summary>A covering for bundles between two diameters, mm; wall adds to the diameter on each side.</summary>
public sealed record CoveringPart(string Id, string Title, string Kind, double MinBundleMm, double MaxBundleMm, double WallMm, double MaxC, string Source);

/// <summary>A grommet for a panel hole, with its bore, mm.</summary>
public sealed record GrommetPart(string Id, string Title, double HoleMm, double BoreMm, string Source);
