using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class ShorterThanStraight : IDesignRule
{
    public RuleInfo Info { get; } = new("shorter-than-straight", "Path shorter than the straight line between its ends", Severity.Warning, Consequence.DoesNotWork, "geometry",
        "Either the length or a place is wrong, and the wires come out short.")
    {
        Limits = [new("measuring error", 10, "mm", "common practice, no source: lengths are measured to 5 mm, places too")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var path in context.Harness.Layout.Paths.Where(p => p is { Known: not LengthKnown.Unknown, LengthMm: not null }))
        {
            if (context.Place(path.From) is { } a && context.Place(path.To) is { } b)
            {
                var straight = Math.Sqrt(Math.Pow(a.Xmm - b.Xmm, 2) + Math.Pow(a.Ymm - b.Ymm, 2) + Math.Pow(a.Zmm - b.Zmm, 2));
                if (path.LengthMm < straight - context.Limit(Info, "measuring error"))
                {
                    yield return context.Found(Info, $"{path.From} to {path.To} is given as {Figure.Millimetres(path.LengthMm.Value)}, but the two are {Figure.Millimetres(straight)} apart in a straight line.", "Measure again along the real route, or correct the place.", [path.Id, path.From, path.To], at: path.At);
                }
            }
        }
    }
}
