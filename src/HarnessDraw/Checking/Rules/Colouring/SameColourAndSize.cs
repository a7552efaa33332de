using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Colouring;

internal sealed class SameColourAndSize : IDesignRule
{
    public RuleInfo Info { get; } = new("same-colour-and-size", "Wires of one colour and size in a connector", Severity.Warning, Consequence.Untidy, "common practice, no source",
        "Nothing but the label tells them apart when they are pinned.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        ColourPairs.Of(context, (a, b) => a.Net != b.Net && a.Colour == b.Colour && a.SizeLabel == b.SizeLabel, neighboursOnly: false).Select(c =>
        {
            var groups = c.Pairs.SelectMany(p => new[] { p.A.Wire, p.B.Wire }).DistinctBy(w => w.Id).GroupBy(w => (w.Colour, w.SizeLabel)).ToList();
            return context.Found(Info, $"{c.Connector.Thing.Id}: {Wording.List(groups.Select(g => $"{g.Count()} {g.Key.Colour} wires of {g.Key.SizeLabel} ({Wording.List(g.Select(w => w.Named()))})"), "; ")} cannot be told apart.", "Print their ids, add a tracer, or use another colour.",
                [c.Connector.Thing.Id, .. groups.SelectMany(g => g.Select(w => w.Id))], at: c.Connector.Thing.At);
        });
}
