using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>
/// One figure held against its limit. <paramref name="AtLeast"/>: the limit is a floor, else a ceiling. The finding is worded only when it is broken.
/// </summary>
public sealed record Measure(string What, double Value, double Limit, string Unit, Func<Finding> WhenBroken, bool AtLeast = false)
{
    // sums of binary fractions: 0.3 is not above 0.3
    private const double Slack = 1e-9;

    public bool Broken => AtLeast ? Value < Limit - Slack : Value > Limit + Slack;

    /// <summary>How far the figure is from its limit, as a fraction of the limit; negative when broken.</summary>
    public double Margin => Limit == 0 ? 0 : (AtLeast ? Value - Limit : Limit - Value) / Math.Abs(Limit);
}

/// <summary>A rule about figures: what passes shows its margin too.</summary>
public abstract class MeasuredRule : IDesignRule
{
    public abstract RuleInfo Info { get; }

    public abstract IEnumerable<Measure> Measures(RuleContext context);

    public IEnumerable<Finding> Find(RuleContext context) => context.MeasuresOf(this).Where(m => m.Broken).Select(m => m.WhenBroken() with { Measured = m.What });
}
