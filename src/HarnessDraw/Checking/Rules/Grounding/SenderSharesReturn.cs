using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Grounding;

internal sealed class SenderSharesReturn : IDesignRule
{
    public RuleInfo Info { get; } = new("sender-shares-return", "Sender returns by a wire that carries power", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "The drop in the shared wire moves the gauge whenever the lamps are on.")
    {
        Limits = [new("shared current", 1, "A", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var splice in context.Plan.Splices)
        {
            var wires = splice.Wires.Select(context.Wire).OfType<Wire>().Where(context.IsReturn).Concat(splice.Wires.Select(context.Wire).OfType<Wire>().Where(w => context.Circuit(w.Circuit)?.IsReturn == true)).DistinctBy(w => w.Id).ToList();
            var senders = wires.SelectMany(w => new[] { w.From, w.To }).Where(e => context.Thing(e.At)?.Kind == ThingKind.Sender).Select(e => e.At).Distinct().ToList();
            var heavy = wires.Where(w => w.Worst?.CurrentA > context.Limit(Info, "shared current")).ToList();
            if (senders.Count > 0 && heavy.Count > 0)
            {
                yield return context.Found(Info, $"{Wording.List(senders)} return{(senders.Count == 1 ? "s" : "")} through {splice.Id} together with {Wording.List(heavy.Select(w => $"{w.Named()} {Figure.Amps(w.Worst!.CurrentA)}"))}: the gauge moves with them.",
                    "Give the sender a return of its own to the gauge's ground.", [splice.Id, .. senders, .. heavy.Select(w => w.Id)], splice.Builds);
            }
        }
    }
}
