using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class UnfusedLeadUnguarded : IDesignRule
{
    public RuleInfo Info { get; } = new("unfused-lead-unguarded", "Unfused lead without sheath", Severity.Warning, Consequence.Fire, "common practice, no source",
        "What no fuse protects must be protected from chafing, all the way.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var wire in context.Plan.Wires.Where(w => context.Circuit(w.Circuit) is { UnfusedBecause: not null, IsReturn: false }))
        {
            var bare = context.SegmentsOf(wire).Where(s => s.Covering is null).ToList();
            if (bare.Count > 0)
            {
                yield return context.Found(Info, $"Wire {wire.Named()} is unfused by choice but has no covering on {Wording.List(bare.Select(s => s.Id))} ({Wording.List(bare.Select(s => $"{s.From} to {s.To}"))}): chafed through, it burns.",
                    "Sheath it over its whole length and boot both ends; fit an isolator within reach.", [wire.Id, wire.Circuit], wire.Builds, context.Circuit(wire.Circuit)?.At);
            }
        }
    }
}
