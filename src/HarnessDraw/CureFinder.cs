using System.Collections.Immutable;
using HarnessDraw.Checking;
using HarnessDraw.Checking.Cures;
using HarnessDraw.Comparing;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;
using HarnessDraw.Reading;

namespace HarnessDraw;

/// <summary>
/// Gives findings the cures that cure: each proposal is written into the description in memory, planned, solved and checked in full, and is told only when the
/// finding is gone and no error and no warning has come. A harness without such findings is not planned again; advice is cured when that is asked for.
/// </summary>
internal static class CureFinder
{
    /// <summary>Plans in one run at the most: a harness with more findings than that is mended step by step. Findings of one severity share what is left of them alike, with so many each at the least.</summary>
    private const int MostPlans = 40;
    private const int LeastShare = 3;
    private const int MostCures = 2;

    public static CheckedPlan Cure(string descriptionFile, IFileSource files, RuleSettings rules, CheckedPlan before, bool ofAdvice)
    {
        var bench = new Bench(descriptionFile, files, rules, before);
        var ladders = before.Findings.Select(f => f.WaivedBy is null && (ofAdvice || f.Severity > Severity.Advice) ? CureProposals.Of(before.Plan, rules, f) : []).ToList();
        var cured = before.Findings.ToArray();
        foreach (var alike in Enumerable.Range(0, cured.Length).Where(i => !ladders[i].IsEmpty).GroupBy(i => cured[i].Severity).OrderByDescending(g => g.Key))
        {
            var open = alike.Count();
            foreach (var i in alike)
            {
                cured[i] = bench.Cured(cured[i], ladders[i], open--);
            }
        }

        return before with { Findings = [.. cured] };
    }

    private sealed class Bench(string descriptionFile, IFileSource files, RuleSettings rules, CheckedPlan before)
    {
        private readonly Dictionary<string, CheckedPlan?> tried = new(StringComparer.Ordinal);
        private int most;

        /// <summary>The finding with the cures of its ladders; <paramref name="open"/> findings, this one among them, share the plans that are left.</summary>
        public Finding Cured(Finding finding, ImmutableArray<CureLadder> ladders, int open)
        {
            most = Math.Min(MostPlans, tried.Count + Math.Max(LeastShare, (MostPlans - tried.Count) / open));
            var cures = ladders.Select(l => First(finding, l)).OfType<string>().Take(MostCures).ToList();
            if (cures.Count == 0 && ladders.Length > 1 && First(finding, CureLadder.Together(ladders[0], ladders[1])) is { } both)
            {
                cures.Add(both);
            }

            return finding with { Cure = cures.Count > 0 ? string.Join(" Or ", cures) : Without(finding, ladders) };
        }

        private string? First(Finding finding, CureLadder ladder) => ladder.Rungs.Select(rung => Told(finding, rung)).FirstOrDefault(t => t is not null);

        /// <summary>The cure in words with the figure that the plan with it shows; null when it does not cure.</summary>
        private string? Told(Finding finding, CureCandidate candidate)
        {
            if (With(candidate) is not { } after)
            {
                return null;
            }

            var difference = PlanDifference.Of(before.Plan, before.Findings, after.Plan, after.Findings);
            if (!difference.Gone.Contains(finding) || difference.New.Any(f => f.Severity > Severity.Advice && f.WaivedBy is null))
            {
                return null;
            }

            var figure = finding.Measured is { } what && HarnessChecker.MeasureOf(after.Plan, rules, finding.Rule, what) is { } measure ? $": {measure}" : "";
            return $"{char.ToUpperInvariant(candidate.Words[0])}{candidate.Words[1..]} ({string.Join(" ", candidate.Changes.Select(c => c.Contains('\'', StringComparison.Ordinal) ? $"--set \"{c}\"" : $"--set '{c}'"))}), planned and solved again{figure}.";
        }

        private CheckedPlan? With(CureCandidate candidate)
        {
            var key = string.Join('\n', candidate.Changes);
            if (!tried.TryGetValue(key, out var known) && tried.Count < most)
            {
                known = HarnessCompiler.Edit(descriptionFile, files, candidate.Changes).Files is { } edited ? HarnessCompiler.Plan(descriptionFile, edited, rules).Value : null;
                tried.Add(key, known);
            }

            return known;
        }

        private string? Without(Finding finding, ImmutableArray<CureLadder> ladders) => tried.Count < most
            ? $"No change of figures alone is enough; planned and solved again without success: {string.Join("; ", ladders.Select(l => l.Rungs[0].Words == l.Rungs[^1].Words ? l.Rungs[0].Words : $"{l.Rungs[0].Words}, up to {l.Rungs[^1].Words}"))}. {(finding.Rule.EndsWith("-drop", StringComparison.Ordinal) || ladders.Any(l => l.Rungs[0].Changes.Any(c => c.Contains(".size=", StringComparison.Ordinal))) ? "Split the load, shorten the run (a nearer source or ground point) or put a relay near the load: another" : "Another")} circuit, route or part is needed."
            : $"{finding.Cure} (With other findings mended, more changes are tried for this one.)".TrimStart();
    }
}
