using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace HarnessDraw.Troubleshooting;

/// <summary>A fault with what it does, solved, and how likely it is after everything that was found out (all faults together: 1).</summary>
public sealed record Suspect(Fault Fault, ImmutableArray<Prediction> Predictions, double Probability)
{
    /// <summary>Share of each variant in the probability.</summary>
    public ImmutableArray<double> OfVariant { get; init; } = [];

    public bool UnknownOhm => Fault.Kind == FaultKind.HighResistance;
}

/// <summary>What was found out, held against every fault: logarithm of the likelihood of what loads do and of what was measured, by fault and variant. <see cref="FaultRanking.Score"/> goes on from it.</summary>
public sealed record FaultScores(Evidence Of, ImmutableArray<double[]> Seen, ImmutableArray<MeasuredScore[]> Measured);

/// <summary>
/// Logarithm of the likelihood of all that was measured; <paramref name="Fuses"/> is that of the fuses alone, <paramref name="ByState"/> that of the readings of each state by the volts that its
/// sources may have (<see cref="SourceVolts"/>; null: nothing was read there).
/// </summary>
public sealed record MeasuredScore(double Log, double Fuses, ImmutableArray<double[]?> ByState);

/// <summary>The faults of a vehicle, solved, and held against what was found out.</summary>
public sealed class FaultRanking
{
    // share of what a load should do that nobody sees
    private const double LeastMoved = 1e-3;
    private readonly FaultBench bench;

    public FaultRanking(FaultBench bench, ImmutableArray<Fault> faults)
    {
        this.bench = bench;
        // each distinct case once, side by side; what comes out does not depend on the order
        var distinct = faults.SelectMany(f => f.Variants).DistinctBy(v => v.Key).ToArray();
        SideBySide.For(distinct.Length, i => bench.Predict(distinct[i]));
        Faults = [.. faults.Select(f => new Suspect(f, [.. f.Variants.Select(v => bench.Predict(v))], 0))];
    }

    private FaultRanking(FaultBench bench, ImmutableArray<Suspect> faults)
    {
        this.bench = bench;
        Faults = faults;
    }

    public ImmutableArray<Suspect> Faults { get; }

    /// <summary>
    /// The faults that change the class of a load that is complained of where it is complained of; where none is, the volts at a point that reads otherwise than it
    /// should. What moves nothing of that is no explanation, however often it happens. All where none does.
    /// </summary>
    public FaultRanking Moving(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var complaints = evidence.Answers.Where(a => a.Seen is not (LoadClass.Works or LoadClass.Off)).ToArray();
        var off = complaints.Length > 0 ? [] : Off(evidence);
        bool Moves(Prediction p) =>
            complaints.Any(a => LoadClasses.Of(p.Solved.Shares[a.State][a.Load], bench.ShouldWork[a.State][a.Load]) is not (LoadClass.Works or LoadClass.Off))
            || off.Any(r => SuspectGroup.Parts(p.Volts(r.State, r.Point, r.ToLive), SoundV(r.State, r.Point, r.ToLive)));
        ImmutableArray<Suspect> moving = [.. Faults.Where(f => f.Predictions.Any(Moves))];
        return moving.IsEmpty ? this : new(bench, moving);
    }

    /// <summary>Most likely first; ties in the order of the list.</summary>
    /// <param name="evidence">What was found out.</param>
    /// <param name="trust">How far the weights are believed: 1 as they are, 0 not at all.</param>
    public ImmutableArray<Suspect> Rank(Evidence evidence, double trust = 1) => Rank(Score(evidence), trust);

    /// <inheritdoc cref="Rank(Evidence, double)"/>
    public ImmutableArray<Suspect> Rank(FaultScores scores, double trust = 1)
    {
        ArgumentNullException.ThrowIfNull(scores);
        var masses = Faults.Select((f, i) => scores.Seen[i].Zip(scores.Measured[i], (seen, measured) => seen + measured.Log + (trust * Math.Log(f.Fault.Weight)) - Math.Log(f.Predictions.Length)).ToArray()).ToArray();
        var most = masses.SelectMany(l => l).DefaultIfEmpty(0).Max();
        var sum = 0.0;
        foreach (var logs in masses)
        {
            for (var v = 0; v < logs.Length; v++)
            {
                sum += logs[v] = Math.Exp(logs[v] - most);
            }
        }

        return
        [
            .. Faults.Select((f, i) => f with { Probability = masses[i].Sum() / sum, OfVariant = [.. masses[i].Select(m => m / sum)] })
                .OrderByDescending(s => s.Probability),
        ];
    }

