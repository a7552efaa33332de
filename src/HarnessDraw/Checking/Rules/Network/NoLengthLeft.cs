using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Network;

internal sealed class NoLengthLeft : IDesignRule
{
    public RuleInfo Info { get; } = new("no-length-left", "A wire with no length between its terminals", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Both ends are stripped: a wire as short as that is all barrel and cannot be made.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Wires.Where(w => w.CutLengthMm is { } cut && cut <= Stripped(w))
            .Select(w => context.Found(Info, $"{w.Named()} is cut {w.CutLengthMm:0} mm, of which {Figure.Number(Stripped(w))} mm are stripped at its ends: no wire is left between {PointWords.Of(w.From)} and {PointWords.Of(w.To)}.",
                "Give it its true length, or put a link of the bus bar in its place.", [w.Id, w.Circuit], w.Builds, context.AtOf(w)));

    private static double Stripped(Wire wire) => (wire.From.StripMm ?? 0) + (wire.To.StripMm ?? 0);
}
