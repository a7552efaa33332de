using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>Holds one prediction against what was noted, in words.</summary>
internal static class Reasons
{
    private const double FarSigmas = 4;

    public static (ImmutableArray<string> Explains, ImmutableArray<string> Not) Of(FaultBench bench, Prediction prediction, bool unknownOhm, Evidence evidence)
    {
        var (explains, not) = (ImmutableArray.CreateBuilder<string>(), ImmutableArray.CreateBuilder<string>());
        foreach (var load in evidence.Answers.GroupBy(a => (a.Load, a.Seen)))
        {
            var fits = load.Where(a => Fits(bench, prediction, unknownOhm, a)).ToList();
            var words = $"{bench.Loads[load.Key.Load].Name} {load.Key.Seen.Words()}";
            if (fits.Count == load.Count())
            {
                explains.Add(words);
            }
            else
            {
                var states = load.Except(fits).Select(a => bench.States[a.State].Id).Distinct(StringComparer.Ordinal);
                not.Add($"{words} ({string.Join(", ", states)})");
            }
        }

        foreach (var r in evidence.Readings)
        {
            var predicted = prediction.Volts(r.State, r.Point, r.ToLive);
            var sound = r.ToLive ? bench.WithoutFault.LiveV[r.State] - bench.WithoutFault.Volts[r.State][r.Point] : bench.WithoutFault.Volts[r.State][r.Point];
            var words = FormattableString.Invariant($"{r.Volts:0.00} V{(r.ToLive ? " from the battery" : "")} at {bench.Points[r.Point].Name} ({bench.States[r.State].Id}; {predicted:0.00} V expected so)");
            (Math.Abs(r.Volts - predicted) > FarSigmas * Trust.Sigma(predicted, sound, bench.WithoutFault.LiveV[r.State], unknownOhm) ? not : explains).Add(words);
        }

        foreach (var f in evidence.Fuses)
        {
            (f.Holds == prediction.Solved.Blown.Contains(f.Fuse) ? not : explains).Add($"a new fuse {f.Fuse} {(f.Holds ? "holds" : "opens")}");
        }

        return (explains.ToImmutable(), not.ToImmutable());
    }

    /// <summary>True when the fault lets people see it, with one of the ohms that it may have.</summary>
    public static bool Fits(FaultBench bench, Prediction prediction, bool unknownOhm, SeenAnswer answer)
    {
        var (share, should) = (prediction.Solved.Shares[answer.State][answer.Load], bench.ShouldWork[answer.State][answer.Load]);
        var moved = unknownOhm ? Trust.OhmBlur * Math.Abs(share - (should ? 1 : 0)) : 0;
        return Trust.Quantiles.Any(q => Trust.LogAnswer(answer.Seen, share + (q * moved), should) > Math.Log(0.1));
    }
}
