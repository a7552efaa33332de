using System.Collections.Immutable;

namespace HarnessDraw.Model;

/// <summary>
/// All builds that option rules allow, asked without listing them: options that no rule joins are settled apart, so that any number of free options costs
/// nothing, and joined ones by a search that leaves a branch at its first broken rule.
/// </summary>
public sealed class OptionSpace
{
    /// <summary>Builds of one group of joined options are counted up to this.</summary>
    private const long MostCounted = 1_000_000;

    /// <summary>Conditions that are joined in search of a cause; of more, the heaviest.</summary>
    private const int MostJoined = 12;

    private readonly ImmutableArray<Option> options;
    private readonly ImmutableArray<OptionRule> rules;
    private readonly ImmutableArray<ImmutableArray<Option>> groups;

    public OptionSpace(ImmutableArray<Option> options, ImmutableArray<OptionRule> rules)
    {
        (this.options, this.rules) = (options, rules);
        groups = Groups();
    }

    /// <summary>How many builds there are; a group of joined options counts at most a million.</summary>
    public long Count
    {
        get
        {
            var all = 1L;
            foreach (var group in groups)
            {
                var own = Walk(group, null).Take((int)MostCounted).LongCount();
                all = own == 0 ? 0 : all > long.MaxValue / own ? long.MaxValue : all * own;
            }

            return all;
        }
    }

    /// <summary>True when a build is allowed that has everything of the condition.</summary>
    public bool CanHold(BuildCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        return condition.AllOf.All(c => options.Any(o => o.Id == c.Option)) && Exists(condition.AllOf.ToLookup(c => c.Option, c => c.Choices));
    }

    /// <summary>At most so many builds, in the order of options and choices.</summary>
    public ImmutableArray<ImmutableSortedDictionary<string, string>> First(int most) => [.. Walk(options, null).Take(most)];

    /// <summary>
    /// The fewest options of a condition that say the same: what the rules bring about by themselves is left out. A condition that no build has stays as it is.
    /// </summary>
    public BuildCondition Smallest(BuildCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (condition.IsAlways || !CanHold(condition))
        {
            return condition;
        }

        var all = condition.AllOf;
        return Enumerable.Range(0, 1 << Math.Min(all.Length, 16))
            .OrderBy(bits => int.PopCount(bits)).ThenBy(bits => bits)
            .Select(bits => new BuildCondition([.. all.Where((_, i) => (bits >> i & 1) == 1)]))
            .FirstOrDefault(fewer => all.All(c => fewer.AllOf.Contains(c) || !Exists(fewer.AllOf.Append(Without(c)).ToLookup(x => x.Option, x => x.Choices)))) ?? condition;
    }

    /// <summary>A build that the rules allow and that has everything of the condition; null when there is none.</summary>
    public ImmutableSortedDictionary<string, string>? FirstWith(BuildCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        return CanHold(condition) ? Walk(options, condition.AllOf.ToLookup(c => c.Option, c => c.Choices)).First() : null;
    }

    /// <summary>Of things that are built under conditions, those of the build in which they weigh most, in the order given.</summary>
    public IReadOnlyList<T> Heaviest<T>(IReadOnlyList<T> things, Func<T, BuildCondition> when, Func<T, double> weight)
    {
        ArgumentNullException.ThrowIfNull(things);
        ArgumentNullException.ThrowIfNull(when);
        ArgumentNullException.ThrowIfNull(weight);
        var groups = Grouped(things, when, weight);
        if (groups.Length == 0)
        {
            return things;
        }

        (double Weight, ImmutableHashSet<string> Taken) best = (-1, []);
        void Take(int next, BuildCondition soFar, double sum, ImmutableHashSet<string> taken)
        {
            if (next == groups.Length)
            {
                best = sum > best.Weight ? (sum, taken) : best;
                return;
            }

            var with = soFar.And(groups[next].When);
            if (CanHold(with))
            {
                Take(next + 1, with, sum + groups[next].Weight, taken.Add(groups[next].When.ToString()));
            }

            if (sum + groups.Skip(next + 1).Sum(g => g.Weight) > best.Weight)
            {
                Take(next + 1, soFar, sum, taken);
            }
        }

        Take(0, BuildCondition.Always, 0, []);
        return [.. things.Where(t => when(t).IsAlways || best.Taken.Contains(when(t).ToString()))];
    }

