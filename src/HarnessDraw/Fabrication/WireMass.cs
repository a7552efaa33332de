using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>Masses of cut wire in grams.</summary>
public static class WireMass
{
    /// <summary>Density of copper, g/cm3 (IEC 60028).</summary>
    public const double CopperGramPerCm3 = 8.89;

    /// <summary>Copper of a length, whole wire cut lengths.</summary>
    public static double CopperGrams(double areaMm2, double lengthMm) => areaMm2 * lengthMm / 1000 * CopperGramPerCm3;

    /// <summary>Wire with insulation, as the catalogue's mass a metre says; null when a length or a mass is unknown.</summary>
    public static double? GramsOf(Plan plan, IEnumerable<Wire> wires)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(wires);
        double? sum = 0;
        foreach (var wire in wires)
        {
            var size = plan.Harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == wire.WireType)?.Sizes.FirstOrDefault(s => s.Label == wire.SizeLabel);
            sum += size?.MassGramPerM * wire.CutLengthMm / 1000;
        }

        return sum;
    }
}
