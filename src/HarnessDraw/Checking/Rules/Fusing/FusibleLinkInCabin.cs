using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class FusibleLinkInCabin : IDesignRule
{
    public RuleInfo Info { get; } = new("fusible-link-in-cabin", "Fusible link inside the cabin", Severity.Error, Consequence.Fire, "workshop practice, no standard",
        "A link opens with flame and smoke: it belongs where nothing burns.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Protections.Where(p => p.Kind == ProtectionKind.FusibleLink && context.Thing(p.Id)?.Side == Side.Cabin)
            .Select(p => context.Found(Info, $"Fusible link {p.Id} sits in the cabin: it opens with flame.", "Put the link at the source in the bay, or use a bolt-in fuse.", [p.Id], at: p.At));
}
