using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Colouring;

internal sealed class ColoursConfusable : IDesignRule
{
    public RuleInfo Info { get; } = new("colours-confusable", "Neighbours whose colours are easily taken for each other", Severity.Warning, Consequence.Untidy, "common practice, no source: red-green deficiency concerns about 8 % of men; aged insulation",
        "Aged, dirty or seen by a colour-blind eye, the two look the same.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        ColourPairs.Of(context, (a, b) => a.Net != b.Net && a.SizeLabel == b.SizeLabel && TiredColours.AreConfusable(a.Colour, b.Colour), neighboursOnly: true).Select(c => context.Found(Info,
            $"{c.Connector.Thing.Id}: {Wording.List(c.Pairs.Select(p => $"{p.A.Wire.Colour} and {p.B.Wire.Colour} ({p.A.Cavity}, {p.B.Cavity})"))} side by side and of one size are easily confused.", "Change one tracer, or print the ids at both ends.",
            [c.Connector.Thing.Id, .. c.Pairs.SelectMany(p => new[] { p.A.Wire.Id, p.B.Wire.Id })], at: c.Connector.Thing.At));
}
