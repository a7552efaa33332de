using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>The options with their rules: looks up choices, reads conditions, knows which builds can exist.</summary>
internal sealed record OptionSet(ImmutableArray<Option> Options, ImmutableArray<OptionRule> Rules)
{
    public static readonly OptionSet None = new([], []);

    private OptionSpace? _space;

    private OptionSpace Space => _space ??= new(Options, Rules);

    /// <summary>'only-with: { cooling: electric fan }' as a condition, options in ordinal order.</summary>
    public BuildCondition ReadCondition(InputMap? map, string what, DiagnosticBag bag)
    {
        if (map is null)
        {
            return BuildCondition.Always;
        }

        var choices = new List<OptionChoice>();
        foreach (var entry in map.Entries)
        {
            if (!NameRules.Known(entry.Key, [.. Options.Select(o => o.Id)], "option", bag))
            {
                continue;
            }

            var option = Options.First(o => o.Id == entry.Key.Value);
            ImmutableArray<string> named = [.. map.TextNodes(entry.Key.Value).Where(c => IsChoice(c, option, bag)).Select(c => c.Value).Distinct()];
            if (named.Length > 0)
            {
                choices.Add(new OptionChoice(option.Id, named));
            }
        }

        var condition = new BuildCondition([.. choices.OrderBy(c => c.Option, StringComparer.Ordinal)]);
        if (!condition.IsAlways && Space.CanHold(BuildCondition.Always) && !Space.CanHold(condition))
        {
            bag.Error(DiagnosticCodes.NotBuildable, $"{what} is only with {condition}, but the option rules allow no such build", map.At);
        }

        return condition;
    }

    public static bool Keeps(OptionRule rule, IReadOnlyDictionary<string, string> build) =>
        build.GetValueOrDefault(rule.IfOption) != rule.IfChoice || (build.GetValueOrDefault(rule.ThenOption) == rule.ThenChoice) == rule.Needs;

    private static bool IsChoice(InputText choice, Option option, DiagnosticBag bag)
    {
        if (option.Choices.Contains(choice.Value))
        {
            return true;
        }

        bag.Error(DiagnosticCodes.UnknownChoice, $"the option '{option.Id}' has no choice '{choice.Value}'", choice.At, NearestName.Hint(choice.Value, option.Choices) ?? NameRules.Listed(option.Choices, "choice"));
        return false;
    }
}
