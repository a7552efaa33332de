using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class ExciterRunOn : IDesignRule
{
    public RuleInfo Info { get; } = new("exciter-run-on", "Engine runs on through the exciter", Severity.Error, Consequence.LostFunction, "workshop practice, no standard",
        "With the key off the alternator feeds the ignition back through a bare exciter wire, or holds a relay through the charge lamp.")
    {
        Limits = [new("share kept on", 50, "%", "common practice, no source: a coil sparks from about half its volts")],
    };

    public IEnumerable<Finding> Find(RuleContext context) => Bare(context).Concat(Solved(context));

    private IEnumerable<Finding> Bare(RuleContext context) =>
        Exciters.Of(context).Where(p => !Exciters.On(context, p.Circuit).Any(Exciters.Limits))
            .Select(p => context.Found(Info, $"{p.Circuit.Id} joins {p.Alternator.Id} to {PointWords.OfNode($"{p.Circuit.From}")} with no lamp, resistor or diode between: key off, the alternator feeds the ignition and the engine runs on.",
                "Put the charge lamp, a resistor or a diode in the wire.", [p.Circuit.Id, p.Alternator.Id, .. context.WiresOf(p.Circuit.Id).Select(w => w.Id)], p.Circuit.OnlyWith, p.Circuit.At));

    /// <summary>The network with the key turned off while the engine runs: a lamp in the wire does not help where it still holds a relay.</summary>
    private IEnumerable<Finding> Solved(RuleContext context)
    {
        if (Exciters.Of(context).FirstOrDefault(p => p.Circuit.OnlyWith.IsAlways || context.Plan.Builds.Any(p.Circuit.OnlyWith.Holds)) is not { Circuit: { } exciter } || context.Plan.Builds.FirstOrDefault(exciter.OnlyWith.Holds) is not { } build)
        {
            yield break;
        }

        // of a lamp without a figure nothing can be solved
        if (Exciters.On(context, exciter).Any(t => t.Kind == ThingKind.Lamp && !t.Elements.Any(e => e.Amps(exciter.NominalV) is > 0)))
        {
            yield break;
        }

        var kept = KeyOffFinder.Find(context.Plan, build).Where(r => r.ByExciter && 100 * r.Share >= context.Limit(Info, "share kept on") && r.Circuit is { } c && (context.IsCritical(c) || IsIgnition(context, r))).ToList();
        if (kept.MaxBy(r => r.Share) is { } worst)
        {
            yield return context.Found(Info, $"Key off in '{worst.State}', {worst.Load} keeps {Figure.Volts(worst.VoltageV)} and {Figure.Percent(worst.Share)} of its current, fed back through {exciter.Id}{(kept.Select(r => r.Load).Distinct(StringComparer.Ordinal).Count() is > 1 and var n ? $" ({n} loads in all)" : "")}{string.Concat(worst.Holding.Select(h => $"; {h.Relay} holds with {Figure.Volts(h.CoilV)} and lets go below {Figure.Volts(h.DropsOutV)}"))}: the engine runs on.",
                "Put a diode in the exciter wire that lets current only towards the alternator.", [exciter.Id, worst.Circuit!, .. context.WiresOf(exciter.Id).Select(w => w.Id)], exciter.OnlyWith, exciter.At);
        }
    }

    private static bool IsIgnition(RuleContext context, RunOnLoad load) => context.Harness.Things.Any(t => load.Load.StartsWith($"{t.Id} ", StringComparison.Ordinal) && t.Label.Contains("IGNITION", StringComparison.OrdinalIgnoreCase));
}
