namespace HarnessDraw.Model;

/// <summary>How the current of a wire falls with the loaded wires of its bundle.</summary>
public enum BundleDerating
{
    /// <summary>The program's own steps, one reading of the aerospace curve.</summary>
    Steps,

    /// <summary>Steps quoted from the US Coast Guard's electrical guideline by a marine catalogue.</summary>
    Marine,
}

/// <summary>What a harness asks its currents to be judged by, where it is not the catalogue's and the program's own.</summary>
public sealed record AmpacityChoice(bool MarineInAir, BundleDerating Bundles)
{
    public static readonly AmpacityChoice Usual = new(false, BundleDerating.Steps);

    /// <summary>The catalogue with its wires' currents as chosen.</summary>
    public Catalogue On(Catalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        return this == Usual ? catalogue : catalogue with
        {
            WireTypes = [.. catalogue.WireTypes.Select(t => t with { Bundles = Bundles, Sizes = MarineInAir ? [.. t.Sizes.Select(s => s with { AirAmpacityA = MarineTable.InAirA(s.AreaMm2, t.MaxC), Basis = null })] : t.Sizes })],
        };
    }
}

/// <summary>
/// Published: 33 CFR 183.425 Table E, amperes of one conductor with insulation of 105 degC at 30 degC (outside engine spaces); its factor of 0.85 for 50 degC is what the root of the rise
/// that is left comes to. Between gauges the logarithm of the current goes with that of the area; beyond the table with the 0.62th power of the area (common practice, no source).
/// </summary>
public static class MarineTable
{
    private const double AtC = 30;
    private const double ClassC = 105;
    private const double AreaPower = 0.62;

    // areas of AWG by ASTM B258, mm2
    private static readonly (double AreaMm2, double Amperes)[] Rows =
    [
        (0.823, 20), (1.31, 25), (2.08, 35), (3.31, 45), (5.26, 60), (8.37, 80), (13.3, 120), (21.15, 160), (26.67, 180), (33.62, 210), (42.41, 245), (53.48, 285), (67.43, 330), (85.01, 385), (107.2, 445),
    ];

    /// <summary>Amperes of the single wire in air at 25 degC, as the catalogue states them, such that it bears the table's at 30 degC; less by the root of the rise where its class is lower.</summary>
    public static double InAirA(double areaMm2, double maxC)
    {
        var lower = Math.Sqrt((Math.Min(maxC, ClassC) - AtC) / (ClassC - AtC));
        return At30A(areaMm2) * lower * Math.Sqrt((maxC - 25) / (maxC - AtC));
    }

    /// <summary>Amperes by the table, 105 degC insulation, 30 degC.</summary>
    public static double At30A(double areaMm2)
    {
        for (var i = 1; i < Rows.Length; i++)
        {
            var (from, to) = (Rows[i - 1], Rows[i]);
            if (areaMm2 >= from.AreaMm2 && areaMm2 <= to.AreaMm2)
            {
                return from.Amperes * Math.Pow(to.Amperes / from.Amperes, Math.Log(areaMm2 / from.AreaMm2) / Math.Log(to.AreaMm2 / from.AreaMm2));
            }
        }

        var end = areaMm2 < Rows[0].AreaMm2 ? Rows[0] : Rows[^1];
        return end.Amperes * Math.Pow(areaMm2 / end.AreaMm2, AreaPower);
    }
}