    /// <summary>The fewest options with which what is built weighs more than a limit; always, when it does without any of them or never does.</summary>
    public BuildCondition CauseOf<T>(IReadOnlyList<T> things, Func<T, BuildCondition> when, Func<T, double> weight, double over)
    {
        ArgumentNullException.ThrowIfNull(things);
        ArgumentNullException.ThrowIfNull(when);
        ArgumentNullException.ThrowIfNull(weight);
        var always = things.Where(t => when(t).IsAlways).Sum(weight);
        ImmutableArray<(BuildCondition When, double Weight)> groups = [.. Grouped(things, when, weight).Take(MostJoined)];
        return always > over
            ? BuildCondition.Always
            : Enumerable.Range(1, Math.Max(0, (1 << groups.Length) - 1))
                .Select(bits => groups.Where((_, i) => (bits >> i & 1) == 1).ToArray())
                .Where(set => always + set.Sum(g => g.Weight) > over)
                .Select(set => set.Aggregate(BuildCondition.Always, (all, g) => all.And(g.When)))
                .OrderBy(set => set.AllOf.Length)
                .FirstOrDefault(CanHold) ?? BuildCondition.Always;
    }

    private static ImmutableArray<(BuildCondition When, double Weight)> Grouped<T>(IReadOnlyList<T> things, Func<T, BuildCondition> when, Func<T, double> weight) =>
        [.. things.Where(t => !when(t).IsAlways).GroupBy(t => when(t).ToString(), StringComparer.Ordinal).Select(g => (when(g.First()), g.Sum(weight))).OrderByDescending(g => g.Item2)];

    // the same option, any choice but those
    private OptionChoice Without(OptionChoice choice) => new(choice.Option, [.. options.First(o => o.Id == choice.Option).Choices.Except(choice.Choices, StringComparer.Ordinal)]);

    private bool Exists(ILookup<string, ImmutableArray<string>> only) => groups.All(g => Walk(g, only).Any());

    private IEnumerable<ImmutableSortedDictionary<string, string>> Walk(ImmutableArray<Option> group, ILookup<string, ImmutableArray<string>>? only) =>
        Walk(group, only, 0, ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));

    private IEnumerable<ImmutableSortedDictionary<string, string>> Walk(ImmutableArray<Option> group, ILookup<string, ImmutableArray<string>>? only, int next, ImmutableSortedDictionary<string, string> soFar)
    {
        if (next == group.Length)
        {
            yield return soFar;
            yield break;
        }

        var option = group[next];
        foreach (var choice in option.Choices.Where(c => only is null || only[option.Id].All(allowed => allowed.Contains(c))))
        {
            var chosen = soFar.SetItem(option.Id, choice);
            if (rules.All(r => !IsBroken(r, chosen)))
            {
                foreach (var build in Walk(group, only, next + 1, chosen))
                {
                    yield return build;
                }
            }
        }
    }

    // an option that is not chosen yet breaks nothing
    private static bool IsBroken(OptionRule rule, ImmutableSortedDictionary<string, string> build) =>
        build.TryGetValue(rule.IfOption, out var first) && first == rule.IfChoice && build.TryGetValue(rule.ThenOption, out var second) && (second == rule.ThenChoice) != rule.Needs;

    private ImmutableArray<ImmutableArray<Option>> Groups()
    {
        var group = options.ToDictionary(o => o.Id, o => o.Id, StringComparer.Ordinal);
        foreach (var rule in rules.Where(r => group.ContainsKey(r.IfOption) && group.ContainsKey(r.ThenOption)))
        {
            var (kept, joined) = (group[rule.IfOption], group[rule.ThenOption]);
            foreach (var id in group.Where(g => g.Value == joined).Select(g => g.Key).ToArray())
            {
                group[id] = kept;
            }
        }

        return [.. options.GroupBy(o => group[o.Id], StringComparer.Ordinal).Select(g => g.ToImmutableArray())];
    }
}
