using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>Resistance of copper conductors and the steady temperature they reach.</summary>
public static class Copper
{
    /// <summary>Change of resistance a kelvin about 20 degC (annealed copper, IEC 60028).</summary>
    public const double PerKelvin = 0.00393;

    /// <summary>Resistivity at 20 degC in ohm mm2 a metre: 100 % IACS.</summary>
    public const double Resistivity = 0.017241;

    /// <summary>Milliohm a metre at 20 degC of a conductor that the catalogue does not know: lay and drawing add about 3 % (common practice, no source).</summary>
    public static double MilliohmPerM(double areaMm2) => 1.03 * 1000 * Resistivity / areaMm2;

    /// <summary>Factor on the 20 degC resistance at <paramref name="conductorC"/>.</summary>
    public static double Heat(double conductorC) => 1 + (PerKelvin * (conductorC - 20));

    /// <summary>Ohms of a length of wire with its conductor at a temperature.</summary>
    public static double Ohm(WireSize size, double lengthMm, double conductorC)
    {
        ArgumentNullException.ThrowIfNull(size);
        return size.MilliohmPerM * 1e-3 * lengthMm * 1e-3 * Heat(conductorC);
    }

    /// <summary>Steady conductor temperature: the rise over ambient goes with the square of the current and reaches the class at the ampacity.</summary>
    public static double SteadyC(double ambientC, double maxC, double currentA, double ampacityA)
    {
        var load = ampacityA > 0 ? Math.Abs(currentA) / ampacityA : 0;
        return ambientC + (Math.Max(0, maxC - ambientC) * Math.Min(1, load * load));
    }
}
