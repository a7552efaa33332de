using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class LoopDrop : MeasuredRule
{
    public override RuleInfo Info { get; } = new("loop-drop", "Volts lost on the way out and back", Severity.Warning, Consequence.DoesNotWork, "ABYC E-11 as quoted; common practice for motors",
        "A lamp at 90 % of its volts gives 70 % of its light; a motor starts late or not at all.")
    {
        Limits =
        [
            new("critical", 3, "%", "ABYC E-11 as quoted: lamps, ignition, pumps, electronics"), new("motor", 5, "%", "common practice, no source"), new("other", 10, "%", "ABYC E-11 as quoted"),
            new("error at times limit", 2, "", "common practice, no source"),
        ],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        LoadVolts.Of(context).GroupBy(l => (l.Thing.Id, l.Element.Id)).Select(g => g.OrderByDescending(l => l.DropV).ThenBy(l => l.State, StringComparer.Ordinal).First()).Select(l => Of(context, l));

    private Measure Of(RuleContext context, LoadVolts load)
    {
        var percent = context.Limit(Info, load.Circuit.Importance == Importance.Critical ? "critical" : load.Element.Kind == ElementKind.Motor ? "motor" : "other");
        var limit = percent / 100 * load.Circuit.NominalV;
        return new($"loop drop of {load.Thing.Id} ({load.Element.Id})", load.DropV, limit, "V", () => TooMuch(context, load, limit, percent));
    }

    private Finding TooMuch(RuleContext context, LoadVolts load, double limit, double percent)
    {
        var worst = load.WorstWire(context);
        // light goes with the 3.4th power of the volts (trade rule, no source)
        var light = load.Element.Kind == ElementKind.Lamp ? $" Light about {Figure.Number(Math.Round(100 * Math.Pow(load.AtLoadV / load.SourceV, 3.4)))} %." : "";
        var most = worst is null ? "" : $" Most of it in wire {worst.Value.Wire.Named()}: {Figure.Volts(worst.Value.DropV)}.";
        var severity = load.DropV > context.Limit(Info, "error at times limit") * limit ? Severity.Error : Severity.Warning;
        return context.Found(Info, $"{load.Thing.Id} ({load.Element.Id}) loses {Figure.Volts(load.DropV)} ({Figure.Percent(load.DropV / load.Circuit.NominalV)}) in '{load.State}'; {Figure.Number(percent)} % of {Figure.Volts(load.Circuit.NominalV)} is {Figure.Volts(limit)}.{most}{light}",
            Cure(context, worst?.Wire), [load.Thing.Id, load.Circuit.Id, .. worst is null ? Array.Empty<string>() : [worst.Value.Wire.Id]], load.Circuit.OnlyWith, load.Circuit.At, severity);
    }

    private static string Cure(RuleContext context, Wire? wire)
    {
        var next = wire is null ? null : context.TypeOf(wire)?.Sizes.FirstOrDefault(s => s.AreaMm2 > wire.AreaMm2);
        return next is null ? "Use larger wire, fewer contacts, or a relay near the load." : $"Use {next.Label} for {wire!.Id}, fewer contacts, or a relay near the load.";
    }
}
