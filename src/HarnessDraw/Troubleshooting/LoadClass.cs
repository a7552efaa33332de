namespace HarnessDraw.Troubleshooting;

/// <summary>What a person sees of a load in a state.</summary>
public enum LoadClass
{
    Works,
    Dim,
    Dead,

    /// <summary>On though it should be off.</summary>
    OnWrongly,

    /// <summary>Off, as it should be.</summary>
    Off,
}

/// <summary>
/// Where the classes part. A load that should work is dead below half of what it does when all is well and dim (or slow) below nine tenths of it; one that
/// should be off is on from half of its nominal figure. Common practice, no source. Measured is the current; of motors and electronics the volts; of filaments the light, put on the
/// same scale: with less than a thirtieth of it, as where three filaments lie in series, a lamp is called dead.
/// </summary>
public static class LoadClasses
{
    public const double DeadBelow = 0.5;
    public const double DimBelow = 0.9;

    /// <summary>Light of a filament below which it is called dead, as a share. Common practice, no source.</summary>
    public const double DeadLight = 0.03;

    /// <summary>Power of the light that makes <see cref="DeadLight"/> the same as <see cref="DeadBelow"/>; nine tenths are then 59 % of the light.</summary>
    internal static readonly double OfLight = Math.Log(DeadBelow) / Math.Log(DeadLight);

    public static LoadClass Of(double share, bool shouldWork) => shouldWork
        ? share < DeadBelow ? LoadClass.Dead : share < DimBelow ? LoadClass.Dim : LoadClass.Works
        : share >= DeadBelow ? LoadClass.OnWrongly : LoadClass.Off;

    public static string Words(this LoadClass seen) => seen switch
    {
        LoadClass.Works => "works",
        LoadClass.Dim => "dim or slow",
        LoadClass.Dead => "dead",
        LoadClass.OnWrongly => "on though it should be off",
        _ => "off as it should be",
    };
}
