using HarnessDraw.Diagnostics;

namespace HarnessDraw.Reading;

/// <summary>Wire ids fixed by hand name one wire each.</summary>
internal static class WireIds
{
    public static void Check(IEnumerable<CircuitDraft> circuits, DiagnosticBag bag)
    {
        var seen = new Dictionary<string, InputText>(StringComparer.OrdinalIgnoreCase);
        foreach (var id in circuits.SelectMany(c => Given(c.Map)))
        {
            if (seen.TryGetValue(id.Value, out var first))
            {
                bag.Error(DiagnosticCodes.DuplicateName, $"the wire id '{id.Value}' is given twice", id.At, "ids that differ by capitals only count as the same", first.At);
            }
            else
            {
                seen.Add(id.Value, id);
            }
        }
    }

    private static IEnumerable<InputText> Given(InputMap circuit) =>
        new[] { circuit.TextNode("wire") }.Concat(circuit.List("by-hand").OfType<InputMap>().Select(w => w.TextNode("wire"))).OfType<InputText>();
}
