using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>A load as typed: its key and kind, its pin (null: the thing's first), and its figure.</summary>
internal sealed record LoadTyped(string Key, ElementKind Kind, string? Pin, InputText Figure, SourceSpan At);

/// <summary>The keys that make loads: one table from key to kind of element.</summary>
internal static class LoadKeys
{
    /// <summary>Loads without a word for what they are behave like a heater: a plain resistance.</summary>
    private static readonly ImmutableArray<(string Key, ElementKind Kind)> Keys =
    [
        ("lamp", ElementKind.Lamp),
        ("beams", ElementKind.Lamp),
        ("motor", ElementKind.Motor),
        ("heater", ElementKind.Heater),
        ("coil", ElementKind.Coil),
        ("electronics", ElementKind.Electronic),
        ("sender", ElementKind.Sender),
        ("draws", ElementKind.Heater),
    ];

    /// <summary>All loads of a thing in the order of the keys above.</summary>
    public static ImmutableArray<LoadTyped> Of(InputMap map)
    {
        var loads = ImmutableArray.CreateBuilder<LoadTyped>();
        foreach (var (key, kind) in Keys)
        {
            switch (map.Find(key))
            {
                case InputText { IsEmpty: false } figure:
                    loads.Add(new LoadTyped(key, kind, null, figure, figure.At));
                    break;
                case InputMap byPin:
                    loads.AddRange(byPin.Entries.Where(e => e.Value is InputText).Select(e => new LoadTyped(key, kind, e.Key.Value, (InputText)e.Value, e.Key.At)));
                    break;
            }
        }

        return loads.ToImmutable();
    }
}
