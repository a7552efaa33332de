using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads allowances on wire lengths, of the harness or of one thing.</summary>
internal static class AllowanceReader
{
    private const double LargestMm = 5000;

    public static AllowanceRules Read(InputMap? map, DiagnosticBag bag)
    {
        if (map is null)
        {
            return AllowanceRules.AsUsual;
        }

        foreach (var text in map.Entries.Select(e => e.Value).OfType<InputText>().Where(t => t.Number is < 0 or > LargestMm))
        {
            bag.Error(DiagnosticCodes.Quantity, $"'{text.Value}' is no allowance: 0 to {LargestMm / 1000:0} m are", text.At, "write what is added to one wire, such as '60 mm'");
        }

        return new()
        {
            LayMmPerM = map.Number("lay"),
            BreakoutMm = map.Number("breakout"),
            Bends = map.YesNo("bends"),
            DressMm = map.Number("dress"),
            LargeDressMm = map.Number("large-dress"),
            MateDressMm = map.Number("mate-dress"),
            NewTerminals = Count(map.TextNode("new-terminals"), bag),
            ServiceLoopMm = map.Number("service-loop"),
            DripLoopMm = map.Number("drip-loop"),
            StudStackMm = map.Number("stud-stack"),
            CutAtCarMm = map.Number("cut-at-car"),
            RoundUpMm = RoundUp(map.TextNode("round-up"), bag),
        };
    }

    private static int? Count(InputText? text, DiagnosticBag bag)
    {
        if (text?.Number is not { } number || (number == Math.Floor(number) && number is >= 0 and <= 10))
        {
            return (int?)text?.Number;
        }

        bag.Error(DiagnosticCodes.Quantity, $"'{text.Value}' is no number of new terminals", text.At, "write a whole number from 0 to 10");
        return null;
    }

    private static double? RoundUp(InputText? text, DiagnosticBag bag)
    {
        if (text?.Number is not (< 1 or > 100))
        {
            return text?.Number;
        }

        bag.Error(DiagnosticCodes.Quantity, $"cut lengths cannot be rounded up to a multiple of '{text.Value}'", text.At, "write 1 to 100 mm: 5 mm on a board, 10 mm by hand");
        return null;
    }
}
