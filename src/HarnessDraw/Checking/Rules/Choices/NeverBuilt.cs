using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Choices;

internal sealed class NeverBuilt : IDesignRule
{
    public RuleInfo Info { get; } = new("never-built", "Circuit whose options never meet", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Its options exclude each other: no build has it.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        !context.Builds.CanHold(BuildCondition.Always)
            ? []
            : context.Harness.Circuits.Where(c => !c.OnlyWith.IsAlways && !context.Builds.CanHold(c.OnlyWith))
                .Select(c => context.Found(Info, $"{c.Id} is built only with {c.OnlyWith}, and no valid build has that.", "Correct its options, or take the circuit out.", [c.Id], at: c.At));
}
