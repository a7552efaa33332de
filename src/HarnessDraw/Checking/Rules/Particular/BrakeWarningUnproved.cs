using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>A brake warning lamp that nothing lights to prove it, or that one switch alone works.</summary>
internal sealed class BrakeWarningUnproved : IDesignRule
{
    private static readonly string[] Checks = ["check", "test", "proving"];

    public RuleInfo Info { get; } = new("brake-warning-unproved", "Brake warning lamp without a way to prove it", Severity.Advice, Consequence.LostFunction, "common practice, no source",
        "A burnt-out warning lamp looks like sound brakes; a contact that lights it at every start proves it.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        // the lamp stands behind one pin: every circuit that comes from there can ground it
        foreach (var lamp in context.Harness.Circuits.Where(c => !c.IsReturn && c.From is not null && IsWarning(c)).GroupBy(c => c.From!.ToString(), StringComparer.Ordinal))
        {
            var ends = lamp.SelectMany(c => c.Feeds).Select(f => context.Thing(f.Thing)).OfType<Thing>().Distinct().ToList();
            var proved = lamp.Any(c => c.LiveWith == KeyPosition.Start) || ends.Any(t => Checks.Any(w => t.Id.Contains(w, StringComparison.OrdinalIgnoreCase)) || t.Note is { } note && Checks.Any(w => note.Contains(w, StringComparison.OrdinalIgnoreCase)));
            if (!proved || ends.Count < 2)
            {
                var what = !proved ? "no check contact lights it at the start" : $"{ends[0].Id} alone works it";
                yield return context.Found(Info, $"Brake warning lamp at {PointWords.OfNode(lamp.Key)} ({Wording.List(lamp.Select(c => c.Id))}): {what}.", "Let the switches of hydraulic pressure and hand brake and a check contact of the key ground it side by side; name the check in a note.", [lamp.First().Id, .. ends.Select(t => t.Id)], at: lamp.First().At);
            }
        }
    }

    private static bool IsWarning(Circuit circuit) => circuit.Id.Contains("brake", StringComparison.OrdinalIgnoreCase) && circuit.Id.Contains("warning", StringComparison.OrdinalIgnoreCase);
}
