using System.Globalization;
using HarnessDraw.Model;

namespace HarnessDraw.Tracing;

/// <summary>What a part of a thing is, in a few words with its figures.</summary>
internal static class ElementWords
{
    public static string Of(Thing thing, Element element) => element.Kind switch
    {
        ElementKind.Fuse => "fuse",
        ElementKind.Link => "joined",
        ElementKind.Diode => "diode",
        ElementKind.Contact when element.WorkedBy is { } coil => $"relay contact, worked by {thing.Id} {coil}",
        ElementKind.Contact => "switch contact, closed",
        _ => Load(element),
    };

    private static string Load(Element element)
    {
        var kind = element.Kind switch
        {
            ElementKind.Lamp => "lamp",
            ElementKind.Motor => "motor",
            ElementKind.Heater => "heater",
            ElementKind.Coil => "coil",
            ElementKind.Sender => "sender",
            ElementKind.Electronic => "electronics",
            _ => "element",
        };
        // an id that begins with its kind says it already: 'coil 1', 'motor B'
        var name = element.Id == kind || element.Id.StartsWith(kind + " ", StringComparison.Ordinal) ? element.Id : $"{kind} '{element.Id}'";
        var figure = element.PowerW is { } watts ? $", {Figure(watts)} W" : element.CurrentA is { } amps ? $", {Figure(amps)} A" : ", current not given";
        return name + figure;
    }

    private static string Figure(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);
}
