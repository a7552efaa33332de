using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>Lists the builds that the option rules allow, the usual one first, then in the order of options and choices.</summary>
public static class BuildLister
{
    /// <summary>At most <paramref name="most"/> valid builds, and how many there are in all.</summary>
    public static (ImmutableArray<ImmutableSortedDictionary<string, string>> Builds, long Count) List(Harness harness, int most)
    {
        ArgumentNullException.ThrowIfNull(harness);
        var space = new OptionSpace(harness.Options, harness.OptionRules);
        var usual = harness.Options.ToImmutableSortedDictionary(o => o.Id, o => o.Usual, StringComparer.Ordinal);
        var isValid = space.CanHold(new([.. usual.Select(c => new OptionChoice(c.Key, [c.Value]))]));
        var count = space.Count;
        var first = count > most ? Pairs(harness.Options, space).Concat(space.First(most)) : space.First(most);
        var others = first.Where(b => !isValid || !Same(b, usual)).DistinctBy(b => string.Join(';', b.Values), StringComparer.Ordinal);
        return ([.. (isValid ? others.Prepend(usual) : others).Take(most)], count);
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

    // where builds are too many to list, those listed show every pair of choices that a build can have
    private static IEnumerable<ImmutableSortedDictionary<string, string>> Pairs(ImmutableArray<Option> options, OptionSpace space)
    {
        var shown = new HashSet<(string, string)>();
        foreach (var (a, b) in options.SelectMany((a, i) => options.Skip(i + 1).Select(b => (a, b))))
        {
            foreach (var (x, y) in a.Choices.SelectMany(x => b.Choices.Select(y => (x, y))).Where(p => !shown.Contains(($"{a.Id}={p.x}", $"{b.Id}={p.y}"))))
            {
                if (space.FirstWith(new([new(a.Id, [x]), new(b.Id, [y])])) is { } build)
                {
                    shown.UnionWith(options.SelectMany((o, i) => options.Skip(i + 1).Select(p => ($"{o.Id}={build[o.Id]}", $"{p.Id}={build[p.Id]}"))));
                    yield return build;
                }
            }
        }
    }

    private static bool Same(ImmutableSortedDictionary<string, string> a, ImmutableSortedDictionary<string, string> b) =>
        a.All(p => b.TryGetValue(p.Key, out var chosen) && chosen == p.Value);
}
