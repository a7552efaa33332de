using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>Two faults at once that explain what no single one does. Tried are those that explain most, first the pairs that share a place: one wet connector, one crushed bundle.</summary>
internal sealed class PairSearch(FaultBench bench, FaultRanking ranking, Evidence evidence)
{
    private const int MostFirst = 12;
    private const int MostSecond = 10;
    private const int MostFound = 5;

    // how much likelier a second fault is where the first one sits; common practice, no source
    private const double SamePlace = 30;

    public ImmutableArray<FaultPair> Find()
    {
        var wrong = evidence.Answers.Where(a => a.Seen is not (LoadClass.Works or LoadClass.Off)).ToImmutableArray();
        var cases = ranking.Faults.SelectMany(f => f.Fault.Variants.Zip(f.Predictions, (variant, prediction) => new Case(f, variant, prediction, Explained(f, prediction, wrong)))).Where(c => c.Explains.Count > 0).ToList();
        List<(FaultPair Pair, double Log)> found = [];
        // one leader for each set of explained complaints: others of the set would only repeat it
        var leaders = cases.GroupBy(c => string.Join(',', c.Explains.Order())).Select(g => g.OrderByDescending(Log).First()).OrderByDescending(Log).Take(MostFirst).ToList();
        foreach (var first in leaders)
        {
            var open = wrong.Select((_, i) => i).Except(first.Explains).ToHashSet();
            var seconds = cases.Where(c => c.Suspect.Fault.Part != first.Suspect.Fault.Part && open.IsSubsetOf(c.Explains))
                .OrderByDescending(c => Log(c) + (Shared(first.Suspect.Fault, c.Suspect.Fault) is null ? 0 : Math.Log(SamePlace))).Take(MostSecond);
            foreach (var second in seconds)
            {
                var prediction = bench.Predict(first.Variant, second.Variant);
                var (_, not) = Reasons.Of(bench, prediction, first.Suspect.UnknownOhm || second.Suspect.UnknownOhm, evidence);
                if (not.IsEmpty && !found.Any(f => f.Pair.First == second.Suspect.Fault && f.Pair.Second == first.Suspect.Fault))
                {
                    var shared = Shared(first.Suspect.Fault, second.Suspect.Fault);
                    found.Add((new(first.Suspect.Fault, second.Suspect.Fault, shared), Math.Log(first.Suspect.Fault.Weight) + Math.Log(second.Suspect.Fault.Weight) + (shared is null ? 0 : Math.Log(SamePlace))));
                }
            }
        }

        return [.. found.OrderByDescending(f => f.Log).Select(f => f.Pair).Distinct().Take(MostFound)];
    }

    private HashSet<int> Explained(Suspect suspect, Prediction prediction, ImmutableArray<SeenAnswer> wrong) =>
        [.. Enumerable.Range(0, wrong.Length).Where(i => Reasons.Fits(bench, prediction, suspect.UnknownOhm, wrong[i]))];

    // what works and what reads right counts as well as what does not
    private double Log(Case c) => Math.Log(c.Suspect.Fault.Weight) + (4 * c.Explains.Count)
        + evidence.Answers.Where(a => a.Seen is LoadClass.Works or LoadClass.Off).Sum(a => Trust.LogAnswer(a.Seen, c.Prediction.Solved.Shares[a.State][a.Load], bench.ShouldWork[a.State][a.Load]));

    private static string? Shared(Fault a, Fault b) => a.At.Intersect(b.At, StringComparer.Ordinal).FirstOrDefault() ?? (a.Where == b.Where ? a.Where : null);

    private sealed record Case(Suspect Suspect, FaultVariant Variant, Prediction Prediction, HashSet<int> Explains);
}
