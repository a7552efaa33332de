using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class InsulationUnsupported : IDesignRule
{
    public RuleInfo Info { get; } = new("insulation-unsupported", "Insulation outside the grip of its terminal", Severity.Error, Consequence.DoesNotLast, "the terminal's own catalogue row",
        "Without its insulation grip the strands break at the barrel.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        PlannedEnd.Of(context.Plan).Select(e => (End: e, Terminal: context.Terminal(e.End.Terminal)))
            .Where(p => p.Terminal is { } t && (p.End.Wire.OutsideMm < t.MinInsulationMm - 1e-9 || p.End.Wire.OutsideMm > t.MaxInsulationMm + 1e-9))
            .Select(p => context.Found(Info, $"{PointWords.Of(p.End.End)}: wire {p.End.Wire.Named()} is {Figure.Of(p.End.Wire.OutsideMm, "mm")} over its insulation; terminal {p.Terminal!.Id} grips {Figure.Number(p.Terminal.MinInsulationMm)} to {Figure.Of(p.Terminal.MaxInsulationMm, "mm")}.",
                "Use another terminal or another wire family.", [p.End.Wire.Id, p.End.End.ToString()], p.End.Wire.Builds, context.Circuit(p.End.Wire.Circuit)?.At));
}
