using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>One reading held against predictions, whatever the sources have; what predicts the same volts is reckoned once.</summary>
internal sealed class ReadingScores(FaultBench bench, MeterReading reading)
{
    private readonly Dictionary<(float Volts, bool UnknownOhm), double[]> known = [];
    private readonly double soundV = bench.SoundV(reading.State, reading.Point, reading.ToLive);
    private readonly double[] elsewhere = [.. SourceVolts.Shares.Select(s => bench.ShareOfPoints(reading, s))];

    public int State => reading.State;

    /// <summary>Logarithm of the likelihood, by share of the solved volts of the sources.</summary>
    public double[] Of(Prediction prediction, bool unknownOhm)
    {
        var volts = prediction.Volts(reading.State, reading.Point, reading.ToLive);
        return known.TryGetValue((volts, unknownOhm), out var logs) ? logs
            : known[(volts, unknownOhm)] = SourceVolts.Logs(reading.Volts, volts, soundV, bench.WithoutFault.LiveV[reading.State], unknownOhm, elsewhere);
    }
}

/// <summary>What the sources of each state had when its readings were taken, as far as one prediction explains them.</summary>
internal static class SourceFit
{
    /// <summary>By state the share of the solved volts that suits the readings best; 1 where nothing was read.</summary>
    public static ImmutableArray<double> Of(FaultBench bench, Prediction prediction, bool unknownOhm, ImmutableArray<MeterReading> readings)
    {
        var shares = Enumerable.Repeat(1.0, bench.States.Length).ToArray();
        foreach (var state in readings.GroupBy(r => r.State))
        {
            var sum = new double[SourceVolts.Shares.Length];
            foreach (var reading in state)
            {
                var logs = new ReadingScores(bench, reading).Of(prediction, unknownOhm);
                for (var i = 0; i < sum.Length; i++)
                {
                    sum[i] += logs[i];
                }
            }

            shares[state.Key] = SourceVolts.Best(sum);
        }

        return [.. shares];
    }
}
