using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class ParallelWires : IDesignRule
{
    public RuleInfo Info { get; } = new("parallel-wires", "Two wires in parallel", Severity.Warning, Consequence.Fire, "common practice, no source",
        "Parallel wires and cavities never share current evenly; when one opens the other carries all.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Wires.Where(w => !context.IsReturn(w) && !w.From.IsSplice && !w.To.IsSplice && w.From.At != w.To.At)
            .GroupBy(w => (w.Net, Ends(w)))
            .Select(g => g.ToList())
            .Where(g => g.Count > 1 && context.CanMeet(g[0].Builds, g[1].Builds))
            .Select(g => context.Found(Info, $"{Wording.List(g.Select(w => w.Named()))} run in parallel from {g[0].From.At} to {g[0].To.At}: they do not share {(g[0].Worst is { } worst ? Figure.Amps(worst.CurrentA * g.Count) : "the current")} evenly.",
                "Use one larger wire and contact, or a fuse for each.", g.Select(w => w.Id), g.Aggregate(Model.BuildCondition.Always, (b, w) => b.And(w.Builds)), context.Circuit(g[0].Circuit)?.At));

    private static string Ends(Wire wire) => string.CompareOrdinal(wire.From.At, wire.To.At) < 0 ? $"{wire.From.At}|{wire.To.At}" : $"{wire.To.At}|{wire.From.At}";
}
