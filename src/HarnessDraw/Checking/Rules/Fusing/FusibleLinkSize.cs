using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

/// <summary>A fusible link's own wire against the thinnest wire behind it, and its length.</summary>
internal sealed class FusibleLinkSize : IDesignRule
{
    // one gauge number is the 39th root of 92 in diameter (ASTM B258), its square in area
    private static readonly double AreaOfGauge = Math.Pow(92, 2 / 39.0);

    public RuleInfo Info { get; } = new("fusible-link-size", "Fusible link not four gauge numbers thinner than its wire", Severity.Error, Consequence.Fire, "workshop practice, no standard; gauge numbers by ASTM B258",
        "The link must melt before the wire: one as thick as the wire is the strong part, one too long or too short opens late or in the wrong place.")
    {
        Limits =
        [
            new("gauge numbers", 4, "", "workshop practice: 16 for 12, 14 for 10, 12 for 8 AWG"), new("length", 150, "mm", "workshop practice: about 150 mm"),
            new("length apart", 50, "%", "common practice, no source"),
        ],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var link in context.Harness.Protections.Where(p => p.Kind == ProtectionKind.FusibleLink))
        {
            var behind = (context.Fuse(link.Id)?.Wires ?? []).Select(context.Wire).OfType<Wire>().Where(w => !context.IsReturn(w)).OrderBy(w => w.AreaMm2).ThenBy(w => w.Id, StringComparer.Ordinal).FirstOrDefault();
            var steps = context.Limit(Info, "gauge numbers");
            // half a gauge number is what metric sizes lie off
            if (link.LinkAreaMm2 is { } area && behind is not null && Math.Log(behind.AreaMm2 / area) / Math.Log(AreaOfGauge) is var thinner && Math.Abs(thinner - steps) > 0.5)
            {
                yield return context.Found(Info, $"Link {link.Id} of {Figure.Area(area)} is {Figure.Number(Math.Abs(thinner))} gauge numbers {(thinner < 0 ? "thicker" : "thinner")} than {behind.Named()}, {Figure.Area(behind.AreaMm2)}; {Figure.Number(steps)} thinner is right: {(thinner < steps ? "the wire burns before the link melts" : "the link melts with the load")}.",
                    "Fit a link of that size, or a bolt-in fuse.", [link.Id, behind.Id], behind.Builds, link.At);
            }

            var (right, apart) = (context.Limit(Info, "length"), context.Limit(Info, "length apart") / 100);
            if (link.LinkLengthMm is { } length && Math.Abs(length - right) > apart * right)
            {
                yield return context.Found(Info, $"Link {link.Id} is {Figure.Millimetres(length)} long; about {Figure.Millimetres(right)} is right.", $"Cut it to {Figure.Millimetres(right)}.", [link.Id], at: link.At, severity: Severity.Warning);
            }
        }
    }
}
