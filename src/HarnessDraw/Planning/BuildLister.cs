using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>Lists the builds that the option rules allow, the usual one first, then in the order of options and choices.</summary>
public static class BuildLister
{
    /// <summary>At most <paramref name="most"/> valid builds, and how many there are in all (counting stops at one million combinations).</summary>
    public static (ImmutableArray<ImmutableSortedDictionary<string, string>> Builds, long Count) List(Harness harness, int most)
    {
        ArgumentNullException.ThrowIfNull(harness);
        var usual = harness.Options.ToImmutableSortedDictionary(o => o.Id, o => o.Usual, StringComparer.Ordinal);
        var builds = ImmutableArray.CreateBuilder<ImmutableSortedDictionary<string, string>>();
        long count = 0;
        long tried = 0;
        if (IsValid(usual, harness.OptionRules))
        {
            builds.Add(usual);
        }

        void Choose(int option, ImmutableSortedDictionary<string, string> soFar)
        {
            if (tried >= 1_000_000)
            {
                return;
            }

            if (option == harness.Options.Length)
            {
                tried++;
                if (IsValid(soFar, harness.OptionRules))
                {
                    count++;
                    if (builds.Count < most && !Same(soFar, usual))
                    {
                        builds.Add(soFar);
                    }
                }

                return;
            }

            foreach (var choice in harness.Options[option].Choices)
            {
                Choose(option + 1, soFar.SetItem(harness.Options[option].Id, choice));
            }
        }

        Choose(0, ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));
        return (builds.ToImmutable(), count);
    }

    /// <summary>
    /// A few of the builds that together show every pair of choices that any of them has: what a pair of choices does to a current is
    /// then seen without solving every build.
    /// </summary>
    public static ImmutableArray<ImmutableSortedDictionary<string, string>> Covering(ImmutableArray<ImmutableSortedDictionary<string, string>> builds)
    {
        if (builds.Length <= 4)
        {
            return builds;
        }

        var seen = new HashSet<(string, string)>();
        var chosen = ImmutableArray.CreateBuilder<ImmutableSortedDictionary<string, string>>();
        foreach (var build in builds)
        {
            var texts = build.Select(p => $"{p.Key}={p.Value}").ToArray();
            var fresh = false;
            foreach (var a in texts)
            {
                foreach (var b in texts)
                {
                    fresh |= string.CompareOrdinal(a, b) <= 0 && seen.Add((a, b));
                }
            }

            if (fresh)
            {
                chosen.Add(build);
            }
        }

        return chosen.ToImmutable();
    }

    private static bool IsValid(ImmutableSortedDictionary<string, string> build, ImmutableArray<OptionRule> rules) =>
        rules.All(r => !Has(build, r.IfOption, r.IfChoice) || Has(build, r.ThenOption, r.ThenChoice) == r.Needs);

    private static bool Has(ImmutableSortedDictionary<string, string> build, string option, string choice) =>
        build.TryGetValue(option, out var chosen) && chosen == choice;

    private static bool Same(ImmutableSortedDictionary<string, string> a, ImmutableSortedDictionary<string, string> b) =>
        a.All(p => Has(b, p.Key, p.Value));
}
