using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>A wire colour as typed: IEC 60757 letters, base/tracer. Reported when it is none, with the codes there are.</summary>
internal static class ColourText
{
    public static string? Read(InputText? text, DiagnosticBag bag)
    {
        if (text is null || ColourLetters.IsColour(text.Value))
        {
            return text?.Value;
        }

        var wrong = text.Value.Split('/').FirstOrDefault(part => !ColourLetters.IsOne(part)) ?? text.Value;
        bag.Error(DiagnosticCodes.Choice, $"'{text.Value}' is no wire colour", text.At, Joined(text.Value) ?? NearestName.Hint(wrong, ColourLetters.All) ?? $"IEC 60757 letters, base/tracer: {string.Join(", ", ColourLetters.All)}");
        return null;
    }

    // 'RD-WH', 'RD WH', 'rd/wh'
    private static string? Joined(string typed)
    {
        var parts = typed.ToUpperInvariant().Split(['/', '-', '_', ' ', '.', '+'], StringSplitOptions.RemoveEmptyEntries);
        return parts.Length == 2 && parts.All(ColourLetters.IsOne) ? $"did you mean '{parts[0]}/{parts[1]}'?" : null;
    }
}
