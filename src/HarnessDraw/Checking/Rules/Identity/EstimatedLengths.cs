using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class EstimatedLengths : IDesignRule
{
    public RuleInfo Info { get; } = new("estimated-lengths", "Wires that depend on estimated lengths", Severity.Advice, Consequence.Untidy, "common practice, no source",
        "An estimate on the sheet looks like a measurement unless it is marked.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var wires = context.Plan.Wires.Where(w => w.Estimated).ToList();
        if (wires.Count > 0)
        {
            var segments = wires.SelectMany(context.SegmentsOf).Where(s => s.Estimated).Select(s => $"{s.From} to {s.To}");
            var on = segments.Any() ? $" ({Wording.List(segments)})" : "";
            yield return context.Found(Info, $"{Wording.Count(wires.Count, "wire")} depend{(wires.Count == 1 ? "s" : "")} on estimated lengths{on}: {Wording.List(wires.Select(w => w.Id))}.", "Measure them, or cut the second ends on the vehicle.", wires.Select(w => w.Id));
        }
    }
}
