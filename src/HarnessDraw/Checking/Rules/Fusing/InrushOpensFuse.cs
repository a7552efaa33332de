using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class InrushOpensFuse : MeasuredRule
{
    public override RuleInfo Info { get; } = new("inrush-opens-fuse", "Start current near what opens the fuse", Severity.Warning, Consequence.DoesNotWork, "ISO 8820 windows as reprinted on data sheets; start times are common practice",
        "Motors and solenoids draw several times their current for a moment: the fuse must not open before they run.")
    {
        // a blade fuse may open after 0.15 s at 200 % and 0.04 s at 350 %: a start of 0.1 to 0.5 s stays safe up to about 200 %
        Limits = [new("blade times rating", PlanningOptions.Usual.PeakOverBlade, "", "ISO 8820-3 as reprinted: 200 % from 0.15 s"), new("bolt-in times rating", PlanningOptions.Usual.PeakOverBoltIn, "", "ISO 8820-5 as reprinted: 350 % from 0.3 s")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        context.Plan.Fuses.Where(f => f.RatingA is > 0).SelectMany(f => context.LoadsOn(f.Id)
            .Where(l => l.Element?.PeakA is > 0)
            .OrderByDescending(l => l.Element!.PeakA).ThenBy(l => l.Thing.Id, StringComparer.Ordinal).Take(1)
            .Select(l =>
            {
                var times = context.Limit(Info, f.Kind == ProtectionKind.BoltIn ? "bolt-in times rating" : "blade times rating");
                var peak = l.Element!.PeakA!.Value;
                return new Measure($"start of {l.Thing.Id} on fuse {f.Id}", peak, times * f.RatingA!.Value, "A", () => context.Found(Info,
                    $"{l.Thing.Id} pulls {Figure.Amps(peak)} for a moment; the {Figure.Amps(f.RatingA.Value)} fuse {f.Id} may open above {Figure.Amps(times * f.RatingA.Value)}.",
                    "Take a larger fuse if the wires behind it bear it, or feed it from a bolt-in fuse.",
                    [f.Id, l.Thing.Id, l.Circuit.Id], l.Circuit.OnlyWith, FuseWords.At(context, f.Id)));
            }));
}
