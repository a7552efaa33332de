using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Choices;

internal sealed class DeadChoice : IDesignRule
{
    public RuleInfo Info { get; } = new("dead-choice", "A choice that no build can have", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Whoever picks it gets nothing: rules exclude it altogether.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        if (!context.Builds.CanHold(BuildCondition.Always))
        {
            yield break;
        }

        foreach (var option in context.Harness.Options)
        {
            foreach (var choice in option.Choices.Where(c => !context.Builds.CanHold(new([new(option.Id, [c])]))))
            {
                var rules = context.Harness.OptionRules.Where(r => (r.IfOption == option.Id && r.IfChoice == choice) || (r.ThenOption == option.Id && r.ThenChoice == choice)).Select(OptionWords.Of);
                yield return context.Found(Info, $"{option.Id}={choice} is in none of the {context.Plan.BuildCount} possible builds ({Wording.List(rules)}).", "Loosen a rule, or take the choice out.", [option.Id], at: option.At);
            }
        }
    }
}
