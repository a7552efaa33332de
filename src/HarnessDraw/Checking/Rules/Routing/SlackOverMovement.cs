using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class SlackOverMovement : IDesignRule
{
    private static readonly string[] SlackWords = ["slack", "loop", "move", "movement", "service"];

    public RuleInfo Info { get; } = new("slack-over-movement", "Too little slack over a moving part", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "An engine that rocks pulls short wires out of their terminals.")
    {
        Limits = [new("times movement", 1.5, "", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var segment in context.Plan.Tree.Segments)
        {
            if (context.PathOf(segment) is not { MovesMm: > 0 and { } moves } path)
            {
                continue;
            }

            var need = context.Limit(Info, "times movement") * moves;
            var shortOnes = context.Plan.Wires.Where(w => w.Segments.Contains(segment.Id) && w.CutLengthMm is not null).Select(w => (Wire: w, Slack: Slack(w))).Where(p => p.Slack < need - 1e-9).ToList();
            if (shortOnes.Count > 0)
            {
                var least = shortOnes.Min(p => p.Slack);
                yield return context.Found(Info, $"{segment.From} to {segment.To} moves ±{Figure.Millimetres(moves)}; {Wording.Count(shortOnes.Count, "wire")} ({Wording.List(shortOnes.Select(p => p.Wire.Id))}) {(shortOnes.Count == 1 ? "has" : "have")} {Figure.Millimetres(least)} to spare, {Figure.Millimetres(need)} needed.",
                    $"Add {Figure.Millimetres(need - least)} of loop and clamp both sides.", [segment.Id, .. shortOnes.Select(p => p.Wire.Id)], at: path.At);
            }
        }
    }

    private static double Slack(Wire wire) => wire.ByHand && wire.Allowances.IsEmpty
        ? (wire.CutLengthMm ?? 0) - (wire.PathLengthMm ?? 0)
        : wire.Allowances.Where(a => SlackWords.Any(s => a.What.Contains(s, StringComparison.OrdinalIgnoreCase))).Sum(a => a.LengthMm);
}
