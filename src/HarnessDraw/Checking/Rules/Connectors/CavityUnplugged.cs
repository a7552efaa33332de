using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class CavityUnplugged : IDesignRule
{
    public RuleInfo Info { get; } = new("cavity-unplugged", "Empty cavity of a sealed connector without a plug", Severity.Warning, Consequence.DoesNotLast, "workshop practice, no standard",
        "Water runs in through the empty cavity and reaches all the others.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors.Where(c => c.Part.Sealed && c.Wires.Length > 0))
        {
            var used = connector.Wires.Select(w => w.Cavity).Concat(connector.Cavities.Where(c => c.Plug is not null).Select(c => c.Cavity)).ToHashSet(StringComparer.Ordinal);
            var open = connector.Part.Cavities.Where(c => !used.Contains(c.Name)).ToList();
            if (open.Count > 0)
            {
                yield return context.Found(Info, $"{connector.Thing.Id}: {open.Count} of {connector.Part.Cavities.Length} cavities of the sealed body {(open.Count == 1 ? "is" : "are")} open ({Wording.List(open.Select(c => c.Name))}).",
                    $"Add {Wording.List(open.Select(c => context.Harness.Catalogue.Plugs.FirstOrDefault(p => p.Size == c.Size)?.Id ?? $"a plug of size {c.Size}"))}.", [connector.Thing.Id, .. open.Select(c => $"{connector.Thing.Id}.{c.Name}")], at: connector.Thing.At);
            }
        }
    }
}
