namespace HarnessDraw.Electrical;

/// <summary>How the current through a part follows the volts across it.</summary>
public enum PartBehaviour
{
    /// <summary>Nothing flows: an open switch, a fuse taken out.</summary>
    Open,

    /// <summary>Wires, contacts, fuses, heaters, coils, senders, a stalled motor.</summary>
    Ohmic,

    /// <summary>Fixed volts behind a resistance, both ways.</summary>
    Source,

    /// <summary>A lead-acid battery: gives from its rest volts downward, takes charge only some way above them.</summary>
    Battery,

    /// <summary>Regulated volts behind a resistance, up to its rated current and never backwards.</summary>
    Limited,

    /// <summary>A tungsten filament: current goes with volts to the 0.55, cold it has a tenth of its hot resistance.</summary>
    Filament,

    /// <summary>A running motor: its current hardly depends on volts.</summary>
    Motor,

    /// <summary>Electronics that draw their power whatever the volts, down to where they switch off.</summary>
    ConstantPower,

    /// <summary>A silicon diode, conducting from its first node to its second.</summary>
    Diode,
}

/// <summary>
/// Amperes of a part over the volts across it, with the slope that Newton's method needs. Every law is continuous and passes no current
/// that nothing drives. The figures of filament, battery and motor are common practice, no source.
/// </summary>
public readonly record struct PartLaw(PartBehaviour Kind, double Ohm, double RatedV, double RatedA)
{
    /// <summary>Exponents of a filament's current and of its light over its volts. Encyclopedia page 'Lamp rerating' (en.wikipedia.org), after an electrical handbook of 1978: light 3.4 to 3.5.</summary>
    public const double FilamentPower = 0.55;
    public const double LightPower = 3.4;

    /// <summary>Share of its volts below which a filament is cold: 0.006 gives a tenth of the hot resistance.</summary>
    public const double FilamentColdShare = 0.006;

    /// <summary>Share of its volts below which a motor follows Ohm.</summary>
    public const double MotorShare = 0.4;

    /// <summary>How little a running motor's current rises with its volts.</summary>
    public const double MotorSlope = 0.02;

    /// <summary>What is left of the conductance of a regulated source at its limit and backwards: enough to leave no node hanging.</summary>
    public const double BackwardShare = 1e-6;

    /// <summary>Share of its volts below which electronics follow Ohm.</summary>
    public const double ElectronicShare = 0.6;

    /// <summary>A charged battery takes charge above this multiple of its rest volts (13.86 V at 12.6 V), through four times its own resistance.</summary>
    public const double ChargeFrom = 1.1;

    /// <summary>How much harder charge goes in than it comes out.</summary>
    public const double ChargeHardness = 4;

    /// <summary>Siemens of a battery between rest and charge.</summary>
    public const double RestSiemens = 0.2;

    /// <summary>Saturation current and thermal volts of a silicon diode at 27 degC: 0.715 V at 1 A.</summary>
    public const double DiodeA = 1e-12;

    /// <summary>Boltzmann's constant times 300.15 K over the charge of the electron.</summary>
    public const double ThermalV = 0.025865;

    private const double MostDiodeV = 1.2;

    public static readonly PartLaw Nothing = new(PartBehaviour.Open, 0, 0, 0);

    public static PartLaw Resistor(double ohm) => new(PartBehaviour.Ohmic, Math.Max(ohm, 1e-9), 0, 0);

    public static PartLaw Source(double volts, double ohm) => new(PartBehaviour.Source, Math.Max(ohm, 1e-6), volts, 0);

    public static PartLaw Battery(double restV, double ohm) => new(PartBehaviour.Battery, Math.Max(ohm, 1e-6), restV, 0);

    public static PartLaw Limited(double volts, double ohm, double mostA) => new(PartBehaviour.Limited, Math.Max(ohm, 1e-6), volts, mostA);

    public static PartLaw Diode => new(PartBehaviour.Diode, 0, 0, 0);

    public static PartLaw Load(PartBehaviour kind, double volts, double amperes) => kind == PartBehaviour.Ohmic ? Resistor(volts / amperes) : new(kind, 0, volts, amperes);

    public bool IsOpen => Kind == PartBehaviour.Open;

    internal PartRole Role => IsOpen ? PartRole.Open : IsSource ? PartRole.Gives : PartRole.Takes;

    /// <summary>True for what gives power: the rest only takes it.</summary>
    public bool IsSource => Kind is PartBehaviour.Source or PartBehaviour.Battery or PartBehaviour.Limited;

    /// <summary>
    /// Amperes from the first node to the second at <paramref name="volts"/> across, and siemens there. Electronics draw less at more volts: their falling tangent, beside a
    /// source as soft as a resting battery, would lead away from the answer, so it counts as level.
    /// </summary>
    public (double Amperes, double Siemens) At(double volts)
    {
        switch (Kind)
        {
            case PartBehaviour.Ohmic:
                return (volts / Ohm, 1 / Ohm);
            case PartBehaviour.Source:
                return ((volts - RatedV) / Ohm, 1 / Ohm);
            case PartBehaviour.Battery:
                return BatteryAt(volts);
            case PartBehaviour.Limited:
                var wanted = (volts - RatedV) / Ohm;
                return wanted >= 0 ? (wanted * BackwardShare, BackwardShare / Ohm)
                    : wanted <= -RatedA ? (-RatedA + ((wanted + RatedA) * BackwardShare), BackwardShare / Ohm)
                    : (wanted, 1 / Ohm);
            case PartBehaviour.Filament:
                return FilamentAt(volts);
            case PartBehaviour.Motor:
                return MotorAt(volts);
            case PartBehaviour.ConstantPower:
                var share = ElectronicShare * RatedV;
                return Math.Abs(volts) < share ? (RatedV * RatedA * volts / (share * share), RatedV * RatedA / (share * share)) : (RatedV * RatedA / volts, 0);
            case PartBehaviour.Diode:
                return DiodeAt(volts);
            default:
                return (0, 0);
        }
    }

    /// <summary>Where Newton's method starts with a part: its rated point, as a resistance.</summary>
    public (double Amperes, double Siemens) Start => Kind switch
    {
        PartBehaviour.Filament or PartBehaviour.Motor or PartBehaviour.ConstantPower => (0, RatedA / RatedV),
        PartBehaviour.Battery => (-RatedV / Ohm, 1 / Ohm),
        PartBehaviour.Limited => (-RatedV / Ohm, 1 / Ohm),
        PartBehaviour.Diode => (0, 1),
        _ => At(0),
    };

    private (double, double) BatteryAt(double volts)
    {
        var chargeV = ChargeFrom * RatedV;
        return volts < RatedV ? ((volts - RatedV) / Ohm, 1 / Ohm)
            : volts <= chargeV ? ((volts - RatedV) * RestSiemens, RestSiemens)
            : (((chargeV - RatedV) * RestSiemens) + ((volts - chargeV) / (ChargeHardness * Ohm)), 1 / (ChargeHardness * Ohm));
    }

    private (double, double) MotorAt(double volts)
    {
        var knee = MotorShare * RatedV;
        var atKnee = RatedA * (1 + (MotorSlope * (MotorShare - 1)));
        return Math.Abs(volts) < knee
            ? (atKnee * volts / knee, atKnee / knee)
            : (Math.CopySign(RatedA * (1 + (MotorSlope * ((Math.Abs(volts) / RatedV) - 1))), volts), MotorSlope * RatedA / RatedV);
    }

    private (double, double) FilamentAt(double volts)
    {
        // u (u2 + d2)^(-0.225): the 0.55th power of u where it glows, a straight line where it is cold
        const double Power = (FilamentPower - 1) / 2;
        var u = volts / RatedV;
        var square = (u * u) + (FilamentColdShare * FilamentColdShare);
        var root = Math.Pow(square, Power);
        return (RatedA * u * root, RatedA / RatedV * root * (1 + (2 * Power * u * u / square)));
    }

    private static (double, double) DiodeAt(double volts)
    {
        if (volts > MostDiodeV)
        {
            var (amperes, siemens) = DiodeAt(MostDiodeV);
            return (amperes + (siemens * (volts - MostDiodeV)), siemens);
        }

        var e = Math.Exp(Math.Max(volts, -40 * ThermalV) / ThermalV);
        return (DiodeA * (e - 1), DiodeA / ThermalV * e);
    }
}
