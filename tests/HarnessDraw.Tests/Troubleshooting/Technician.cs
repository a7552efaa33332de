using System.Collections.Concurrent;
using System.Collections.Immutable;
using HarnessDraw.Planning;
using HarnessDraw.Tracing;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Tests.Troubleshooting;

/// <summary>How one search for a fault went.</summary>
internal sealed record Search(string Fault, bool FirstAtOnce, bool FirstInThree, bool FirstAtLast, int Tests, double Minutes, int GroupSize, int HalfSplitTests, double HalfSplitMinutes)
{
    /// <summary>Tests after which the true fault first stood in the first group; -1: never.</summary>
    public int FoundAfter { get; init; } = -1;

    /// <summary>How likely the group of the true fault was after each test, and what stood first instead.</summary>
    public ImmutableArray<string> Course { get; init; } = [];
}

/// <summary>
/// A simulated technician at a vehicle with one fault: goes through all states and loads, looks twice at whatever is not as it should be, then does
/// the tests that are proposed. The meter is off by up to 1 % and 20 mV; two answers in a hundred, of any kind, are wrong.
/// </summary>
internal sealed class Technician
{
    private const double Sure = 0.98;
    private const int MostTests = 8;
    private readonly FaultBench bench;
    private readonly FaultRanking ranking;
    private readonly TestChooser chooser;
    private readonly Plan plan;
    private readonly double sourceOff;
    private readonly CircuitTracer tracer;
    private readonly Dictionary<string, int> pointByName;
    private readonly ConcurrentDictionary<string, ImmutableArray<int>> chains = new(StringComparer.Ordinal); // searches run side by side

