using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class FuseAboveContact : MeasuredRule
{
    public override RuleInfo Info { get; } = new("fuse-above-contact", "Fuse larger than a contact behind it bears", Severity.Error, Consequence.Fire, "common practice, no source",
        "A contact that carries more than it can melts its connector before the fuse opens.")
    {
        Limits = [new("of contact", PlanningOptions.Usual.FuseOverContact, "", "common practice, no source: a fuse holds 135 % of its rating for seconds to minutes (ISO 8820 window)")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        context.Plan.Fuses.Where(f => f.RatingA is not null).SelectMany(f => Weakest(context, f).Select(p => Of(context, f, p.End, p.Terminal)));

    private static IEnumerable<(PlannedEnd End, TerminalPart Terminal)> Weakest(RuleContext context, FuseChoice fuse) =>
        fuse.Wires.Select(context.Wire).OfType<Wire>().Where(w => !context.IsReturn(w))
            .SelectMany(w => new PlannedEnd[] { new(w, w.From), new(w, w.To) })
            .Select(e => (End: e, Terminal: context.Terminal(e.End.Terminal)!))
            .Where(p => p.Terminal is not null && !(p.End.Wire.SeriesA <= p.Terminal.CurrentA))
            .OrderBy(p => p.Terminal.CurrentA).ThenBy(p => p.End.End.ToString(), StringComparer.Ordinal).Take(1);

    private Measure Of(RuleContext context, FuseChoice fuse, PlannedEnd end, TerminalPart terminal)
    {
        var factor = context.Limit(Info, "of contact");
        var limit = factor * terminal.CurrentA;
        return new($"fuse {fuse.Id} over contact {PointWords.Of(end.End)}", fuse.RatingA!.Value, limit, "A", () => context.Found(Info,
            $"Fuse {fuse.Id} ({Figure.Amps(fuse.RatingA.Value)}) feeds the {Figure.Amps(terminal.CurrentA)} contact at {PointWords.Of(end.End)} (wire {end.Wire.Named()}); {Figure.Number(factor)} times the contact, {Figure.Amps(limit)}, is the most: the connector melts first.",
            "Take a smaller fuse, or a larger contact.", [fuse.Id, end.Wire.Id, end.End.At], end.Wire.Builds, FuseWords.At(context, fuse.Id)));
    }
}
