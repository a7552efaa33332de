using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Colouring;

internal sealed class ColoursConfusable : IDesignRule
{
    // red-green deficiency, and what age makes alike; judged by eye on faded samples (common practice, no source)
    private static readonly (string A, string B)[] Alike = [("RD", "BN"), ("GN", "BN"), ("RD", "GN"), ("GY", "VT"), ("BN", "OG"), ("GY", "PK"), ("BU", "VT")];

    public RuleInfo Info { get; } = new("colours-confusable", "Neighbours whose colours are easily taken for each other", Severity.Warning, Consequence.Untidy, "common practice, no source: red-green deficiency concerns about 8 % of men; aged insulation",
        "Aged, dirty or seen by a colour-blind eye, the two look the same.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        ColourPairs.Of(context, (a, b) => a.Net != b.Net && a.SizeLabel == b.SizeLabel && Confusable(a.Colour, b.Colour), neighboursOnly: true).Select(c => context.Found(Info,
            $"{c.Connector.Thing.Id}: {Wording.List(c.Pairs.Select(p => $"{p.A.Wire.Colour} and {p.B.Wire.Colour} ({p.A.Cavity}, {p.B.Cavity})"))} side by side and of one size are easily confused.", "Change one tracer, or print the ids at both ends.",
            [c.Connector.Thing.Id, .. c.Pairs.SelectMany(p => new[] { p.A.Wire.Id, p.B.Wire.Id })], at: c.Connector.Thing.At));

    private static bool Confusable(string a, string b)
    {
        var (x, y) = (ColourPairs.Split(a), ColourPairs.Split(b));
        return x.Tracer == y.Tracer && Alike.Any(p => (p.A == x.Base && p.B == y.Base) || (p.A == y.Base && p.B == x.Base));
    }
}