    /// <summary>Holds what was found out against every fault.</summary>
    /// <param name="evidence">What was found out.</param>
    /// <param name="before">Scores of the same without its last notes: only those are held against the faults.</param>
    public FaultScores Score(Evidence evidence, FaultScores? before = null)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var known = before?.Of ?? Evidence.Nothing;
        var readings = evidence.Readings.AsSpan()[known.Readings.Length..].ToArray();
        var fuses = evidence.Fuses.AsSpan()[known.Fuses.Length..].ToArray();
        ReadingScores[] since = [.. readings.Select(r => new ReadingScores(bench, r))];
        var (seen, measured) = (before?.Of.Answers.Length == evidence.Answers.Length ? before.Seen : Seen(evidence), new MeasuredScore[Faults.Length][]);
        var nothing = new MeasuredScore(0, 0, [.. new double[]?[bench.States.Length]]);
        for (var f = 0; f < measured.Length; f++)
        {
            measured[f] = new MeasuredScore[Faults[f].Predictions.Length];
            for (var v = 0; v < measured[f].Length; v++)
            {
                measured[f][v] = Measured(before?.Measured[f][v] ?? nothing, Faults[f].Predictions[v], Faults[f].UnknownOhm, since, fuses);
            }
        }

        return new(evidence, seen, ImmutableCollectionsMarshal.AsImmutableArray(measured));
    }

    /// <summary>Of faults that are one to the network the loads do the same.</summary>
    private ImmutableArray<double[]> Seen(Evidence evidence)
    {
        var known = new Dictionary<(SolvedFault, bool), double>();
        double Log(SolvedFault solved, bool unknownOhm) => known.TryGetValue((solved, unknownOhm), out var log) ? log : known[(solved, unknownOhm)] = Answers(solved, unknownOhm, evidence);
        return [.. Faults.Select(f => Array.ConvertAll([.. f.Predictions], p => Log(p.Solved, f.UnknownOhm)))];
    }

    /// <summary>
    /// Ohms that nobody knows move all loads together: the answers are held against five equally likely ohms (<see cref="Trust.Quantiles"/>), and the mean counts.
    /// </summary>
    private double Answers(SolvedFault solved, bool unknownOhm, Evidence evidence)
    {
        Span<double> logs = stackalloc double[Trust.Quantiles.Length];
        logs.Clear();
        var all = 0.0;
        foreach (var (load, state, seen) in evidence.Answers)
        {
            var (share, should) = (solved.Shares[state][load], bench.ShouldWork[state][load]);
            var moved = unknownOhm ? Trust.OhmBlur * Math.Abs(share - (should ? 1 : 0)) : 0;
            if (moved < LeastMoved)
            {
                all += Trust.LogAnswer(seen, share, should);
                continue;
            }

            for (var q = 0; q < logs.Length; q++)
            {
                logs[q] += Trust.LogAnswer(seen, share + (Trust.Quantiles[q] * moved), should);
            }
        }

        var (most, sum) = (logs[0], 0.0);
        foreach (var log in logs)
        {
            most = Math.Max(most, log);
        }

        foreach (var log in logs)
        {
            sum += Math.Exp(log - most);
        }

        return all + most + Math.Log(sum / logs.Length);
    }

    private static MeasuredScore Measured(MeasuredScore before, Prediction prediction, bool unknownOhm, ReadingScores[] readings, FuseTry[] tries)
    {
        var fuses = before.Fuses;
        foreach (var (fuse, _, holds) in tries)
        {
            fuses += Trust.LogFuse(holds, !prediction.Solved.Blown.Contains(fuse));
        }

        var byState = before.ByState;
        foreach (var reading in readings)
        {
            var logs = reading.Of(prediction, unknownOhm);
            byState = byState.SetItem(reading.State, byState[reading.State] is { } known ? [.. known.Zip(logs, (a, b) => a + b)] : logs);
        }

        return new(fuses + byState.Sum(logs => logs is null ? 0 : SourceVolts.LogMean(logs)), fuses, byState);
    }

    /// <summary>Readings that are not those of the sound vehicle, whatever its sources have; where they may all be, those that are off with the sources as solved.</summary>
    private MeterReading[] Off(Evidence evidence)
    {
        var share = SourceFit.Of(bench, new(bench.WithoutFault, -1, -1, WireSpot.Copper), false, evidence.Readings);
        MeterReading[] off = [.. evidence.Readings.Where(r => SuspectGroup.Parts(r.Volts, share[r.State] * SoundV(r.State, r.Point, r.ToLive)))];
        return off.Length > 0 ? off : [.. evidence.Readings.Where(r => SuspectGroup.Parts(r.Volts, SoundV(r.State, r.Point, r.ToLive)))];
    }

    private double SoundV(int state, int point, bool toLive) =>
        bench.SoundV(state, point, toLive);
}
