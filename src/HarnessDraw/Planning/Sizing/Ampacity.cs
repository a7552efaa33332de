using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>
/// The steady current of a wire where it lies: published current of the single wire in air, brought from the ambient and conductor it is published for to 25 degC and the class, times the bundle
/// factor by loaded wires, times the ambient factor. The steps of the bundle factor are one reading of the aerospace derating curve; common practice.
/// </summary>
public static class Ampacity
{
    /// <summary>Ambient from which currents are derated, degC: published ones are brought to it.</summary>
    public const double PublishedAtC = AmpacityBasis.AssumedAmbientC;

    /// <summary>How the current in air grows with the area. Common practice, no source.</summary>
    public const double AreaPower = 0.62;

    /// <summary>
    /// Factor for the number of wires in the bundle that carry current at the same time: by our steps, or by those that a marine catalogue quotes from the US Coast Guard's
    /// electrical guideline (there for 50 V and more; below, that source asks for none).
    /// </summary>
    public static double BundleFactor(int loadedWires, BundleDerating by = BundleDerating.Steps) => (by, loadedWires) switch
    {
        (BundleDerating.Marine, <= 2) => 1,
        (BundleDerating.Marine, 3) => 0.7,
        (BundleDerating.Marine, <= 6) => 0.6,
        (BundleDerating.Marine, <= 24) => 0.5,
        (BundleDerating.Marine, _) => 0.4,
        (_, <= 3) => 1,
        (_, <= 7) => 0.8,
        (_, <= 19) => 0.7,
        (_, <= 39) => 0.5,
        _ => 0.4,
    };

    /// <summary>Square root of the rise that is left over the rise at 25 degC; nothing when the ambient reaches the class.</summary>
    public static double AmbientFactor(double maxC, double ambientC) =>
        ambientC >= maxC ? 0 : Math.Sqrt((maxC - ambientC) / (maxC - PublishedAtC));

    /// <summary>Amperes of the single wire in air at 25 degC with the conductor at its class: as published, else by area (14 A at 0.75 mm2, growing with its power 0.62).</summary>
    public static double InAirA(WireSize size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return size.AirAmpacityA * (size.Basis?.ToUsual ?? 1) ?? 16.8 * Math.Pow(size.AreaMm2, AreaPower);
    }

    /// <summary>Amperes where the wire lies.</summary>
    public static double DeratedA(WireSize size, double maxC, double ambientC, int loadedWires, BundleDerating by = BundleDerating.Steps) =>
        InAirA(size) * BundleFactor(loadedWires, by) * AmbientFactor(maxC, ambientC);
}
