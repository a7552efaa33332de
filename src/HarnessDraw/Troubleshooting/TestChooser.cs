using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>What can be tried next.</summary>
public enum TestKind
{
    /// <summary>Volts at a point against the grounded post.</summary>
    Volts,

    /// <summary>Volts lost from the battery's live post to a point.</summary>
    Lost,

    /// <summary>A new fuse: does it hold?</summary>
    Fuse,

    /// <summary>What does a load do?</summary>
    Look,
}

/// <summary>One outcome of a test: readings from <paramref name="LowV"/> to <paramref name="HighV"/> (or what is seen), how likely, and the faults it leaves, likeliest first.</summary>
public sealed record TestOutcome(double LowV, double HighV, string Words, double Probability, ImmutableArray<Suspect> Leaves);

/// <summary>A test with what it costs and how many bits it tells on the average.</summary>
public sealed record NextTest(TestKind Kind, int Number, int State, double Minutes, double Bits)
{
    public ImmutableArray<TestOutcome> Outcomes { get; init; } = [];

    public double Worth => Bits / Minutes;
}

/// <summary>Finds the test that tells most a minute.</summary>
public sealed class TestChooser(FaultBench bench)
{
    /// <summary>Minutes to bring about a state and set up the meter, beside getting at the point; to renew a fuse; to look at a load. Common practice, no source.</summary>
    public const double SetUpMinutes = 1;
    internal const double FuseMinutes = 1;
    internal const double LookMinutes = 0.5;

    /// <summary>How far the weights of the faults are believed when a test is chosen: they are rules of thumb, and a test should not pass over what is rare.</summary>
    public const double Hedge = 0.5;

    /// <summary>From this share of the most bits a minute on a test is as good as the best: the quickest of them is taken.</summary>
    internal const double AsGood = 0.99;

    /// <summary>Bits below which a test is not worth while.</summary>
    public const double LeastBits = 0.03;

    // what is rarer than this does not decide what to test
    internal const double LeastProbability = 2e-4;
    internal const int MostSuspects = 250;

    /// <summary>The best test, or null when none tells anything.</summary>
    /// <param name="hedged">The suspects with weights believed by <see cref="Hedge"/>: what the choice rests on.</param>
    /// <param name="ranked">The suspects as they are ranked: what the outcomes are told with.</param>
    /// <param name="evidence">What was found out: nothing is asked twice.</param>
    public NextTest? Best(ImmutableArray<Suspect> hedged, ImmutableArray<Suspect> ranked, Evidence evidence)
    {
        var cases = Cases(hedged);
        var read = evidence.Readings.Select(r => (r.Point, r.State, r.ToLive)).Concat(evidence.Skipped.SelectMany(r => new[] { (r.Point, r.State, true), (r.Point, r.State, false) })).ToHashSet();
        var seen = evidence.Answers.Select(a => (a.Load, a.State)).ToHashSet();
        var tried = evidence.Fuses.Select(f => f.Fuse).ToHashSet(StringComparer.Ordinal);
        var found = new List<NextTest>[bench.States.Length];
        var most = new MostWorth();
        SideBySide.For(found.Length, s => found[s] = GoodIn(cases, s, SourceVolts.SpreadAfter(evidence.Readings.Where(r => r.State == s).Select(r => r.Volts)), read, seen, most));
        var all = found.SelectMany(f => f).ToList();
        var blown = cases.SelectMany(c => c.Prediction.Solved.Blown).Distinct(StringComparer.Ordinal).Where(f => !tried.Contains(f)).Order(StringComparer.Ordinal);
        all.AddRange(blown.Select(f => Fuse(cases, f)));
        var top = all.Select(t => t.Worth).DefaultIfEmpty(0).Max();
        var chosen = all.Where(t => t.Bits >= LeastBits && t.Worth >= AsGood * top).OrderBy(t => t.Minutes).ThenBy(t => t.State).ThenBy(t => t.Kind).ThenBy(t => t.Number).FirstOrDefault();
        return chosen is null ? null : chosen with { Outcomes = Outcomes(Cases(ranked), chosen) };
    }

