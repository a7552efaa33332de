using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

/// <summary>Grease and sealant of the firewall connectors, as their notes name them.</summary>
internal sealed class SealantNotNamed : IDesignRule
{
    private static readonly string[] Names = ["grease", "seal"];
    private static readonly string[] Acid = ["acid-cur", "acid cur", "acetic", "acetoxy"];

    public RuleInfo Info { get; } = new("sealant-not-named", "Grease or sealant of a firewall connector not named, or one that eats copper", Severity.Advice, Consequence.DoesNotLast, "common practice, no source",
        "Ungreased contacts corrode, an open wire entry lets water in, and sealant that cures with acid eats copper.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var mate in context.Harness.Things.Where(t => t.Kind == ThingKind.Mate))
        {
            bool Says(string[] words) => mate.Note is { } note && words.Any(w => note.Contains(w, StringComparison.OrdinalIgnoreCase));
            if (Says(Acid))
            {
                yield return context.Found(Info, $"{mate.Id} is sealed with what its note calls '{mate.Note}': sealant that cures with acid eats copper.", "Use a neutral-cure sealant.", [mate.Id], at: mate.At, severity: Severity.Warning);
            }
            else if (!Says(Names))
            {
                yield return context.Found(Info, $"{mate.Id}: no grease and no sealant is named.", "Name them in its note: contacts greased thinly, wire entry sealed with neutral-cure sealant.", [mate.Id], at: mate.At);
            }
        }
    }
}
