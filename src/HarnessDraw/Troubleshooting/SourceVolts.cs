using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>
/// The volts of a vehicle's sources in a state, as a share of those that were solved: nobody knows them, and every reading of the state moves with them. A 12 V battery at rest shows 12.0 to
/// 12.8 V and is solved with 12.6; regulators hold 13.5 to 14.8 V and are solved with 14.1, less what the wires lose; a battery that cranks differs more. Common practice, no source, as is that
/// shares near one are likelier: a normal distribution cut off at two standard deviations.
/// </summary>
internal static class SourceVolts
{
    /// <summary>Standard deviation, and how far apart the shares are that are tried: finer than a meter tells.</summary>
    internal const double Spread = 0.04;
    internal const double Step = 0.005;
    internal const int Half = 16;

    internal static readonly ImmutableArray<double> Shares = [.. Enumerable.Range(-Half, (2 * Half) + 1).Select(i => 1 + (i * Step))];
    private static readonly double[] LogWeights = Weights();

    /// <summary>Logarithm of the likelihood of a reading, by share of the solved volts.</summary>
    public static double[] Logs(double readV, double predictedV, double soundV, double liveV, bool unknownOhm, double[] elsewhere)
    {
        var logs = new double[Shares.Length];
        for (var i = 0; i < logs.Length; i++)
        {
            var share = Shares[i];
            logs[i] = Trust.LogReading(readV, share * predictedV, share * soundV, share * liveV, unknownOhm, elsewhere[i]);
        }

        return logs;
    }

    /// <summary>Logarithm of the mean likelihood over all shares, each as likely as it is.</summary>
    public static double LogMean(double[] logs)
    {
        var most = double.MinValue;
        for (var i = 0; i < logs.Length; i++)
        {
            most = Math.Max(most, logs[i] + LogWeights[i]);
        }

        var sum = 0.0;
        for (var i = 0; i < logs.Length; i++)
        {
            sum += Math.Exp(logs[i] + LogWeights[i] - most);
        }

        return most + Math.Log(sum);
    }

    /// <summary>The share that suits all readings of a state best, nearest to one of equals.</summary>
    public static double Best(double[] logs)
    {
        var best = Half;
        for (var i = 0; i < logs.Length; i++)
        {
            var gain = logs[i] + LogWeights[i] - logs[best] - LogWeights[best];
            best = gain > 1e-9 ? i : best;
        }

        return Shares[best];
    }

    /// <summary>Standard deviation of the share once some readings of the state are known: one that shows volts tells it as well as a meter does.</summary>
    public static double SpreadAfter(IEnumerable<double> readings)
    {
        var precision = 1 / (Spread * Spread);
        foreach (var volts in readings)
        {
            var relative = Math.Abs(volts) / (Trust.MeterShare * Trust.MeterV(volts));
            precision += relative * relative;
        }

        return 1 / Math.Sqrt(precision);
    }

    private static double[] Weights()
    {
        double[] weights = [.. Shares.Select(s => Math.Exp(-(s - 1) * (s - 1) / (2 * Spread * Spread)))];
        var sum = weights.Sum();
        return [.. weights.Select(w => Math.Log(w / sum))];
    }
}
