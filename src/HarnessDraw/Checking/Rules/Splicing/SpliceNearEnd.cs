using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SpliceNearEnd : IDesignRule
{
    public RuleInfo Info { get; } = new("splice-near-end", "Splice close to a termination", Severity.Advice, Consequence.DoesNotLast, "common practice, no source",
        "The short leg takes every pull on the plug, and leaves nothing for a new terminal.")
    {
        Limits = [new("from end", 300, "mm", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var near = context.Plan.Splices.SelectMany(s => s.Wires.Select(context.Wire).OfType<Wire>().Where(w => !(w.From.IsSplice && w.To.IsSplice) && w.PathLengthMm < context.Limit(Info, "from end")).OrderBy(w => w.PathLengthMm).ThenBy(w => w.Id, StringComparer.Ordinal).Take(1).Select(w => (Splice: s, Wire: w))).ToList();
        if (near.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.List(near.Select(p => $"{p.Splice.Id} is {Figure.Millimetres(p.Wire.PathLengthMm!.Value)} from {PointWords.Of(p.Wire.From.IsSplice ? p.Wire.To : p.Wire.From)}"))}: under {Figure.Millimetres(context.Limit(Info, "from end"))}.", "Join the wires at the connector, or move the splice.", near.Select(p => p.Splice.Id));
        }
    }
}
