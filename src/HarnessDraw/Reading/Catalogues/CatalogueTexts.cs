using HarnessDraw.Diagnostics;
using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>Texts of a catalogue that hold two numbers: '0.5 to 1.0 mm2', '70 x 110 mm'; and keys that are quantities: '7.5 A'.</summary>
internal sealed class CatalogueTexts(DiagnosticBag bag)
{
    public (double Min, double Max)? Range(InputMap row, string key, QuantityKind kind)
    {
        if (row.TextNode(key) is not { } text)
        {
            return null;
        }

        if (Pair(text.Value, " to ", kind) is not { } range)
        {
            bag.Error(DiagnosticCodes.Quantity, $"{key} is '{text.Value}', but a range in {kind.UnitsInWords()} is expected", text.At, $"write it like '0.5 to 1.0 {kind.Units[0].Symbol}'");
            return null;
        }

        if (range.Item1 > range.Item2)
        {
            bag.Error(DiagnosticCodes.Quantity, $"{key} is '{text.Value}': it ends below its start", text.At);
            return null;
        }

        return range;
    }

    public (double WidthMm, double HeightMm)? Box(InputMap row, string key)
    {
        if (row.TextNode(key) is not { } text)
        {
            return null;
        }

        var box = Pair(text.Value, " x ", QuantityKind.Length);
        if (box is null or { Item1: <= 0 } or { Item2: <= 0 })
        {
            bag.Error(DiagnosticCodes.Quantity, $"{key} is '{text.Value}', but a width and a height are expected", text.At, "write it like '70 x 110 mm'");
            return null;
        }

        return box;
    }

    public double? Quantity(InputText text, QuantityKind kind)
    {
        if (Units.Quantity.TryParse(text.Value, kind, out var quantity, out var problem))
        {
            return quantity.Value;
        }

        bag.Error(DiagnosticCodes.Quantity, $"'{text.Value}' should be {kind.Title} in {kind.UnitsInWords()} ({problem})", text.At);
        return null;
    }

    // the unit stands once, after the second number
    private static (double, double)? Pair(string text, string between, QuantityKind kind)
    {
        var at = text.IndexOf(between, StringComparison.Ordinal);
        return at > 0 && Units.Quantity.TryNumber(text.AsSpan(0, at).Trim(), out var first) && first >= 0
            && Units.Quantity.TryParse(text[(at + between.Length)..], kind, out var second, out _)
            && Units.Quantity.TryParse(string.Concat(text.AsSpan(0, at).Trim(), " ", second.Unit), kind, out var firstQuantity, out _)
            ? (firstQuantity.Value, second.Value)
            : null;
    }
}
