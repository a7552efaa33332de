using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>From notes to suspects and the next test. Holds what is solved, so that one vehicle can be asked again and again.</summary>
public sealed class Troubleshooter
{
    /// <summary>From this probability on a group is taken to be it.</summary>
    public const double Sure = 0.98;
    private const int MostGroups = 8;
    private readonly ImmutableArray<Fault> faults;
    private (string Key, FaultBench Bench, FaultRanking Ranking)? solved;

    // states beyond these tell little and cost as much
    internal const int MostStates = 4;

    public Troubleshooter(Plan plan, ImmutableSortedDictionary<string, string>? build = null, FaultWeights? weights = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Bench = new(plan, build);
        faults = Bench.Faults(weights ?? FaultWeights.InService);
    }

    public FaultBench Bench { get; }

    public Diagnosis Diagnose(ImmutableArray<VehicleNote> notes)
    {
        var (evidence, said) = new NoteResolver(Bench).Resolve(notes);
        var remarks = ImmutableArray.CreateBuilder<string>();
        var wrong = evidence.Answers.Where(a => a.Seen is not (LoadClass.Works or LoadClass.Off)).Select(a => a.Load).Distinct().Count();
        if (said.Any(d => d.Severity == Severity.Error))
        {
            return new() { Bench = Bench, Evidence = evidence, Said = said, Remarks = [], Groups = [], Tried = 0 };
        }

        if (wrong == 0 && evidence.Readings.IsEmpty && evidence.Fuses.IsEmpty)
        {
            remarks.Add("Nothing is said to be wrong: name what is dead, dim or always on, or a reading.");
            return new() { Bench = Bench, Evidence = evidence, Said = said, Remarks = remarks.ToImmutable(), Groups = [], Tried = 0 };
        }

        Remark(evidence, wrong, remarks);
        var tested = Tested(evidence, AllDead(evidence));
        var here = evidence.Only(tested);
        var (bench, solvedFaults) = RankingFor(tested, here);
        var ranking = solvedFaults.Moving(here);
        var scores = ranking.Score(here);
        var ranked = ranking.Rank(scores);
        var groups = SuspectGroup.Of(bench, ranked).Take(MostGroups).Select(g => Explained(bench, g, here)).ToImmutableArray();
        var pairs = ImmutableArray<FaultPair>.Empty;
        if (groups.All(g => !g.Unexplained.IsEmpty))
        {
            remarks.Add("No single fault explains everything that was noted.");
            pairs = new PairSearch(bench, new(bench, new FaultReach(bench).Of(faults, here, leastShare: 0)), here).Find();
        }

        var (leader, variant) = Leader(groups[0].Group);
        remarks.AddRange(Reasons.Sources(bench, leader.Predictions[variant], leader.UnknownOhm, here));
        var next = groups[0].Group.Probability >= Sure ? null : new TestChooser(bench).Best(ranking.Rank(scores, TestChooser.Hedge), ranked, here);
        return new() { Bench = bench, Evidence = here, Said = said, Remarks = remarks.ToImmutable(), Groups = groups, Pairs = pairs, Next = next, Tried = solvedFaults.Faults.Length };
    }

    /// <summary>States in which something was measured or is wrong, those with most first, then those that show most of what works.</summary>
    private ImmutableArray<int> Tested(Evidence evidence, bool allDead)
    {
        var measured = evidence.Readings.Concat(evidence.Skipped).Select(r => r.State).ToHashSet();
        // with everything dead no engine runs: its alternator would feed the loads
        var possible = Enumerable.Range(0, Bench.States.Length).Where(s => !allDead || measured.Contains(s) || Bench.States[s].Engine != EngineState.Running).ToList();
        var wrong = evidence.Answers.Where(a => a.Seen is not (LoadClass.Works or LoadClass.Off)).GroupBy(a => a.State).ToDictionary(g => g.Key, g => g.Count());
        var states = possible.Where(s => measured.Contains(s) || wrong.ContainsKey(s)).OrderByDescending(measured.Contains).ThenByDescending(s => wrong.GetValueOrDefault(s)).ThenBy(s => s)
            .Take(Math.Max(MostStates, measured.Count)).ToList();
        var works = evidence.Answers.Where(a => a.Seen == LoadClass.Works && !states.Contains(a.State)).ToLookup(a => a.State, a => a.Load);
        var shown = evidence.Answers.Where(a => a.Seen == LoadClass.Works && states.Contains(a.State)).Select(a => a.Load).ToHashSet();
        while (states.Count < MostStates && possible.Except(states).OrderByDescending(s => works[s].Except(shown).Count()).ThenBy(s => s).FirstOrDefault(-1) is >= 0 and var next && works[next].Except(shown).Any())
        {
            states.Add(next);
            shown.UnionWith(works[next]);
        }

        return states.Count == 0 ? [.. Enumerable.Range(0, Math.Min(MostStates, Bench.States.Length))] : [.. states.Order()];
    }

    private (FaultBench Bench, FaultRanking Ranking) RankingFor(ImmutableArray<int> tested, Evidence here)
    {
        var bench = solved is { } known && known.Bench.States.SequenceEqual(tested.Select(s => Bench.States[s])) ? known.Bench : Bench.Only(tested);
        var tried = new FaultReach(bench).Of(faults, here);
        var key = string.Join('\n', tried.Select(f => f.Words));
        if (solved?.Key != key || solved?.Bench != bench)
        {
            solved = (key, bench, new(bench, tried));
        }

        return (bench, solved.Value.Ranking);
    }

    private void Remark(Evidence evidence, int wrong, ImmutableArray<string>.Builder remarks)
    {
        var should = Enumerable.Range(0, Bench.Loads.Length).Count(l => Bench.ShouldWork.Any(s => s[l]));
        if (AllDead(evidence))
        {
            remarks.Add($"All {should} loads are dead: what feeds everything comes first (battery, its posts and cables, the main fuse). States with the engine running are left out.");
        }
        else if (wrong == 0)
        {
            remarks.Add("No load is said to be dead, dim or always on: only readings speak.");
        }

        var blank = evidence.Answers.Select(a => a.Load).Distinct().Count() == wrong && wrong < should;
        if (wrong > 0 && blank)
        {
            remarks.Add("Nothing is said to work: what shares a fuse, ground or switch with the complaint and works clears much of it.");
        }
    }

    private bool AllDead(Evidence evidence)
    {
        var dead = evidence.Answers.Where(a => a.Seen == LoadClass.Dead).Select(a => a.Load).ToHashSet();
        return dead.Count > 1 && Enumerable.Range(0, Bench.Loads.Length).All(l => dead.Contains(l) || !Bench.ShouldWork.Any(s => s[l]));
    }

    private static ExplainedGroup Explained(FaultBench bench, SuspectGroup group, Evidence evidence)
    {
        var (leader, best) = Leader(group);
        var (explains, not) = Reasons.Of(bench, leader.Predictions[best], leader.UnknownOhm, evidence);
        return new(group, explains, not);
    }

    /// <summary>The likeliest fault of a group and which of its variants it is likeliest.</summary>
    private static (Suspect Leader, int Variant) Leader(SuspectGroup group) =>
        (group.Suspects[0], Enumerable.Range(0, group.Suspects[0].Predictions.Length).OrderByDescending(v => group.Suspects[0].OfVariant[v]).First());
}
