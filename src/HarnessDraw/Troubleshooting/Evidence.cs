using System.Collections.Immutable;

namespace HarnessDraw.Troubleshooting;

/// <summary>A person says what a load does in a state. Numbers are those of the bench's lists.</summary>
public readonly record struct SeenAnswer(int Load, int State, LoadClass Seen);

/// <summary>A meter's reading at a point in a state: against the grounded post of the battery, or from its live post to the point.</summary>
public readonly record struct MeterReading(int Point, int State, bool ToLive, double Volts);

/// <summary>A fuse renewed (or found whole), and whether it holds in a state.</summary>
public readonly record struct FuseTry(string Fuse, int State, bool Holds);

/// <summary>Everything that was found out at a vehicle.</summary>
public sealed record Evidence(ImmutableArray<SeenAnswer> Answers, ImmutableArray<MeterReading> Readings, ImmutableArray<FuseTry> Fuses)
{
    public static readonly Evidence Nothing = new([], [], []);

    /// <summary>What was noted in some of the states, numbered as they are there.</summary>
    public Evidence Only(ImmutableArray<int> states) => new(
        [.. Answers.Where(a => states.Contains(a.State)).Select(a => a with { State = states.IndexOf(a.State) })],
        [.. Readings.Where(r => states.Contains(r.State)).Select(r => r with { State = states.IndexOf(r.State) })],
        [.. Fuses.Select(f => f with { State = Math.Max(0, states.IndexOf(f.State)) })])
    {
        Skipped = [.. Skipped.Where(r => states.Contains(r.State)).Select(r => r with { State = states.IndexOf(r.State) })],
    };

    /// <summary>Points that cannot be reached: no test asks for them.</summary>
    public ImmutableArray<MeterReading> Skipped { get; init; } = [];
}

/// <summary>How far people and meters are believed.</summary>
public static class Trust
{
    /// <summary>Share of answers and readings that are simply wrong.</summary>
    public const double Wrong = 0.02;

    /// <summary>Least share of wrong readings that show any one value: a lead may have been anywhere. No source: set once, not searched for.</summary>
    internal const double LeastElsewhere = 0.02;

    /// <summary>How far a fault of unknown ohms may read from the nearest that was solved, as a share of what the fault changes; of a fault without ohms: spread of contacts and wires. No source: choices.</summary>
    internal const double OhmSpread = 0.35;
    internal const double PartSpread = 0.04;

    /// <summary>How far what a load is seen to do may lie from what was solved, in shares of what it should do; more, by a share of what the fault changes, where nobody knows the ohms. No source: choices.</summary>
    internal const double ShareBlur = 0.02;
    internal const double OhmBlur = 0.08;

    /// <summary>Middles of the five equally likely fifths of a normal distribution, in standard deviations.</summary>
    internal static readonly ImmutableArray<double> Quantiles = [-1.2816, -0.5244, 0, 0.5244, 1.2816];

    // standard deviation of errors that fill the meter's bounds evenly (0.58), a little more for what is not modelled
    internal const double MeterShare = 0.65;

    // beyond it nothing is left of the bell
    private const double FarZ = 10;
    private static readonly double LogRight = Math.Log(1 - Wrong);
    private static readonly double LogWrong = Math.Log(Wrong);
    private static readonly double LogOneOfTwo = Math.Log(Wrong / 2);

    /// <summary>What a meter may be off: 1 % of what it shows and 20 mV.</summary>
    public static double MeterV(double volts) => 0.02 + (0.01 * Math.Abs(volts));

    /// <summary>Volts as a number of steps, each as wide as <see cref="MeterV"/> there.</summary>
    public static double Steps(double volts) => Math.Sign(volts) * 100 * Math.Log(1 + (Math.Abs(volts) / 2));

    public static double LogAnswer(LoadClass seen, double share, bool shouldWork)
    {
        double Below(double limit)
        {
            // the logistic curve that is nearest the normal one
            var x = (share - limit) * 1.7 / ShareBlur;
            return x > 20 ? 0 : x < -20 ? 1 : 1 / (1 + Math.Exp(x));
        }

        var (right, others) = seen switch
        {
            LoadClass.Dead when shouldWork => (Below(LoadClasses.DeadBelow), 2),
            LoadClass.Works when shouldWork => (1 - Below(LoadClasses.DimBelow), 2),
            LoadClass.Dim when shouldWork => (Math.Max(0, Below(LoadClasses.DimBelow) - Below(LoadClasses.DeadBelow)), 2),
            LoadClass.OnWrongly when !shouldWork => (1 - Below(LoadClasses.DeadBelow), 1),
            LoadClass.Off or LoadClass.Dead when !shouldWork => (Below(LoadClasses.DeadBelow), 1),
            _ => (0.0, 1),
        };
        return right is 1 ? LogRight : right is 0 ? (others == 2 ? LogOneOfTwo : LogWrong) : Math.Log(((1 - Wrong) * right) + (Wrong / others * (1 - right)));
    }

    /// <param name="readV">What the meter showed.</param>
    /// <param name="predictedV">What the fault lets it show.</param>
    /// <param name="soundV">What it shows when all is well.</param>
    /// <param name="liveV">Volts of the battery.</param>
    /// <param name="unknownOhm">True for bad joints, whose ohms are only guessed.</param>
    /// <param name="elsewhere">Share of all points that show such volts: a wrong reading is one that was taken at another point.</param>
    public static double LogReading(double readV, double predictedV, double soundV, double liveV, bool unknownOhm, double elsewhere)
    {
        var sigma = Sigma(predictedV, soundV, liveV, unknownOhm);
        var z = (readV - predictedV) / sigma;
        var sharp = MeterShare * MeterV(predictedV) / sigma;
        return Math.Log(((1 - Wrong) * sharp * (Math.Abs(z) > FarZ ? 0 : Math.Exp(-z * z / 2))) + (Wrong * Math.Max(LeastElsewhere, elsewhere)));
    }

    /// <summary>Standard deviation of a reading: the meter, and what ohms that nobody knows do to it. A point that hangs on one side alone has that side's volts whatever they are.</summary>
    public static double Sigma(double predictedV, double soundV, double liveV, bool unknownOhm)
    {
        var meter = MeterShare * MeterV(predictedV);
        var free = Math.Min(Math.Abs(predictedV - soundV), Math.Min(Math.Abs(predictedV), Math.Abs(liveV - predictedV)));
        var part = (unknownOhm ? OhmSpread : PartSpread) * free;
        return Math.Sqrt((meter * meter) + (part * part));
    }

    public static double LogFuse(bool holds, bool predicted) => Math.Log(holds == predicted ? 1 - Wrong : Wrong);
}
