using HarnessDraw.Checking.Rules.Sizing;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class FuseAboveWire : MeasuredRule
{
    public override RuleInfo Info { get; } = new("fuse-above-wire", "Fuse larger than a wire behind it bears", Severity.Error, Consequence.Fire, "common practice, no source",
        "The fuse protects the wire, not the load: up to the next fuse, the thinnest wire is what must not burn.");

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        context.Plan.Fuses.Where(f => f.RatingA is not null).SelectMany(f => Weakest(context, f).Select(w => Of(context, f, w)));

    private static IEnumerable<Wire> Weakest(RuleContext context, FuseChoice fuse) =>
        fuse.Wires.Select(context.Wire).OfType<Wire>()
            .Where(w => w.AmpacityA is not null && !(w.SeriesA <= w.AmpacityA) && !context.IsReturn(w) && !WireLoads.IsTold(context, w))
            .OrderBy(w => w.AmpacityA).ThenBy(w => w.Id, StringComparer.Ordinal).Take(1);

    private Measure Of(RuleContext context, FuseChoice fuse, Wire wire)
    {
        var rating = fuse.RatingA!.Value;
        return new($"fuse {fuse.Id} over wire {wire.Named()}", rating, wire.AmpacityA!.Value, "A", () =>
        {
            var weaker = fuse.Wires.Select(context.Wire).OfType<Wire>().Count(w => w.AmpacityA < rating && !context.IsReturn(w));
            var others = weaker > 1 ? $" and {weaker - 1} more" : "";
            return context.Found(Info,
                $"Fuse {fuse.Id} ({Figure.Amps(rating)}) feeds {wire.SizeLabel} wire {wire.Named()}{others}, which bears {Figure.Amps(wire.AmpacityA.Value)} where it lies: the wire burns before the fuse opens.",
                "Take a smaller fuse, or larger wire.", [fuse.Id, wire.Id, wire.Circuit], wire.Builds, FuseWords.At(context, fuse.Id));
        });
    }
}
