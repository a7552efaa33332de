using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>A fault with what it does, solved, and how likely it is after everything that was found out (all faults together: 1).</summary>
public sealed record Suspect(Fault Fault, ImmutableArray<Prediction> Predictions, double Probability)
{
    /// <summary>Share of each variant in the probability.</summary>
    public ImmutableArray<double> OfVariant { get; init; } = [];

    public bool UnknownOhm => Fault.Kind == FaultKind.HighResistance;
}

/// <summary>The faults of a vehicle, solved, and held against what was found out.</summary>
public sealed class FaultRanking
{
    private readonly FaultBench bench;

    public FaultRanking(FaultBench bench, ImmutableArray<Fault> faults)
    {
        this.bench = bench;
        // each distinct case once, side by side; what comes out does not depend on the order
        var distinct = faults.SelectMany(f => f.Variants).DistinctBy(v => v.Key).ToArray();
        Parallel.For(0, distinct.Length, i => bench.Predict(distinct[i]));
        Faults = [.. faults.Select(f => new Suspect(f, [.. f.Variants.Select(v => bench.Predict(v))], 0))];
    }

    public ImmutableArray<Suspect> Faults { get; }

    /// <summary>Most likely first; ties in the order of the list.</summary>
    /// <param name="evidence">What was found out.</param>
    /// <param name="trust">How far the weights are believed: 1 as they are, 0 not at all.</param>
    public ImmutableArray<Suspect> Rank(Evidence evidence, double trust = 1)
    {
        double[] elsewhere = [.. evidence.Readings.Select(bench.ShareOfPoints)];
        var logs = Faults.Select(f => Logs(f, evidence, elsewhere, trust)).ToArray();
        var most = logs.SelectMany(l => l).DefaultIfEmpty(0).Max();
        var masses = logs.Select(l => l.Select(x => Math.Exp(x - most)).ToArray()).ToArray();
        var sum = masses.Sum(m => m.Sum());
        return
        [
            .. Faults.Select((f, i) => f with { Probability = masses[i].Sum() / sum, OfVariant = [.. masses[i].Select(m => m / sum)] })
                .OrderByDescending(s => s.Probability),
        ];
    }

    /// <summary>Logarithm of weight times likelihood, for each variant.</summary>
    private double[] Logs(Suspect suspect, Evidence evidence, double[] elsewhere, double trust)
    {
        var logs = new double[suspect.Predictions.Length];
        for (var v = 0; v < logs.Length; v++)
        {
            logs[v] = (trust * Math.Log(suspect.Fault.Weight)) - Math.Log(logs.Length) + Log(suspect.Predictions[v], suspect.UnknownOhm, evidence, elsewhere);
        }

        return logs;
    }

    private double Log(Prediction prediction, bool unknownOhm, Evidence evidence, double[] elsewhere)
    {
        var sum = 0.0;
        foreach (var (load, state, seen) in evidence.Answers)
        {
            sum += Trust.LogAnswer(seen, prediction.Solved.Shares[state][load], bench.ShouldWork[state][load], unknownOhm);
        }

        for (var r = 0; r < elsewhere.Length; r++)
        {
            var (point, state, toLive, volts) = evidence.Readings[r];
            sum += Trust.LogReading(volts, prediction.Volts(state, point, toLive), SoundV(state, point, toLive), bench.WithoutFault.LiveV[state], unknownOhm, elsewhere[r]);
        }

        foreach (var (fuse, _, holds) in evidence.Fuses)
        {
            sum += Trust.LogFuse(holds, !prediction.Solved.Blown.Contains(fuse));
        }

        return sum;
    }

    private double SoundV(int state, int point, bool toLive) =>
        toLive ? bench.WithoutFault.LiveV[state] - bench.WithoutFault.Volts[state][point] : bench.WithoutFault.Volts[state][point];
}