    /// <param name="plan">The vehicle.</param>
    /// <param name="sourceOff">How far the volts of its sources may lie off those that were solved, as a share, evenly, in each state by itself.</param>
    public Technician(Plan plan, double sourceOff = 0)
    {
        this.plan = plan;
        this.sourceOff = sourceOff;
        bench = new(plan);
        tracer = new(plan.For(bench.Build));
        ranking = new(bench, bench.Faults(FaultWeights.InService));
        chooser = new(bench);
        pointByName = bench.Points.Select((p, i) => (p.Name, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
    }

    public FaultBench Bench => bench;
    public FaultRanking Ranking => ranking;

    /// <summary>Every fault as one of its variants does it, where at least one load changes its class in a state.</summary>
    public IEnumerable<(Suspect Fault, int Variant)> Observable() =>
        from fault in ranking.Faults
        from v in Enumerable.Range(0, fault.Predictions.Length)
        where Symptoms(fault.Predictions[v]).Any()
        select (fault, v);

    public IEnumerable<(int State, int Load, LoadClass Seen)> Symptoms(Prediction prediction) =>
        from s in Enumerable.Range(0, bench.States.Length)
        from l in Enumerable.Range(0, bench.Loads.Length)
        let seen = LoadClasses.Of(prediction.Solved.Shares[s][l], bench.ShouldWork[s][l])
        where seen != (bench.ShouldWork[s][l] ? LoadClass.Works : LoadClass.Off)
        select (s, l, seen);

    public Search Find(Suspect truth, int variant, ulong seed, Prediction? other = null)
    {
        var numbers = new SeededNumbers(seed);
        double[] source = [.. bench.States.Select(_ => sourceOff > 0 ? 1 + (sourceOff * ((2 * numbers.Next()) - 1)) : 1)];
        var real = other ?? truth.Predictions[variant];
        var evidence = Complaint(real, numbers);
        var (minutes, tests, found) = (0.0, 0, -1);
        var (atOnce, inThree) = (false, false);
        var course = ImmutableArray.CreateBuilder<string>();
        FaultScores? scores = null;
        while (true)
        {
            scores = ranking.Score(evidence, scores);
            var ranked = ranking.Rank(scores);
            var groups = SuspectGroup.Of(bench, ranked);
            var first = groups[0].Suspects.Any(s => s.Fault == truth.Fault);
            atOnce |= tests == 0 && first;
            inThree = tests <= 3 ? first : inThree;
            found = found < 0 && first ? tests : found;
            course.Add(FormattableString.Invariant($"{ranked.First(s => s.Fault == truth.Fault).Probability:0.000} of {groups.FirstOrDefault(g => g.Suspects.Any(s => s.Fault == truth.Fault))?.Probability ?? 0:0.000}; first {groups[0].Suspects[0].Fault.Words} ({groups[0].Suspects.Length}, {groups[0].Probability:0.000})"));
            var next = groups[0].Probability >= Sure || tests >= MostTests ? null : chooser.Best(ranking.Rank(scores, TestChooser.Hedge), ranked, evidence);
            if (next is null)
            {
                var (splits, splitMinutes) = HalfSplit(real, source, evidence, numbers);
                return new(truth.Fault.Words, atOnce, inThree, first, tests, minutes, groups[0].Suspects.Length, splits, splitMinutes) { FoundAfter = found, Course = course.ToImmutable() };
            }

            course[^1] += $" -> {next.Kind} {(next.Kind is TestKind.Volts or TestKind.Lost ? bench.Points[next.Number].Name : next.Number.ToString(System.Globalization.CultureInfo.InvariantCulture))} @ {bench.States[next.State].Id} {next.Bits:0.00} bits {next.Minutes} min";
            evidence = Do(next, real, source, evidence, numbers);
            minutes += next.Minutes;
            tests++;
        }
    }

    /// <summary>A round through all states; what is not as it should be is looked at again; a round that finds nothing is made again, for something was complained of.</summary>
    private Evidence Complaint(Prediction real, SeededNumbers numbers)
    {
        for (var round = 0; ; round++)
        {
            var answers = ImmutableArray.CreateBuilder<SeenAnswer>();
            var complaint = false;
            for (var s = 0; s < bench.States.Length; s++)
            {
                for (var l = 0; l < bench.Loads.Length; l++)
                {
                    var should = bench.ShouldWork[s][l];
                    var seen = Told(LoadClasses.Of(real.Solved.Shares[s][l], should), should, numbers);
                    answers.Add(new(l, s, seen));
                    if (seen is not (LoadClass.Works or LoadClass.Off))
                    {
                        answers.Add(new(l, s, Told(LoadClasses.Of(real.Solved.Shares[s][l], should), should, numbers)));
                        complaint |= answers[^1].Seen is not (LoadClass.Works or LoadClass.Off);
                    }
                }
            }

            if (complaint || round == 4)
            {
                return new(answers.ToImmutable(), [], []);
            }
        }
    }

    private static LoadClass Told(LoadClass right, bool should, SeededNumbers numbers)
    {
        if (numbers.Next() >= Trust.Wrong)
        {
            return right;
        }

        LoadClass[] others = should ? [LoadClass.Works, LoadClass.Dim, LoadClass.Dead] : [LoadClass.OnWrongly, LoadClass.Off];
        var wrong = others.Where(o => o != right).ToArray();
        return wrong[numbers.Below(wrong.Length)];
    }

    private Evidence Do(NextTest test, Prediction real, double[] source, Evidence evidence, SeededNumbers numbers)
    {
        switch (test.Kind)
        {
            case TestKind.Fuse:
                var fuse = plan.Fuses[test.Number].Id;
                var holds = !real.Solved.Blown.Contains(fuse);
                return evidence with { Fuses = evidence.Fuses.Add(new(fuse, test.State, numbers.Next() < Trust.Wrong ? !holds : holds)) };
            case TestKind.Look:
                var should = bench.ShouldWork[test.State][test.Number];
                return evidence with { Answers = evidence.Answers.Add(new(test.Number, test.State, Told(LoadClasses.Of(real.Solved.Shares[test.State][test.Number], should), should, numbers))) };
            default:
                var toLive = test.Kind == TestKind.Lost;
                return evidence with { Readings = evidence.Readings.Add(new(test.Number, test.State, toLive, Read(real, source, test.State, test.Number, toLive, numbers))) };
        }
    }

    // a wrong reading is one taken at some other point
    private double Read(Prediction real, double[] source, int state, int point, bool toLive, SeededNumbers numbers)
    {
        var at = numbers.Next() < Trust.Wrong ? numbers.Below(bench.Points.Length) : point;
        var volts = source[state] * real.Volts(state, at, toLive);
        return volts + (Trust.MeterV(volts) * ((2 * numbers.Next()) - 1));
    }

    /// <summary>
    /// Plain half-splitting, for comparison: on the way from source to load to ground of the first load that is not as it should be, always the middle point of
    /// what is left, whatever it costs to get there. A reading as it should be clears the feed up to there; behind the load, raised volts say that the return is bad further on.
    /// </summary>
    private (int Tests, double Minutes) HalfSplit(Prediction real, double[] source, Evidence evidence, SeededNumbers numbers)
    {
        var complaint = evidence.Answers.FirstOrDefault(a => a.Seen is not (LoadClass.Works or LoadClass.Off), new(-1, 0, LoadClass.Works));
        if (complaint.Load < 0)
        {
            return (0, 0);
        }

        var load = bench.Loads[complaint.Load];
        var chain = Chain(load);
        var (low, high, tests, minutes) = (-1, chain.Length, 0, 0.0);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            var point = chain[middle];
            var sound = bench.WithoutFault.Volts[complaint.State][point];
            var read = Read(real, source, complaint.State, point, false, numbers);
            var deviates = Math.Abs(read - sound) > (2 * Trust.MeterV(sound)) + 0.3;
            var returns = Math.Abs(sound) < 0.5 * Math.Abs(bench.WithoutFault.LiveV[complaint.State]);
            if (deviates != returns)
            {
                high = middle;
            }
            else
            {
                low = middle;
            }

            tests++;
            minutes += bench.Points[point].Minutes + TestChooser.SetUpMinutes;
        }

        return (tests, minutes);
    }

    private ImmutableArray<int> Chain(SeenLoad load)
    {
        if (!chains.TryGetValue(load.Name, out var chain))
        {
            var ways = load.Circuit is { } circuit ? tracer.Of(circuit).Value?.Ways ?? [] : [];
            var way = ways.FirstOrDefault(w => w.Stops.Any(s => s.Node.StartsWith(load.Thing + ".", StringComparison.Ordinal))) ?? ways.FirstOrDefault();
            chain = way is null ? [] : [.. way.Stops.Where(s => pointByName.ContainsKey(s.Node)).Select(s => pointByName[s.Node]).Distinct()];
            chains[load.Name] = chain;
        }

        return chain;
    }
}
