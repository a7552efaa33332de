using System.Globalization;

namespace HarnessDraw.Fabrication;

/// <summary>
/// Gauges by ASTM B258: a wire of gauge n is 0.127 mm times 92^((36 - n) / 39) thick. A metric size never becomes a thinner gauge; even gauges only, as stranded
/// wire is sold. Vehicle strandings hold up to 7 % less copper than their gauge: theirs is another catalogue.
/// </summary>
public static class GaugeEquivalent
{
    private const int Thinnest = 30;
    private const int Thickest = -2;

    /// <summary>Copper area of a solid wire of the gauge, mm2; 0, -1, -2 are 1/0, 2/0, 3/0.</summary>
    public static double AreaMm2(int gauge) => Math.PI / 4 * Math.Pow(0.127 * Math.Pow(92, (36 - gauge) / 39.0), 2);

    /// <summary>The thinnest even gauge that is not thinner than an area: '14 AWG' for 1.5 mm2; null for what is thicker than all of them.</summary>
    public static string? NotThinner(double areaMm2)
    {
        for (var gauge = Thinnest; gauge > 0; gauge -= 2)
        {
            if (AreaMm2(gauge) >= areaMm2 - 1e-9)
            {
                return string.Create(CultureInfo.InvariantCulture, $"{gauge} AWG");
            }
        }

        for (var gauge = 0; gauge >= Thickest; gauge--)
        {
            if (AreaMm2(gauge) >= areaMm2 - 1e-9)
            {
                return string.Create(CultureInfo.InvariantCulture, $"{1 - gauge}/0 AWG");
            }
        }

        return null;
    }
}
