using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class ForbiddenZone : IDesignRule
{
    public RuleInfo Info { get; } = new("forbidden-zone", "Bundle crosses a zone where no wire may pass", Severity.Error, Consequence.Fire, "common practice, no source",
        "Beside a steering shaft or a pedal a wire does not only suffer: it jams what the driver needs.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        from clear in context.Harness.Layout.KeepClear
        where clear.Forbidden
        from segment in context.Plan.Tree.Segments
        where !segment.Wires.IsEmpty
        let a = context.Place(segment.From)
        let b = context.Place(segment.To)
        where a is not null && b is not null
        let mm = clear.DistanceMm(a, b)
        where mm < clear.ByMm
        select context.Found(Info, $"{segment.Id} ({segment.From} to {segment.To}), taken straight, crosses the zone of {clear.What}: {Figure.Millimetres(mm)} from it, {Figure.Millimetres(clear.ByMm)} is kept free.", "Give the layout a path around it.", [segment.Id, clear.What], at: clear.At);
}
