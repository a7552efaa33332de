using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class OutsideCrimpRange : IDesignRule
{
    public RuleInfo Info { get; } = new("outside-crimp-range", "Wire outside the crimp range of its terminal", Severity.Error, Consequence.DoesNotLast, "the terminal's own catalogue row",
        "Too thin, the crimp pulls off; too thick, the barrel does not close.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        PlannedEnd.Of(context.Plan).Select(e => (End: e, Terminal: context.Terminal(e.End.Terminal)))
            .Where(p => p.Terminal is { } t && (p.End.Wire.AreaMm2 < t.MinAreaMm2 - 1e-9 || p.End.Wire.AreaMm2 > t.MaxAreaMm2 + 1e-9))
            .Select(p => context.Found(Info, $"{PointWords.Of(p.End.End)}: {Figure.Area(p.End.Wire.AreaMm2)} wire {p.End.Wire.Named()} in terminal {p.Terminal!.Id}, which takes {Figure.Number(p.Terminal.MinAreaMm2)} to {Figure.Area(p.Terminal.MaxAreaMm2)}.",
                Cure(context, p.End, p.Terminal), [p.End.Wire.Id, p.End.End.ToString()], p.End.Wire.Builds, context.AtOf(p.End.Wire)));

    private static string Cure(RuleContext context, PlannedEnd end, Model.TerminalPart terminal)
    {
        var other = context.Harness.Catalogue.Terminals.FirstOrDefault(t => t.Family == terminal.Family && t.Size == terminal.Size && end.Wire.AreaMm2 >= t.MinAreaMm2 && end.Wire.AreaMm2 <= t.MaxAreaMm2);
        return other is null ? "No terminal of this family takes the wire: change the wire, or splice on a thinner tail." : $"Use terminal {other.Id}.";
    }
}
