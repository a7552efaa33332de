using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class KeyOffDrain : MeasuredRule
{
    // a usual car battery (common practice, no source)
    private const double BatteryAh = 60;

    public override RuleInfo Info { get; } = new("key-off-drain", "Current drawn with the key off", Severity.Advice, Consequence.DoesNotLast, "workshop practice, no standard",
        "It empties the battery while the vehicle stands.")
    {
        Limits = [new("with electronics", 50, "mA", "workshop practice"), new("without electronics", 5, "mA", "workshop practice")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        var off = context.Harness.States.FirstOrDefault(s => s is { Key: KeyPosition.Off, Engine: EngineState.Stopped } && s.Id == "off");
        var live = context.Harness.Circuits.Where(c => !c.IsReturn && c.Duty == Duty.Continuous && c.LiveWith == KeyPosition.Off)
            .SelectMany(c => c.Feeds.Where(f => context.Thing(f.Thing) is not null).SelectMany(f => Loads.At(context.Thing(f.Thing)!, f.Pin)
                .Where(e => e.Kind == ElementKind.Electronic || off?.On.Contains(c.Id) == true).Select(e => (f.Thing, c.Id, Element: e, Amps: e.Amps(c.NominalV) ?? 0))))
            .Where(l => l.Amps > 0 && context.Thing(l.Thing)?.Kind is not ThingKind.Alternator).ToList();
        if (live.Count > 0)
        {
            var milliamps = live.Sum(l => l.Amps) * 1000;
            var limit = context.Limit(Info, live.Any(l => l.Element.Kind == ElementKind.Electronic) ? "with electronics" : "without electronics");
            yield return new("key-off drain", milliamps, limit, "mA", () => context.Found(Info,
                $"Key-off drain {Figure.Of(milliamps, "mA")} ({Wording.List(live.Select(l => $"{l.Thing} {Figure.Of(l.Amps * 1000, "mA")}"))}): half of a 60 Ah battery is gone in {Figure.Number(Math.Round(BatteryAh / 2 / live.Sum(l => l.Amps) / 24, 1))} days.",
                "Feed it from a switched supply, or fit an isolator.", live.Select(l => l.Thing).Concat(live.Select(l => l.Id))));
        }
    }
}
