using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>The current an element draws, from whichever of its figures are given.</summary>
public static class ElementCurrent
{
    /// <summary>Amperes at <paramref name="volts"/>; null when nothing is known of it.</summary>
    public static double? NominalA(Element element, double volts)
    {
        ArgumentNullException.ThrowIfNull(element);
        return element.CurrentA ?? element.PowerW / volts ?? volts / element.ResistanceOhm;
    }

    /// <summary>
    /// Exponent of current over volts near nominal: filaments about 0.55 (light goes with V to the 3.4), motors and electronics hold
    /// their current, the rest follows Ohm. Common practice, no source.
    /// </summary>
    public static double Exponent(ElementKind kind) => kind switch
    {
        ElementKind.Lamp => 0.55,
        ElementKind.Motor or ElementKind.Electronic => 0,
        _ => 1,
    };
}
