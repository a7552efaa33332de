using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>
/// The figures the planner works by; rules that hold a plan to one of them take it from here. Each default is common practice, no source, unless its line says otherwise; all can be replaced.
/// </summary>
public sealed record PlanningOptions
{
    /// <summary>The figures as they come with the program.</summary>
    public static PlanningOptions Usual => new();

    /// <summary>What a metre of covering costs in the routing objective, as mm2 of copper beside it.</summary>
    public double CoveringAsCopperMm2 { get; init; } = 4;

    /// <summary>Ambient in degC where the layout names no zone.</summary>
    public double UsualAmbientC { get; init; } = 60;

    /// <summary>Smallest size in the engine bay, mm2.</summary>
    public double SmallestAreaMm2 { get; init; } = 0.5;

    /// <summary>Allowed drop of the loop from source to load and back, as a fraction of nominal volts (3 % and 10 %: ABYC E-11 as quoted).</summary>
    public double CriticalDrop { get; init; } = 0.03;
    public double OrdinaryDrop { get; init; } = 0.10;
    public double MotorDrop { get; init; } = 0.05;

    /// <summary>Allowed drop of the charge lead at full output, V where 12 V are nominal; scaled with them.</summary>
    public double ChargeDropAt12V { get; init; } = 0.3;

    /// <summary>Rounds in which sizes and solved states settle one another, at most; from the fifth on no wire becomes thinner again.</summary>
    public int MostSizingRounds { get; init; } = 10;

    /// <summary>A wire heats its neighbours when it carries more than this share of its rating in air.</summary>
    public double LoadedShare { get; init; } = 0.3;

    /// <summary>How far a short current (cranking) may exceed the steady rating.</summary>
    public double MomentaryFactor { get; init; } = 3;

    /// <summary>Fuse rating over steady load: ordinary, motors, alternator output; and over what passes while the starter turns (common practice, no source: seconds of a solenoid's current open no fuse of its 80 %).</summary>
    public double FuseOverLoad { get; init; } = 1.35;
    public double FuseOverMotor { get; init; } = 1.55;
    public double FuseOverOutput { get; init; } = 1.2;
    public double FuseOverCranking { get; init; } = 1.25;

    /// <summary>Steady load over fuse rating at the most, at room temperature and in heat: what is left where a contact or a given wire behind it bears no larger fuse, and what the rules about fuse loads hold every fuse to.</summary>
    public double MostFuseShare { get; init; } = 0.8;
    public double MostFuseShareInHeat { get; init; } = 0.7;

    /// <summary>Ambient from which a fuse sits in heat, degC.</summary>
    public double FuseHeatC { get; init; } = 70;

    /// <summary>Starting current over rating, at most (ISO 8820 windows as reprinted): blades, bolt-in fuses.</summary>
    public double PeakOverBlade { get; init; } = 2;
    public double PeakOverBoltIn { get; init; } = 3.5;

    /// <summary>Fuse rating over the warm current of a contact behind it, at most.</summary>
    public double FuseOverContact { get; init; } = 1.35;

    /// <summary>Volts across a fuse that carries its rating.</summary>
    public double FuseDropV { get; init; } = 0.1;

    /// <summary>Ohms of a fuse by its rating; of one without a rating those of 20 A.</summary>
    public double FuseOhm(double? ratingA) => FuseDropV / (ratingA is > 0 and var rated ? rated : 20);

    /// <summary>Cut lengths are rounded up to a multiple of this, mm: 10 by hand, 5 on a board.</summary>
    public double RoundUpToMm { get; init; } = 10;

    /// <summary>Lay of parallel taped wires as a fraction of the path.</summary>
    public double LayFraction { get; init; } = 0.015;

    /// <summary>Added to the bundle radius for a turn out of the bundle, mm.</summary>
    public double BreakoutExtraMm { get; init; } = 5;
    public double SmallDressMm { get; init; } = 20;
    public double LargeDressMm { get; init; } = 50;
    public double MateDressMm { get; init; } = 70;

    /// <summary>Times that each terminated end may be cut off and terminated again (AC 43.13-1B asks for slack for two).</summary>
    public int Reterminations { get; init; } = 2;
    public double ServiceLoopMm { get; init; } = 50;
    public double DripLoopMm { get; init; } = 60;
    public double StudStackMm { get; init; } = 10;

    /// <summary>Whether the outer wires of a bend get its angle times the bundle's radius more (geometry).</summary>
    public bool Bends { get; init; } = true;

    /// <summary>Least distance of splices from one another, from breakouts and from connectors, mm.</summary>
    public double SpliceClearMm { get; init; } = 40;

    /// <summary>Least distance of sealed splices from one another, mm: side by side they make a lump (vehicle service practice).</summary>
    public double SealedSpliceClearMm { get; init; } = 50;

    /// <summary>Ambient above which no splice is placed, degC.</summary>
    public double SpliceMaxC { get; init; } = 95;

    /// <summary>What one more splice must save: mm2 of copper times mm.</summary>
    public double SplicePriceMm3 { get; init; } = 250;

    /// <summary>Bundle diameter over the root of the sum of squares, where the wires are too many to pack one by one.</summary>
    public double BundleFactor { get; init; } = 1.2;

    /// <summary>Bend radius over bundle diameter, at least (AC 43.13-1B).</summary>
    public double BendFactor { get; init; } = 10;

    /// <summary>Valid builds listed in a plan, at most.</summary>
    public int MostBuilds { get; init; } = 256;

    /// <summary>These figures with the allowances that a description states.</summary>
    public PlanningOptions With(AllowanceRules stated)
    {
        ArgumentNullException.ThrowIfNull(stated);
        return stated == AllowanceRules.AsUsual ? this : this with
        {
            LayFraction = stated.LayMmPerM / 1000 ?? LayFraction,
            BreakoutExtraMm = stated.BreakoutMm ?? BreakoutExtraMm,
            Bends = stated.Bends ?? Bends,
            SmallDressMm = stated.DressMm ?? SmallDressMm,
            LargeDressMm = stated.LargeDressMm ?? LargeDressMm,
            MateDressMm = stated.MateDressMm ?? MateDressMm,
            Reterminations = stated.NewTerminals ?? Reterminations,
            ServiceLoopMm = stated.ServiceLoopMm ?? ServiceLoopMm,
            DripLoopMm = stated.DripLoopMm ?? DripLoopMm,
            StudStackMm = stated.StudStackMm ?? StudStackMm,
            RoundUpToMm = stated.RoundUpMm ?? RoundUpToMm,
        };
    }
}
