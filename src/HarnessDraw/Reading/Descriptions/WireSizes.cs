using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Sizes fixed by hand. A gauge is looked up in the named wire type (or the first that has it): its true copper area, never a metric look-alike.</summary>
internal static class WireSizes
{
    public static (double? AreaMm2, string? Awg) Read(InputText? text, WireType? type, Draft draft)
    {
        if (text?.Number is not { } number)
        {
            return (null, null);
        }

        if (text.Unit != "AWG")
        {
            return (number, null);
        }

        var gauge = text.NumberText!;
        var types = type is null ? draft.Catalogue.WireTypes : [type];
        var size = types.SelectMany(t => t.Sizes).FirstOrDefault(s => s.Awg == gauge);
        if (size is null && type is not null)
        {
            // a metric family has no gauges: the area still is that of the gauge
            size = draft.Catalogue.WireTypes.SelectMany(t => t.Sizes).FirstOrDefault(s => s.Awg == gauge);
        }

        if (size is null)
        {
            string[] known = [.. draft.Catalogue.WireTypes.SelectMany(t => t.Sizes).Select(s => s.Awg).OfType<string>().Distinct()];
            draft.Bag.Error(DiagnosticCodes.UnknownName, $"the catalogue has no {gauge} AWG wire", text.At, NameRules.Listed(known, "gauge"));
        }

        return (size?.AreaMm2, gauge);
    }
}
