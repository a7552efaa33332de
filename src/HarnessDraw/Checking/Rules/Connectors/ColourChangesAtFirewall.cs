using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class ColourChangesAtFirewall : IDesignRule
{
    public RuleInfo Info { get; } = new("colour-changes-at-firewall", "Wire changes colour at the firewall", Severity.Advice, Consequence.Untidy, "common practice, no source",
        "Who follows a colour loses it at the connector.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var changes = KeptCavities.Of(context).Where(p => p.Kept.Colour is { } c && c != p.Wire.Colour).ToList();
        if (changes.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.Count(changes.Count, "wire")} change{(changes.Count == 1 ? "s" : "")} colour at the firewall: {Wording.List(changes.Select(p => $"{p.Wire.Named()} {p.Kept.Colour} in the cabin, {p.Wire.Colour} in the bay ({p.Kept.Cavity})"))}.",
                "Use the cabin's colour, or print both on the connector sheet.", changes.Select(p => p.Wire.Id), at: changes[0].Kept.At);
        }
    }
}
