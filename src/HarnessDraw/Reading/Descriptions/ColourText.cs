using HarnessDraw.Diagnostics;
using HarnessDraw.Drawing;

namespace HarnessDraw.Reading;

/// <summary>A wire colour as typed: IEC 60757 letters, base/tracer. Reported when it is none, with the codes there are.</summary>
internal static class ColourText
{
    public static string? Read(InputText? text, DiagnosticBag bag)
    {
        if (text is null)
        {
            return null;
        }

        if (WireColour.TryParse(text.Value) is { } colour)
        {
            return colour.Code;
        }

        var codes = ColourCodes.All.Select(c => c.Code).ToArray();
        var wrong = text.Value.Split('/').FirstOrDefault(part => !codes.Contains(part)) ?? text.Value;
        bag.Error(DiagnosticCodes.Choice, $"'{text.Value}' is no wire colour", text.At, NearestName.Hint(wrong, codes) ?? $"IEC 60757 letters, base/tracer: {string.Join(", ", codes)}");
        return null;
    }
}
