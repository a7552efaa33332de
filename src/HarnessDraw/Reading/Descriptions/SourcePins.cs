using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Which pins of a battery, alternator or converter are its poles, by their usual names (DIN 72552 and common practice).</summary>
internal static class SourcePins
{
    private static readonly ImmutableArray<string> PlusNames = ["plus", "+", "positive", "B+", "30", "out", "B", "A"];
    private static readonly ImmutableArray<string> MinusNames = ["minus", "-", "negative", "B-", "31", "D-", "E"];

    /// <summary>The source between its poles; a converter also draws between 'in' and its return.</summary>
    public static ImmutableArray<Element> Elements(ThingKind kind, ImmutableArray<Pin> pins, ImmutableArray<string> names, InputMap map)
    {
        var returns = ElementReader.Returns(map);
        var minus = MinusNames.FirstOrDefault(names.Contains) ?? returns.FirstOrDefault()?.Pin;
        var plus = PlusNames.FirstOrDefault(names.Contains)
            ?? pins.FirstOrDefault(p => p.Style == PinStyle.Stud && p.Name != minus)?.Name
            ?? names.FirstOrDefault(n => n != minus)
            ?? names[0];
        var source = new Element("source", ElementKind.Source, plus, minus) { NominalV = map.Number("nominal"), ResistanceOhm = map.Number("internal") };
        return kind == ThingKind.Converter && names.Contains("in")
            ? [source, new Element("input", ElementKind.Electronic, "in", minus)]
            : [source];
    }
}
