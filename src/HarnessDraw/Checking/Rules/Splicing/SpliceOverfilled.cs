using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SpliceOverfilled : IDesignRule
{
    public RuleInfo Info { get; } = new("splice-out-of-range", "Copper in a splice outside its range", Severity.Error, Consequence.Fire, "the splice's own catalogue row",
        "Too much does not close, too little is not held: both heat.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var splice in context.Plan.Splices)
        {
            var part = context.Harness.Catalogue.Splices.FirstOrDefault(p => p.Id == splice.Part);
            var wires = splice.Wires.Select(context.Wire).OfType<Wire>().ToList();
            var total = wires.Sum(w => w.AreaMm2);
            if (part is not null && (total > part.MaxTotalMm2 + 1e-9 || total < part.MinTotalMm2 - 1e-9))
            {
                var fits = context.Harness.Catalogue.Splices.FirstOrDefault(p => p.Sealed == part.Sealed && total >= p.MinTotalMm2 && total <= p.MaxTotalMm2);
                yield return context.Found(Info, $"{splice.Id}: {string.Join(" + ", wires.Select(w => Figure.Number(w.AreaMm2)))} = {Figure.Area(total)} in {part.Id} for {Figure.Number(part.MinTotalMm2)} to {Figure.Area(part.MaxTotalMm2)}.", fits is null ? "Split the joint in two, or use a bus bar." : $"Use {fits.Id}.", [splice.Id, .. splice.Wires], splice.Builds);
            }
        }
    }
}
