using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class FuseLoadHigh : MeasuredRule
{
    public override RuleInfo Info { get; } = new("fuse-load-high", "Continuous load close to the fuse rating", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "A fuse near its rating runs hot, ages and opens one day for no fault; its holder loosens.")
    {
        Limits =
        [
            new("share", 100 * PlanningOptions.Usual.MostFuseShare, "%", "common practice, no source: 75 to 80 % at room temperature"), new("share in heat", 100 * PlanningOptions.Usual.MostFuseShareInHeat, "%", "common practice, no source: rating falls by 0.1 to 0.15 % a kelvin above 25 °C"),
            new("heat from", PlanningOptions.Usual.FuseHeatC, "°C", "common practice, no source"),
        ],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) => FuseBurden.Of(context).Where(b => b.ContinuousA > 0 && b.ContinuousA <= b.RatingA).Select(b => Of(context, b));

    private Measure Of(RuleContext context, FuseBurden burden)
    {
        var hot = context.Thing(burden.Fuse.Id) is { Side: Side.Bay } thing && context.ZoneAt(thing.Place)?.AmbientC >= context.Limit(Info, "heat from");
        var share = context.Limit(Info, hot ? "share in heat" : "share");
        return new($"continuous load of fuse {burden.Fuse.Id}", burden.ContinuousA, share / 100 * burden.RatingA, "A", () => context.Found(Info,
            $"Fuse {burden.Fuse.Id}: {Figure.Amps(burden.ContinuousA)} continuous on {Figure.Amps(burden.RatingA)} is {Figure.Percent(burden.ContinuousA / burden.RatingA)}, more than {Figure.Number(share)} %{(hot ? " (it sits in heat)" : "")}: the holder runs hot.",
            "Take a larger fuse if the wires behind it bear it, or share the loads between two fuses.", [burden.Fuse.Id], context.Builds.CauseOf([.. burden.InState.Where(l => l.Circuit.Duty == Duty.Continuous)], l => l.Circuit.OnlyWith, l => l.CurrentA, share / 100 * burden.RatingA), FuseWords.At(context, burden.Fuse.Id)));
    }
}