    private List<NextTest> GoodIn(Case[] cases, int state, double source, HashSet<(int, int, bool)> read, HashSet<(int, int)> seen, MostWorth most)
    {
        List<NextTest> good = [];
        var (values, bins) = (new double[cases.Length], new int[cases.Length]);
        void Consider(TestKind kind, int number, double minutes, double bits)
        {
            if (bits >= LeastBits && bits / minutes >= AsGood * most.Value)
            {
                good.Add(new(kind, number, state, minutes, bits));
                most.Raise(bits / minutes);
            }
        }

        var reading = new ReadingBits();
        var (at, sigma, ends) = (new double[cases.Length], new double[cases.Length], Ends(cases));
        double[] probability = [.. cases.Select(c => c.Probability)];
        var bound = new BitsBound(probability, ends);
        var live = bench.WithoutFault.LiveV[state];
        for (var p = 0; p < bench.Points.Length; p++)
        {
            foreach (var toLive in new[] { false, true })
            {
                if (read.Contains((p, state, toLive)) || bench.Points[p].UnderWrap)
                {
                    continue;
                }

                var (low, high) = (double.MaxValue, double.MinValue);
                for (var c = 0; c < cases.Length; c++)
                {
                    values[c] = cases[c].Prediction.Volts(state, p, toLive);
                    (low, high) = (Math.Min(low, values[c]), Math.Max(high, values[c]));
                }

                // most points show the same whatever is wrong
                if (!SuspectGroup.Parts(low, high))
                {
                    continue;
                }

                // what is less than a meter off lies where all does that the fault does not touch
                var sound = toLive ? live - bench.WithoutFault.Volts[state][p] : bench.WithoutFault.Volts[state][p];
                var minutes = bench.Points[p].Minutes + SetUpMinutes;
                var meter = Trust.MeterV(sound);
                if (bound.Of(values, sound, meter) < AsGood * most.Value * minutes)
                {
                    continue;
                }

                var (common, commonSigma) = Place(sound, sound, live, false, source);
                for (var c = 0; c < cases.Length; c++)
                {
                    (at[c], sigma[c]) = Math.Abs(values[c] - sound) < meter ? (common, commonSigma) : Place(values[c], sound, live, cases[c].Suspect.UnknownOhm, source);
                }

                Consider(toLive ? TestKind.Lost : TestKind.Volts, p, minutes, reading.Of(at, sigma, probability, ends, common, commonSigma));
            }
        }

        for (var l = 0; l < bench.Loads.Length; l++)
        {
            if (!seen.Contains((l, state)))
            {
                for (var c = 0; c < cases.Length; c++)
                {
                    bins[c] = (int)LoadClasses.Of(cases[c].Prediction.Solved.Shares[state][l], bench.ShouldWork[state][l]);
                }

                if (bins.AsSpan().ContainsAnyExcept(bins[0]))
                {
                    Consider(TestKind.Look, l, LookMinutes + SetUpMinutes, Bits(cases, bins));
                }
            }
        }

        return good;
    }

    // what the sources have is not known better than the readings so far tell it
    private static (double At, double Sigma) Place(double volts, double sound, double live, bool unknownOhm, double source)
    {
        var (sigma, moved) = (Trust.Sigma(volts, sound, live, unknownOhm), source * volts);
        return (Trust.Steps(volts), Math.Sqrt((sigma * sigma) + (moved * moved)) / Trust.MeterV(volts));
    }

    /// <summary>For each fault the case behind its last.</summary>
    private static int[] Ends(Case[] cases) => [.. Enumerable.Range(1, cases.Length).Where(i => i == cases.Length || !ReferenceEquals(cases[i].Suspect, cases[i - 1].Suspect))];

    private NextTest Fuse(Case[] cases, string fuse)
    {
        var bins = cases.Select(c => c.Prediction.Solved.Blown.Contains(fuse) ? 1 : 0).ToArray();
        var number = bench.Network.Plan.Fuses.Select((f, i) => (f.Id, i)).First(f => f.Id == fuse).i;
        return new(TestKind.Fuse, number, 0, FuseMinutes + SetUpMinutes, Bits(cases, bins));
    }

