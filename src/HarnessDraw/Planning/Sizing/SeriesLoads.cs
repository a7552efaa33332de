using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>
/// Loads from which a circuit goes on: behind a charge lamp, a warning lamp or an ignition coil a short draws what the load lets pass and not what the fuse before it holds.
/// Before the load the fuse rules (common practice, no source).
/// </summary>
internal static class SeriesLoads
{
    // charging volts and a little: 14.4 V over 12 V (our own figure)
    private const double OverNominal = 1.25;

    /// <summary>The most that passes into a short behind the load that a circuit comes from, A; null where it comes from none, or also from elsewhere.</summary>
    public static double? LetPassA(HarnessIndex index, Circuit circuit)
    {
        if (circuit.IsReturn || circuit.From is not { Pin: { } pin } from || index.Thing(from.Thing) is not { } thing)
        {
            return null;
        }

        var amps = 0.0;
        foreach (var element in thing.Elements.Where(e => e.PinA == pin || e.PinB == pin))
        {
            // a motor that stands still, electronics that fail and contacts let pass what nobody knows
            if (element is not { Kind: ElementKind.Lamp or ElementKind.Heater or ElementKind.Coil, PinB: not null } || ElementCurrent.NominalA(element, element.NominalV ?? circuit.NominalV) is not { } own)
            {
                return null;
            }

            amps += Math.Max(own, element.PeakA ?? 0);
        }

        return amps > 0 && !index.Harness.Circuits.Any(c => !c.IsReturn && c.Feeds.Contains(from)) ? OverNominal * amps : null;
    }
}
