using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication.Supplies;

/// <summary>The shrink over a splice: 25 mm past each side (vehicle service practice) of a joint taken as 20 mm long, of a size that its thicker side goes through and fills.</summary>
public static class SpliceSleeve
{
    public const double LengthMm = 70;

    // of wires side by side (common drafting rule)
    private const double BundleFactor = 1.2;

    /// <summary>The catalogue's heat shrink for a splice; null when none has the range.</summary>
    public static CoveringPart? For(Plan plan, Splice splice)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(splice);
        var wires = splice.Wires.Select(id => plan.Wires.FirstOrDefault(w => w.Id == id)).OfType<Wire>().ToArray();
        if (wires.Length == 0)
        {
            return null;
        }

        var outgoing = wires.Skip(1).Select(w => w.OutsideMm).ToArray();
        var thickMm = Math.Max(wires[0].OutsideMm, outgoing.Length < 2 ? outgoing.Sum() : BundleFactor * Math.Sqrt(outgoing.Sum(d => d * d)));
        return plan.Harness.Catalogue.Coverings.Where(c => c.Kind == "heat shrink" && thickMm >= c.MinBundleMm && thickMm <= c.MaxBundleMm).MinBy(c => c.MaxBundleMm);
    }
}
