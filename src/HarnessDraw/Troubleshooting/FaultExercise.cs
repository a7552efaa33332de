using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>A step of the answer key: the test, what it shows, and how many suspects are left.</summary>
public sealed record KeyStep(NextTest Test, string Shows, int Left);

/// <summary>
/// A fault set at random from a seed for a class: the learner hears the complaint, asks for readings and names the part; the answer key shows the
/// shortest way. The same seed sets the same fault on every machine.
/// </summary>
public sealed class FaultExercise
{
    private const int MostTries = 1000;
    private const int MostSteps = 8;
    private readonly FaultRanking ranking;
    private readonly Suspect truth;
    private readonly Prediction real;

    public FaultExercise(Plan plan, ulong seed, ImmutableSortedDictionary<string, string>? build = null)
    {
        var whole = new FaultBench(plan, build);
        var faults = whole.Faults(FaultWeights.InService);
        var numbers = new SeededNumbers(seed);
        var sum = faults.Sum(f => f.Weight);
        for (var tries = 0; ; tries++)
        {
            var at = numbers.Next() * sum;
            var fault = faults.First(f => (at -= f.Weight) < 0 || ReferenceEquals(f, faults[^1]));
            var variant = numbers.Below(fault.Variants.Length);
            var seen = Symptoms(whole, whole.Predict(fault.Variants[variant], withVolts: false)).ToList();
            if (seen.Count > 0 || tries == MostTries)
            {
                var states = seen.Select(s => s.State).Distinct().Order().ToImmutableArray();
                Bench = states.IsEmpty ? whole : whole.Only(states);
                Evidence = Complaint(Bench, Bench.Predict(fault.Variants[variant]));
                ranking = new(Bench, [.. new FaultReach(Bench).Of(faults, Evidence).Append(fault).Distinct()]);
                truth = ranking.Faults.First(f => f.Fault == fault);
                real = truth.Predictions[variant];
                return;
            }
        }
    }

    public FaultBench Bench { get; }

    /// <summary>The fault itself: for the answer key.</summary>
    public Fault Fault => truth.Fault;

    /// <summary>What the driver tells: everything that is not as it should be, and what works in the same states.</summary>
    public Evidence Evidence { get; }

    public ImmutableArray<string> Complaints
    {
        get
        {
            SeenAnswer[] wrong = [.. Evidence.Answers.Where(a => a.Seen is not (LoadClass.Works or LoadClass.Off))];
            // what cannot be seen from the seat is told only where nothing else is wrong
            var told = wrong.Any(a => Bench.Loads[a.Load].SeenFromSeat) ? wrong.Where(a => Bench.Loads[a.Load].SeenFromSeat) : wrong;
            return [.. told.GroupBy(a => (a.Load, a.Seen)).Select(g => $"{Bench.Loads[g.Key.Load].Called} {Bench.Loads[g.Key.Load].Says(g.Key.Seen)} {In([.. g.Select(a => Bench.States[a.State].Id).Distinct()])}")];
        }
    }

    private string In(string[] states) => states.Length == 1 ? $"in state '{states[0]}'"
        : states.Length == Bench.States.Length ? "in every state" : $"in states {string.Join(", ", states.Select(s => $"'{s}'"))}";

    public ImmutableArray<string> Working => [.. Evidence.Answers.Where(a => a.Seen == LoadClass.Works && Bench.Loads[a.Load].SeenFromSeat).GroupBy(a => a.Load).Where(g => Evidence.Answers.Where(a => a.Load == g.Key).All(a => a.Seen is LoadClass.Works or LoadClass.Off)).Select(g => Bench.Loads[g.Key].Called)];

    /// <summary>What a meter without error shows at a point, or null when there is no such point or state.</summary>
    public double? Read(string point, string state, bool toLive = false)
    {
        var p = Bench.Points.IndexOf(Bench.Points.FirstOrDefault(x => PointWords.Names(point, x.Name))!);
        var s = Bench.States.IndexOf(Bench.States.FirstOrDefault(x => x.Id == state)!);
        return p < 0 || s < 0 ? null : real.Volts(s, p, toLive);
    }

    /// <summary>True for the part that is at fault and for those that no reading tells from it.</summary>
    public bool IsRight(string part) => SuspectGroup.Of(Bench, ranking.Rank(Evidence), ranking.Faults.Length, 0).First(g => g.Suspects.Any(s => s.Fault == truth.Fault)).Suspects.Any(s => s.Fault.Part == part || s.Fault.Words == part);

    /// <summary>The test that tells most a minute, again and again, until one group is left.</summary>
    public ImmutableArray<KeyStep> Key()
    {
        var (evidence, steps, chooser) = (Evidence, ImmutableArray.CreateBuilder<KeyStep>(), new TestChooser(Bench));
        while (steps.Count < MostSteps)
        {
            var scores = ranking.Score(evidence);
            var ranked = ranking.Rank(scores);
            if (SuspectGroup.Of(Bench, ranked)[0].Probability >= Troubleshooter.Sure || chooser.Best(ranking.Rank(scores, TestChooser.Hedge), ranked, evidence) is not { } test)
            {
                break;
            }

            var shows = Do(test, ref evidence);
            steps.Add(new(test, shows, SuspectGroup.Of(Bench, ranking.Rank(evidence), least: 0.01).Length));
        }

        return steps.ToImmutable();
    }

    private string Do(NextTest test, ref Evidence evidence)
    {
        switch (test.Kind)
        {
            case TestKind.Fuse:
                var fuse = Bench.Plan.Fuses[test.Number].Id;
                var holds = !real.Solved.Blown.Contains(fuse);
                evidence = evidence with { Fuses = evidence.Fuses.Add(new(fuse, test.State, holds)) };
                return holds ? "holds" : "opens again";
            case TestKind.Look:
                var seen = LoadClasses.Of(real.Solved.Shares[test.State][test.Number], Bench.ShouldWork[test.State][test.Number]);
                evidence = evidence with { Answers = evidence.Answers.Add(new(test.Number, test.State, seen)) };
                return Bench.Loads[test.Number].Says(seen);
            default:
                var volts = (double)real.Volts(test.State, test.Number, test.Kind == TestKind.Lost);
                evidence = evidence with { Readings = evidence.Readings.Add(new(test.Number, test.State, test.Kind == TestKind.Lost, volts)) };
                return FormattableString.Invariant($"{volts:0.00} V");
        }
    }

    private static IEnumerable<(int State, int Load)> Symptoms(FaultBench bench, Prediction prediction) =>
        from s in Enumerable.Range(0, bench.States.Length)
        from l in Enumerable.Range(0, bench.Loads.Length)
        where LoadClasses.Of(prediction.Solved.Shares[s][l], bench.ShouldWork[s][l]) is not (LoadClass.Works or LoadClass.Off)
        select (s, l);

    private static Evidence Complaint(FaultBench bench, Prediction prediction) => new(
    [
        .. from s in Enumerable.Range(0, bench.States.Length)
           from l in Enumerable.Range(0, bench.Loads.Length)
           select new SeenAnswer(l, s, LoadClasses.Of(prediction.Solved.Shares[s][l], bench.ShouldWork[s][l])),
    ], [], []);
}
