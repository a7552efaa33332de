using HarnessDraw.Model;

namespace HarnessDraw.Checking;

/// <summary>Currents of elements as the description gives them.</summary>
internal static class Loads
{
    public static bool Draws(this Element element) => element.Kind is ElementKind.Lamp or ElementKind.Motor or ElementKind.Heater or ElementKind.Coil or ElementKind.Electronic;

    /// <summary>Steady current in amperes at nominal volts, from the current, the power or the resistance given; null when none is.</summary>
    public static double? Amps(this Element element, double nominalV)
    {
        var volts = element.NominalV ?? nominalV;
        return element.CurrentA ?? (element.PowerW is { } watts ? watts / volts : element.ResistanceOhm is > 0 and { } ohm ? volts / ohm : null);
    }

    /// <summary>Elements of the thing that the pin feeds and that draw current.</summary>
    public static IEnumerable<Element> At(Thing thing, string? pin) => thing.Elements.Where(e => e.Draws() && (pin is null || e.PinA == pin || e.PinB == pin));
}
