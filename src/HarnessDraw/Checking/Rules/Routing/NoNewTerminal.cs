using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class NoNewTerminal : IDesignRule
{
    public RuleInfo Info { get; } = new("no-new-terminal", "No length left for new terminals", Severity.Advice, Consequence.DoesNotLast, "FAA AC 43.13-1B chapter 11: length for two re-terminations",
        "When a terminal breaks, the wire must be long enough for the next one.")
    {
        Limits = [new("terminals", 2, "", "FAA AC 43.13-1B chapter 11")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var tooShort = context.Plan.Wires.Where(w => w is { CutLengthMm: not null, PathLengthMm: not null }).Select(w => (Wire: w, Lacks: Lacks(context, w))).Where(p => p.Lacks > 0.5).ToList();
        if (tooShort.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.List(tooShort.Select(p => $"{p.Wire.Named()} lacks {Figure.Millimetres(p.Lacks)}"))} for {Figure.Number(context.Limit(Info, "terminals"))} new terminals at each end.",
                $"Add {Figure.Millimetres(tooShort.Max(p => p.Lacks))}.", tooShort.SelectMany(p => new[] { p.Wire.Id, p.Wire.Circuit }), at: context.AtOf(tooShort[0].Wire));
        }
    }

    private double Lacks(RuleContext context, Wire wire)
    {
        var wanted = Wanted(context, wire.From) + Wanted(context, wire.To);
        var spare = wire.CutLengthMm!.Value - wire.LeastCutMm!.Value;
        // too short for its route altogether is an error of its own
        return spare < -0.5 ? 0 : wanted - spare;
    }

    private double Wanted(RuleContext context, WireEnd end) => context.Terminal(end.Terminal) is { } t ? context.Limit(Info, "terminals") * (t.StripMm + t.BarrelMm) : 0;
}