    /// <summary>Readings that a meter tells apart fall into different bins.</summary>
    private static void Bin(double[] values, int[] order, int[] bins)
    {
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        // ties keep the order of the cases: bins do not depend on it
        Array.Sort((double[])values.Clone(), order);
        var bin = 0;
        for (var i = 0; i < order.Length; i++)
        {
            if (i > 0 && SuspectGroup.Parts(values[order[i - 1]], values[order[i]]))
            {
                bin++;
            }

            bins[order[i]] = bin;
        }
    }

    /// <summary>What the outcome tells of the fault: entropy of the outcomes less what would still be open of them if the fault were known.</summary>
    private static double Bits(Case[] cases, int[] bins)
    {
        Span<double> masses = stackalloc double[64];
        masses.Clear();
        for (var c = 0; c < cases.Length; c++)
        {
            masses[bins[c] & 63] += cases[c].Probability;
        }

        var bits = 0.0;
        foreach (var mass in masses)
        {
            bits -= mass > 0 ? mass * Math.Log2(mass) : 0;
        }

        // variants of one fault follow one another
        for (var i = 0; i < cases.Length;)
        {
            var end = i;
            var whole = 0.0;
            for (; end < cases.Length && ReferenceEquals(cases[end].Suspect, cases[i].Suspect); end++)
            {
                whole += cases[end].Probability;
            }

            if (end - i > 1 && whole > 0)
            {
                bits -= whole * Entropy(cases, bins, i, end, whole);
            }

            i = end;
        }

        return bits;
    }

    private static double Entropy(Case[] cases, int[] bins, int from, int to, double whole)
    {
        var entropy = 0.0;
        for (var i = from; i < to; i++)
        {
            var mass = 0.0;
            var first = true;
            for (var j = from; j < to; j++)
            {
                first &= j >= i || bins[j] != bins[i];
                mass += bins[j] == bins[i] ? cases[j].Probability / whole : 0;
            }

            entropy -= first && mass > 0 ? mass * Math.Log2(mass) : 0;
        }

        return entropy;
    }

    private ImmutableArray<TestOutcome> Outcomes(Case[] cases, NextTest test)
    {
        var (values, order, bins) = (new double[cases.Length], new int[cases.Length], new int[cases.Length]);
        for (var c = 0; c < cases.Length; c++)
        {
            var p = cases[c].Prediction;
            values[c] = test.Kind switch
            {
                TestKind.Volts => p.Volts(test.State, test.Number),
                TestKind.Lost => p.Volts(test.State, test.Number, true),
                TestKind.Fuse => p.Solved.Blown.Contains(bench.Network.Plan.Fuses[test.Number].Id) ? 1 : 0,
                _ => (int)LoadClasses.Of(p.Solved.Shares[test.State][test.Number], bench.ShouldWork[test.State][test.Number]),
            };
            bins[c] = (int)values[c];
        }

        if (test.Kind is TestKind.Volts or TestKind.Lost)
        {
            Bin(values, order, bins);
        }

        return
        [
            .. Enumerable.Range(0, cases.Length).GroupBy(c => bins[c]).Select(g =>
            {
                var leaves = g.GroupBy(c => cases[c].Suspect, ReferenceEqualityComparer.Instance).Select(s => ((Suspect)s.Key!) with { Probability = s.Sum(c => cases[c].Probability) }).OrderByDescending(s => s.Probability);
                var words = test.Kind switch
                {
                    TestKind.Fuse => values[g.First()] > 0 ? "opens again" : "holds",
                    TestKind.Look => ((LoadClass)(int)values[g.First()]).Words(),
                    _ => "",
                };
                return new TestOutcome(g.Min(c => values[c]), g.Max(c => values[c]), words, g.Sum(c => cases[c].Probability), [.. leaves]);
            }).OrderByDescending(o => o.Probability),
        ];
    }

    private static Case[] Cases(ImmutableArray<Suspect> ranked)
    {
        List<Case> cases = [];
        foreach (var suspect in ranked.Take(MostSuspects).Where((s, i) => i == 0 || s.Probability >= LeastProbability))
        {
            for (var v = 0; v < suspect.Predictions.Length; v++)
            {
                cases.Add(new(suspect, suspect.Predictions[v], suspect.OfVariant[v]));
            }
        }

        var sum = cases.Sum(c => c.Probability);
        return [.. cases.Select(c => c with { Probability = c.Probability / sum })];
    }

    private sealed record Case(Suspect Suspect, Prediction Prediction, double Probability);
}
