using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Choices;

internal sealed class OptionsContradict : IDesignRule
{
    public RuleInfo Info { get; } = new("options-contradict", "Rules between options leave no build", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Nothing can be built when every combination of choices breaks a rule.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var harness = context.Harness;
        if (!harness.Options.IsEmpty && !context.Builds.CanHold(BuildCondition.Always))
        {
            yield return context.Found(Info, $"No build is possible: the rules {Wording.List(harness.OptionRules.Select(OptionWords.Of))} leave no combination of {Wording.List(harness.Options.Select(o => o.Id))}.",
                "Take out or loosen one of the rules.", harness.Options.Select(o => o.Id), at: harness.OptionRules.FirstOrDefault()?.At);
        }
    }
}
