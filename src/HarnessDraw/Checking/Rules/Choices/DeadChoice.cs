using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Choices;

internal sealed class DeadChoice : IDesignRule
{
    public RuleInfo Info { get; } = new("dead-choice", "A choice that no build can have", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Whoever picks it gets nothing: rules exclude it altogether.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var plan = context.Plan;
        if (plan.BuildCount == 0 || plan.BuildCount != plan.Builds.Length)
        {
            yield break;
        }

        foreach (var option in context.Harness.Options)
        {
            foreach (var choice in option.Choices.Where(c => !plan.Builds.Any(b => b.TryGetValue(option.Id, out var taken) && taken == c)))
            {
                var rules = context.Harness.OptionRules.Where(r => (r.IfOption == option.Id && r.IfChoice == choice) || (r.ThenOption == option.Id && r.ThenChoice == choice)).Select(OptionWords.Of);
                yield return context.Found(Info, $"{option.Id}={choice} is in none of the {plan.Builds.Length} possible builds ({Wording.List(rules)}).", "Loosen a rule, or take the choice out.", [option.Id], at: option.At);
            }
        }
    }
}
