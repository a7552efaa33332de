using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>Faults that no load, no reading at any point and no fuse can tell apart without unplugging something or opening the wrap.</summary>
public sealed record SuspectGroup(ImmutableArray<Suspect> Suspects)
{
    public double Probability => Suspects.Sum(s => s.Probability);

    /// <summary>Groups of the likeliest faults, likeliest group first.</summary>
    public static ImmutableArray<SuspectGroup> Of(FaultBench bench, ImmutableArray<Suspect> ranked, int most = 60, double least = 1e-4)
    {
        List<List<Suspect>> groups = [];
        foreach (var suspect in ranked.Take(most).Where((s, i) => i == 0 || s.Probability >= least))
        {
            if (groups.Find(g => Alike(bench, g[0], suspect)) is { } found)
            {
                found.Add(suspect);
            }
            else
            {
                groups.Add([suspect]);
            }
        }

        return [.. groups.Select(g => new SuspectGroup([.. g])).OrderByDescending(g => g.Probability)];
    }

    public static bool Alike(FaultBench bench, Suspect a, Suspect b) =>
        a.Predictions.Length == b.Predictions.Length && a.Predictions.Zip(b.Predictions).All(p => Alike(bench, p.First, p.Second));

    private static bool Alike(FaultBench bench, Prediction a, Prediction b)
    {
        if (!a.Solved.Blown.Order(StringComparer.Ordinal).SequenceEqual(b.Solved.Blown.Order(StringComparer.Ordinal)))
        {
            return false;
        }

        for (var s = 0; s < bench.States.Length; s++)
        {
            for (var l = 0; l < bench.Loads.Length; l++)
            {
                var should = bench.ShouldWork[s][l];
                if (LoadClasses.Of(a.Solved.Shares[s][l], should) != LoadClasses.Of(b.Solved.Shares[s][l], should))
                {
                    return false;
                }
            }

            for (var p = 0; p < bench.Points.Length; p++)
            {
                if (bench.Points[p].UnderWrap)
                {
                    continue;
                }

                if (Parts(a.Volts(s, p), b.Volts(s, p)) || Parts(a.Volts(s, p, true), b.Volts(s, p, true)))
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>True when a meter tells two voltages apart for certain.</summary>
    public static bool Parts(double a, double b) => Math.Abs(a - b) > Trust.MeterV(a) + Trust.MeterV(b);
}
