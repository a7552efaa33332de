using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>The options with their rules: looks up choices, reads conditions, knows which builds can exist.</summary>
internal sealed record OptionSet(ImmutableArray<Option> Options, ImmutableArray<OptionRule> Rules)
{
    /// <summary>With more builds than this, conditions are not tried out one by one.</summary>
    private const int MostBuildsTried = 4096;

    public static readonly OptionSet None = new([], []);

    private ImmutableArray<ImmutableDictionary<string, string>>? _builds;

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
        if (Builds() is { } builds && !condition.IsAlways && !builds.Any(b => Holds(condition, b)))
        {
            bag.Error(DiagnosticCodes.NotBuildable, $"{what} is only with {condition}, but the option rules allow no such build", map.At);
        }

        return condition;
    }

    /// <summary>Every build that the rules allow; null when there are too many to list.</summary>
    public ImmutableArray<ImmutableDictionary<string, string>>? Builds()
    {
        if (Options.Aggregate(1L, (n, o) => Math.Min(n * Math.Max(1, o.Choices.Length), int.MaxValue)) > MostBuildsTried)
        {
            return null;
        }

        return _builds ??= [.. All().Where(Allowed)];
    }

    public bool Allowed(ImmutableDictionary<string, string> build) => Rules.All(r => Keeps(r, build));

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

    private static bool Holds(BuildCondition condition, ImmutableDictionary<string, string> build) =>
        condition.AllOf.All(c => build.TryGetValue(c.Option, out var choice) && c.Choices.Contains(choice));

    private IEnumerable<ImmutableDictionary<string, string>> All()
    {
        IEnumerable<ImmutableDictionary<string, string>> builds = [ImmutableDictionary.Create<string, string>(StringComparer.Ordinal)];
        foreach (var option in Options)
        {
            builds = builds.SelectMany(b => option.Choices.Select(c => b.SetItem(option.Id, c)));
        }

        return builds;
    }
}
