using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Grounding;

internal sealed class StrapSmall : MeasuredRule
{
    public override RuleInfo Info { get; } = new("strap-small", "Ground strap thinner than the feed that returns by it", Severity.Warning, Consequence.Fire, "common practice, no source",
        "The way back carries what the way out does.");

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        var starters = context.Harness.Things.Where(t => t.Kind == ThingKind.Starter).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        var feed = context.Plan.Wires.Where(w => (starters.Contains(w.To.At) || starters.Contains(w.From.At)) && !context.IsReturn(w)).OrderByDescending(w => w.AreaMm2).ThenBy(w => w.Id, StringComparer.Ordinal).FirstOrDefault();
        return feed is null ? [] : StrapWires.Of(context).Select(strap => new Measure($"strap {strap.Named()}", strap.AreaMm2, feed.AreaMm2, "mm²", () => context.Found(Info,
            $"{feed.Named()}, {Figure.Area(feed.AreaMm2)}, returns by {strap.Named()} of {Figure.Area(strap.AreaMm2)}: the strap is the weak part.", "Fit a strap as thick as the feed.", [strap.Id, feed.Id], strap.Builds, context.Circuit(strap.Circuit)?.At), AtLeast: true));
    }
}
