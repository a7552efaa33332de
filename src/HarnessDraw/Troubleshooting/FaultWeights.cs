using HarnessDraw.Model;

namespace HarnessDraw.Troubleshooting;

/// <summary>
/// How often each kind of part is what is wrong, beside the others. Common practice, no source: ground joint 20, exposed contact 15, contact at the
/// firewall 10, lamp or load 15, switch or relay contact 12, fuse and holder 10, splice 8 where it is wet and 2 elsewhere, wire 1 a metre, 5 where it
/// flexes, 3 where it is hot. A harness just fitted: swapped cavities 20, terminal not seated 20, fuse missing 15, no ground 15, wrong option 10, bulb 5.
/// </summary>
public sealed record FaultWeights
{
    public static FaultWeights InService { get; } = new();

    public static FaultWeights JustFitted { get; } = new()
    {
        GroundJoint = 15,
        Contact = 20,
        FirewallContact = 20,
        DryContact = 20,
        Blade = 15,
        Ring = 10,
        Load = 5,
        Switch = 2,
        Fuse = 15,
        Splice = 1,
        WetSplice = 1,
        WirePerM = 0.5,
        FlexingPerM = 0.5,
        HotPerM = 0.5,
        Swapped = 20,
        WrongOption = 10,
        Source = 2,
    };

    public double GroundJoint { get; init; } = 20;

    /// <summary>A contact in a connector of the bay, at the firewall, in the cabin; a push-on blade; a ring under its nut.</summary>
    public double Contact { get; init; } = 15;
    public double FirewallContact { get; init; } = 10;
    public double DryContact { get; init; } = 5;
    public double Blade { get; init; } = 10;
    public double Ring { get; init; } = 4;

    /// <summary>How much oftener a contact fails that carries more than six tenths of what its terminal bears.</summary>
    public double LoadedContactFactor { get; init; } = 1.5;
    public double Load { get; init; } = 15;
    public double Switch { get; init; } = 12;
    public double Fuse { get; init; } = 10;
    public double WetSplice { get; init; } = 8;
    public double Splice { get; init; } = 2;
    public double WirePerM { get; init; } = 1;
    public double FlexingPerM { get; init; } = 5;
    public double HotPerM { get; init; } = 3;
    public double Source { get; init; } = 12;
    public double Swapped { get; init; } = 0.2;
    public double WrongOption { get; init; } = 0.2;

    /// <summary>What was worked on lately.</summary>
    public double WorkedOnFactor { get; init; } = 10;

    /// <summary>Ambient from which a zone counts as hot, degC. Common practice, no source.</summary>
    public double HotFromC { get; init; } = 85;

    /// <summary>Thing, place, wire or circuit that was worked on lately; null: none.</summary>
    public string? WorkedOn { get; init; }

    /// <summary>Share of each kind in the faults of a part. Common practice, no source.</summary>
    public static double ShareOf(FaultKind kind, bool ofWire) => kind switch
    {
        FaultKind.Open => ofWire ? 0.4 : 0.6,
        FaultKind.HighResistance => ofWire ? 0.1 : 0.3,
        FaultKind.ShortToGround => 0.4,
        FaultKind.ShortToSupply => 0.1,
        FaultKind.StuckClosed => 0.1,
        FaultKind.ShortedInside => 0.05,
        _ => 1,
    };

    internal double PerM(Zone? zone, bool flexes) => flexes ? FlexingPerM : zone?.AmbientC >= HotFromC ? HotPerM : WirePerM;
}
