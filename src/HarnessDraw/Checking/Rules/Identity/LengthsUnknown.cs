using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class LengthsUnknown : IDesignRule
{
    public RuleInfo Info { get; } = new("lengths-unknown", "Wires without a length", Severity.Advice, Consequence.DoesNotWork, "common practice, no source",
        "They cannot be cut, and totals are lower bounds.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var wires = context.Plan.Wires.Where(w => w.CutLengthMm is null).ToList();
        if (wires.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.Count(wires.Count, "wire length")} {(wires.Count == 1 ? "is" : "are")} still unknown ({Wording.List(wires.Select(w => w.Id))}): the cut list marks them, totals are lower bounds.", "Measure the paths listed as open questions.", wires.Select(w => w.Id));
        }
    }
}
