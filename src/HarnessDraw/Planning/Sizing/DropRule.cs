using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>Voltage drop of one conductor by itself: what it loses, and the smallest size that loses no more than a limit.</summary>
public static class DropRule
{
    /// <summary>Volts lost in the whole conductor (out and back) at a conductor temperature.</summary>
    public static double DropV(WireSize size, double currentA, double lengthMm, double conductorC) => currentA * Copper.Ohm(size, lengthMm, conductorC);

    /// <summary>The first of the sizes, in rising area, whose drop is within the limit; null when none is.</summary>
    public static WireSize? Smallest(IEnumerable<WireSize> sizes, double currentA, double lengthMm, double limitV, double conductorC) =>
        sizes.OrderBy(s => s.AreaMm2).FirstOrDefault(s => DropV(s, currentA, lengthMm, conductorC) <= limitV);
}
