using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class SealDoesNotGrip : IDesignRule
{
    public RuleInfo Info { get; } = new("seal-does-not-grip", "Wire outside the range of its seal, or no seal", Severity.Error, Consequence.DoesNotLast, "the seal's own catalogue row",
        "A seal that does not grip lets water in; one too tight tears.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var (connector, pinned) in context.Connectors.Where(c => c.Part.Sealed).SelectMany(c => c.Wires.Select(w => (c, w))))
        {
            var pin = $"{connector.Thing.Id}.{pinned.Cavity}";
            if (pinned.End.Terminal is null && pinned.Wire.DecidedBy != "given by hand")
            {
                continue; // without a terminal there is nothing to seal: that is an error of its own
            }

            if (context.Seal(pinned.End.Seal) is not { } seal)
            {
                yield return context.Found(Info, $"{PointWords.OfNode(pin)}: wire {pinned.Wire.Named()} has no seal in a sealed connector.", "Add the seal of its cavity and insulation; thread it on first.", [pin, pinned.Wire.Id], pinned.Wire.Builds, connector.Thing.At);
            }
            else if (pinned.Wire.OutsideMm < seal.MinInsulationMm - 1e-9 || pinned.Wire.OutsideMm > seal.MaxInsulationMm + 1e-9)
            {
                yield return context.Found(Info, $"{PointWords.OfNode(pin)}: {Figure.Of(pinned.Wire.OutsideMm, "mm")} wire {pinned.Wire.Named()} in seal {seal.Id} for {Figure.Number(seal.MinInsulationMm)} to {Figure.Of(seal.MaxInsulationMm, "mm")} leaks.",
                    context.Harness.Catalogue.Seals.FirstOrDefault(s => s.Size == seal.Size && pinned.Wire.OutsideMm >= s.MinInsulationMm && pinned.Wire.OutsideMm <= s.MaxInsulationMm) is { } fits ? $"Use seal {fits.Id}." : "Use wire whose insulation the seal grips.",
                    [pin, pinned.Wire.Id], pinned.Wire.Builds, connector.Thing.At);
            }
        }
    }
}
