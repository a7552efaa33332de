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
            var words = $"{bench.Loads[load.Key.Load].Called} {bench.Loads[load.Key.Load].Says(load.Key.Seen)}";
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

        var shares = SourceFit.Of(bench, prediction, unknownOhm, evidence.Readings);
        foreach (var r in evidence.Readings)
        {
            var share = shares[r.State];
            var predicted = share * prediction.Volts(r.State, r.Point, r.ToLive);
            var words = FormattableString.Invariant($"{r.Volts:0.00} V{(r.ToLive ? " from the battery" : "")} at {bench.Points[r.Point].Called} ({bench.States[r.State].Id}; {predicted:0.00} V expected so)");
            var sigma = Trust.Sigma(predicted, share * bench.SoundV(r.State, r.Point, r.ToLive), share * bench.WithoutFault.LiveV[r.State], unknownOhm);
            (Math.Abs(r.Volts - predicted) > FarSigmas * sigma ? not : explains).Add(words);
        }

        foreach (var f in evidence.Fuses)
        {
            (f.Holds == prediction.Solved.Blown.Contains(f.Fuse) ? not : explains).Add($"a new fuse {f.Fuse} {(f.Holds ? "holds" : "opens")}");
        }

        return (explains.ToImmutable(), not.ToImmutable());
    }

    /// <summary>States whose sources must have had other volts than were solved, for the readings to be explained.</summary>
    public static IEnumerable<string> Sources(FaultBench bench, Prediction prediction, bool unknownOhm, Evidence evidence)
    {
        var shares = SourceFit.Of(bench, prediction, unknownOhm, evidence.Readings);
        for (var s = 0; s < shares.Length; s++)
        {
            var live = prediction.Solved.LiveV[s];
            if (SuspectGroup.Parts(live, shares[s] * live))
            {
                yield return FormattableString.Invariant($"The readings in '{bench.States[s].Id}' suit {shares[s] * live:0.0} V at the battery, where {live:0.0} V was worked out: volts there are judged by that.");
            }
        }
    }

    /// <summary>True when the fault lets people see it, with one of the ohms that it may have.</summary>
    public static bool Fits(FaultBench bench, Prediction prediction, bool unknownOhm, SeenAnswer answer)
    {
        var (share, should) = (prediction.Solved.Shares[answer.State][answer.Load], bench.ShouldWork[answer.State][answer.Load]);
        var moved = unknownOhm ? Trust.OhmBlur * Math.Abs(share - (should ? 1 : 0)) : 0;
        return Trust.Quantiles.Any(q => Trust.LogAnswer(answer.Seen, share + (q * moved), should) > Math.Log(0.1));
    }
}
