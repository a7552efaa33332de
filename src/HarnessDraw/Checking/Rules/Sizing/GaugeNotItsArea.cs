using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class GaugeNotItsArea : IDesignRule
{
    public RuleInfo Info { get; } = new("gauge-not-its-area", "Gauge and copper area disagree", Severity.Warning, Consequence.DoesNotWork, "ASTM B258 formula for the area of a gauge",
        "Sellers print '16 AWG = 1.5 mm²'; it is 1.31 mm², vehicle strand 1.22: the missing copper is missing volts.")
    {
        Limits = [new("apart", 10, "%", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var wire in context.Plan.Wires.Where(w => w.Awg is not null))
        {
            if (Area(wire.Awg!) is { } area && Math.Abs(wire.AreaMm2 - area) > context.Limit(Info, "apart") / 100 * area)
            {
                yield return context.Found(Info, $"{wire.Named()}: {wire.Awg} AWG is {Figure.Area(area)}, but it is counted as {Figure.Area(wire.AreaMm2)} ({Figure.Percent(Math.Abs(wire.AreaMm2 - area) / area)} apart).",
                    "Give the size in the unit it was bought in; let the catalogue convert.", [wire.Id, wire.Circuit], wire.Builds, context.Circuit(wire.Circuit)?.At);
            }
        }
    }

    /// <summary>ASTM B258: diameter 0.127 mm x 92^((36 - n)/39); '1/0' is 0, '2/0' is -1.</summary>
    internal static double? Area(string gauge)
    {
        var text = gauge.Replace("AWG", "", StringComparison.OrdinalIgnoreCase).Trim();
        var slash = text.EndsWith("/0", StringComparison.Ordinal);
        if (!int.TryParse(slash ? text[..^2] : text, out var number))
        {
            return null;
        }

        var diameter = 0.127 * Math.Pow(92, (36 - (slash ? 1 - number : number)) / 39.0);
        return Math.PI / 4 * diameter * diameter;
    }
}
