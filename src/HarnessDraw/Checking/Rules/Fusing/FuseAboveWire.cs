using HarnessDraw.Checking.Rules.Sizing;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class FuseAboveWire : MeasuredRule
{
    public override RuleInfo Info { get; } = new("fuse-above-wire", "Fuse larger than a wire behind it bears", Severity.Error, Consequence.Fire, "common practice, no source",
        "The fuse protects the wire, not the load: up to the next fuse, the thinnest wire is what must not burn.");

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        context.Plan.Fuses.Where(f => f.RatingA is not null).SelectMany(f => Weakest(context, f).Select(w => Of(context, f, w)).Concat(LeadTo(context, f).Select(w => OfLead(context, f, w))));

    // before a fuse on a bus bar nothing else opens: its lead carries what it does
    private static IEnumerable<Wire> LeadTo(RuleContext context, FuseChoice fuse)
    {
        var on = context.Harness.Protections.FirstOrDefault(p => p.Id == fuse.Id)?.On;
        return context.Plan.Wires.Where(w => (w.To.At == fuse.Id || w.To.At == on) && w.ProtectedBy.IsEmpty && w.AmpacityA is not null && !context.IsReturn(w) && context.Circuit(w.Circuit)?.UnfusedBecause is not null && !WireLoads.IsTold(context, w))
            .OrderBy(w => w.AmpacityA).ThenBy(w => w.Id, StringComparer.Ordinal).Take(1);
    }

    private Measure OfLead(RuleContext context, FuseChoice fuse, Wire lead) =>
        new($"fuse {fuse.Id} on unfused {lead.Named()}", fuse.RatingA!.Value, lead.AmpacityA!.Value, "A", () => context.Found(Info,
            $"Fuse {fuse.Id} ({Figure.Amps(fuse.RatingA.Value)}) is fed by {lead.SizeLabel} wire {lead.Named()}, which no fuse protects and which bears {Figure.Amps(lead.AmpacityA.Value)} where it lies: it burns before {fuse.Id} opens.",
            "Take a smaller fuse, or larger wire.", [fuse.Id, lead.Id, lead.Circuit], lead.Builds, context.AtOf(lead)));

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
                $"Fuse {fuse.Id} ({Figure.Amps(rating)}) feeds {Figure.Size(wire)} wire {wire.Named()}{others}, which bears {Figure.Amps(wire.AmpacityA.Value)} where it lies: the wire burns before the fuse opens.",
                "Take a smaller fuse, or larger wire.", [fuse.Id, wire.Id, wire.Circuit], wire.Builds, FuseWords.At(context, fuse.Id));
        });
    }
}
