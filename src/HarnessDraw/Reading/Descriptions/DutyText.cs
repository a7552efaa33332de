using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>'continuous', 'momentary', 'signal', 'intermittent', or '2 min on / 5 min off'.</summary>
internal static class DutyText
{
    private static readonly ImmutableArray<string> Words = ["continuous", "intermittent", "momentary", "signal"];

    public static (Duty Duty, string? Text) Read(InputText? text, string circuit, DiagnosticBag bag)
    {
        switch (text?.Value)
        {
            case null or "continuous":
                return (Duty.Continuous, null);
            case "intermittent":
                return (Duty.Intermittent, null);
            case "momentary":
                return (Duty.Momentary, null);
            case "signal":
                return (Duty.Signal, null);
        }

        if (IsOnOff(text.Value))
        {
            return (Duty.Intermittent, text.Value);
        }

        bag.Error(DiagnosticCodes.Choice, $"the duty of '{circuit}' is '{text.Value}', but continuous, intermittent, momentary, signal, or minutes on and off are expected", text.At, NearestName.Hint(text.Value, Words) ?? "write it like '2 min on / 5 min off'");
        return (Duty.Continuous, null);
    }

    private static bool IsOnOff(string text)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return slash > 0 && IsTime(text[..slash].Trim(), " on") && IsTime(text[(slash + 1)..].Trim(), " off");
    }

    private static bool IsTime(string text, string ending) =>
        text.EndsWith(ending, StringComparison.Ordinal) && Quantity.TryParse(text[..^ending.Length], QuantityKind.Duration, out _, out _);
}
