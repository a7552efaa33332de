using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class UnfusedTooLong : MeasuredRule
{
    public override RuleInfo Info { get; } = new("unfused-too-long", "Unfused length from a source", Severity.Error, Consequence.Fire, "ABYC E-11 as quoted",
        "Nothing but the source limits the current of a short before the first fuse.")
    {
        Limits = [new("from battery", UnfusedRun.FromBatteryMm, "mm", "ABYC E-11 as quoted: 7 in"), new("from junction, sheathed", UnfusedRun.FromJunctionSheathedMm, "mm", "ABYC E-11 as quoted: 40 in when the source is not the battery itself and the lead is sheathed")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        context.Graph.Posts.Where(p => p.Source.Kind != SourceKind.Alternator)
            .SelectMany(post => UnfusedReach.From(context, post.Node))
            .GroupBy(r => r.Wire.Id, StringComparer.Ordinal)
            .Select(g => g.OrderBy(r => r.LengthMm).First())
            .GroupBy(r => r.Start, StringComparer.Ordinal)
            .Select(g => OfStart(context, [.. g.OrderBy(r => r.LengthMm).ThenBy(r => r.Wire.Id, StringComparer.Ordinal)]));

    // one finding a start: what lies beyond the first wire that is too long is its consequence
    private Measure OfStart(RuleContext context, List<UnfusedReach> reaches)
    {
        var broken = reaches.Where(r => r.LengthMm > Allowed(context, r)).ToList();
        var reach = broken.FirstOrDefault() ?? reaches[^1];
        var limit = Allowed(context, reach);
        return new($"unfused run to {reach.Wire.Named()}", reach.LengthMm, limit, "mm", () => TooLong(context, reach, limit, broken));
    }

    private double Allowed(RuleContext context, UnfusedReach reach) => context.Limit(Info, reach.BeyondExempt && reach.Sheathed ? "from junction, sheathed" : "from battery");

    private Finding TooLong(RuleContext context, UnfusedReach reach, double limit, List<UnfusedReach> broken)
    {
        var (battery, junction) = (context.Limit(Info, "from battery"), context.Limit(Info, "from junction, sheathed"));
        var wire = reach.Wire;
        var sheathed = limit > battery;
        var beyond = broken.Count > 1 ? $" and {Wording.Count(broken.Count - 1, "wire")} beyond it ({Wording.List(broken.Skip(1).Select(b => b.Wire.Id))})" : "";
        return context.Found(Info,
            $"{Figure.Millimetres(reach.LengthMm)} from {PointWords.OfNode(reach.Start)} to {PointWords.Of(wire.To)} (wire {wire.Named()}){beyond} is unfused; {Figure.Millimetres(limit)} is the most{(sheathed ? " for a sheathed lead" : "")}: a short there burns the harness.",
            !sheathed && reach.BeyondExempt && reach.LengthMm <= junction
                ? $"Sheath the lead all the way (then {Figure.Millimetres(junction)} is allowed), or put a fuse within {Figure.Millimetres(battery)} of {PointWords.OfNode(reach.Start)}."
                : $"Put a fuse within {Figure.Millimetres(battery)} of {PointWords.OfNode(reach.Start)}, or give the circuit '{wire.Circuit}' a reason to be unfused.",
            [wire.Id, wire.Circuit, .. broken.Skip(1).Select(b => b.Wire.Id)], wire.Builds, context.Circuit(wire.Circuit)?.At);
    }
}
