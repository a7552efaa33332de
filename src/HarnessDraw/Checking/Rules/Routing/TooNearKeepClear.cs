using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class TooNearKeepClear : IDesignRule
{
    public RuleInfo Info { get; } = new("too-near-keep-clear", "Bundle too near to something hot or moving", Severity.Warning, Consequence.Fire, "FAA AC 43.13-1B chapter 11; common practice for exhausts and moving parts",
        "Heat softens the insulation, moving parts cut it.")
    {
        Limits = [new("error within", 50, "%", "common practice, no source: under half of the distance")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var clear in context.Harness.Layout.KeepClear.Where(c => !c.Forbidden))
        {
            foreach (var segment in context.Plan.Tree.Segments.Where(s => !s.Wires.IsEmpty))
            {
                if (context.Place(segment.From) is { } a && context.Place(segment.To) is { } b && clear.DistanceMm(a, b) is var mm && mm < clear.ByMm)
                {
                    yield return context.Found(Info, $"{segment.Id} ({segment.From} to {segment.To}), taken straight, passes {Figure.Millimetres(mm)} from {clear.What}; {Figure.Millimetres(clear.ByMm)} is asked for.", "Reroute, or sleeve and shield it.", [segment.Id, clear.What], at: clear.At,
                        severity: mm < context.Limit(Info, "error within") / 100 * clear.ByMm ? Severity.Error : Severity.Warning);
                }
            }
        }
    }
}
